"""Chromium, driven by Playwright, for measuring and for pictures. Needs the whole environment."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, Page, sync_playwright

from loadfirst_dev.say import Problem

PROGRAMS = ("chromium", "chromium-browser")
OPTIONS = ("--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update")
LONGEST = 90_000.0  # [ms] for anything a page is waited for

READY = "() => document.documentElement.dataset.engine ?? ''"
FRAMES = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"


@contextmanager
def chromium() -> Iterator[Browser]:
    """One browser process, ended after the `with`.

    Raises
    ------
    Problem
        Where there is no Chromium.
    """
    program = next((found for name in PROGRAMS if (found := shutil.which(name))), None)
    if program is None:
        raise Problem("There is no Chromium here. On Debian or Ubuntu, as root: apt-get install chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=list(OPTIONS))
        try:
            yield browser
        finally:
            browser.close()


def wait_for_engine(page: Page, stage: str = "ready") -> None:
    """Wait until the page's Python has come to a stage, and the page was painted since.

    Raises
    ------
    Problem
        Where it failed, or did not come to it.
    """
    waited = 0.0
    while (now := page.evaluate(READY)) != stage:
        if now == "failed" or waited > LONGEST:
            raise Problem(f"The page's Python is {now or 'nowhere'!r}, not {stage!r}.")
        page.wait_for_timeout(50)
        waited += 50
    page.evaluate(FRAMES)
