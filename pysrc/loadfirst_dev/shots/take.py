"""Takes the pictures."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Browser, BrowserContext, Page

from loadfirst_dev.chromium import FRAMES, LONGEST, wait_for_engine
from loadfirst_dev.shots.deeds import DEEDS
from loadfirst_dev.shots.looks import Look
from loadfirst_dev.shots.scenes import Scene

HEIGHT = "() => document.documentElement.scrollHeight"  # so tall that what sticks to the foot hides nothing
RUNTIME = "**/runtime/**"
SETTLED = {
    "rig": '#apparatus .drawing-svg[data-origin="live"]',
    "course": "#course .course-case",
    "case": '#case .case-body[aria-busy="false"] > :nth-child(3)',
}


def take_all(
    browser: Browser, address: str, looks: list[Look], scenes: list[Scene], folder: Path
) -> Iterator[Path]:
    """Picture every scene in every look; yields the pictures' files as they come."""
    for look in looks:
        context = browser.new_context(**look.options)
        context.set_default_timeout(LONGEST)
        for scene in scenes:
            yield from take(context, address, look, scene, folder)
        context.close()


def take(context: BrowserContext, address: str, look: Look, scene: Scene, folder: Path) -> list[Path]:
    """Picture one scene: what is in sight, and the whole page where the look wants it."""
    page = context.new_page()
    try:
        come_to(page, address, scene)
        pictures = [folder / f"{scene.name}-{look.name}.png"]
        page.screenshot(path=pictures[0])
        if look.whole:
            pictures.append(folder / f"{scene.name}-{look.name}-whole.png")
            width = look.options["viewport"]["width"]
            page.set_viewport_size({"width": width, "height": page.evaluate(HEIGHT)})
            page.evaluate(FRAMES)
            page.screenshot(path=pictures[1])
        return pictures
    finally:
        page.close()


def come_to(page: Page, address: str, scene: Scene) -> None:
    """Open the page and bring it to where the scene is."""
    if scene.start == "starting":
        page.route(RUNTIME, lambda route: None)  # never answered
    elif scene.start == "failed":
        page.route(RUNTIME, lambda route: route.abort())
    page.goto(f"{address}#{scene.link}")
    if scene.start == "starting":
        page.locator("#apparatus .drawing-svg").wait_for(state="attached")
    else:
        wait_for_engine(page, scene.start)
    if scene.start == "ready":
        page.locator(SETTLED[scene.view.get("place", "rig")]).first.wait_for(state="attached")
    if scene.deed:
        DEEDS[scene.deed](page)
    page.evaluate(FRAMES)
