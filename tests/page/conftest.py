"""Pages for the tests of the page: fresh ones, and two that stay open through the whole run."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import expect

from page.parts.links import state
from page.parts.rig import Rig

LAPTOP = {"viewport": {"width": 1280, "height": 800}, "locale": "en-GB"}
PHONE = {
    "viewport": {"width": 360, "height": 740},
    "locale": "en-GB",
    "has_touch": True,
    "is_mobile": True,
    "device_scale_factor": 2,
}


class Bench:
    """A page that stays open; every test that borrows it begins with the default rig."""

    def __init__(self, browser: Any, address: str, options: dict[str, Any]) -> None:
        self.said: list[str] = []
        self.context = browser.new_context(**options)
        self.context.set_default_timeout(20_000)
        self.rig = Rig(self.context.new_page(), address)
        listen(self.rig.page, self.said)
        self.rig.open().live()

    def lend(self) -> Rig:
        """The rig as a stranger finds it, with whatever an earlier test left behind swept away."""
        page = self.rig.page
        self.said.clear()
        ready = page.locator("html").get_attribute("data-engine") == "ready"
        if page.locator("dialog[open]").count() or not ready:
            page.goto("about:blank")
        page.mouse.move(0, 0)
        start = state(units="m3h-bar-m", curves=True, place="rig")
        self.rig.open(start).live()
        page.evaluate("() => { document.activeElement?.blur(); scrollTo(0, 0); }")
        page.evaluate("() => localStorage.removeItem('loadfirst:course')")
        self.rig.shows(unit="bar")
        expect(page.locator("#chart svg")).to_be_visible()
        return self.rig


def listen(page: Any, said: list[str]) -> None:
    """Collect what a page complains of: console errors and warnings, uncaught errors, a crash."""
    page.on("console", lambda line: said.append(line.text) if line.type in ("error", "warning") else None)
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("crash", lambda _: said.append("the page crashed"))


@pytest.fixture(scope="session")
def laptop(chromium: Any, site: str) -> Iterator[Bench]:
    """The long-lived page of a laptop's size."""
    bench = Bench(chromium, site, LAPTOP)
    yield bench
    bench.context.close()


@pytest.fixture(scope="session")
def phone(chromium: Any, site: str) -> Iterator[Bench]:
    """The long-lived page of a phone's size, touched instead of clicked."""
    bench = Bench(chromium, site, PHONE)
    yield bench
    bench.context.close()


@pytest.fixture
def rig(laptop: Bench) -> Iterator[Rig]:
    """The default rig, live, on a laptop. Complaints on the console fail the test."""
    yield laptop.lend()
    assert laptop.said == []


@pytest.fixture
def touched(phone: Bench) -> Iterator[Rig]:
    """The default rig, live, on a phone. Complaints on the console fail the test."""
    yield phone.lend()
    assert phone.said == []


@pytest.fixture
def fresh(page: Any, site: str) -> Rig:
    """A browser that was never here before; `open` takes it to the site."""
    return Rig(page, site)


@pytest.fixture
def visitor(chromium: Any, problems: list[str]) -> Iterator[Callable[..., Rig]]:
    """Makes fresh visitors of any site with any device: `visitor(address, **options of the context)`."""
    contexts = []

    def visit(address: str, **options: Any) -> Rig:
        context = chromium.new_context(**{**LAPTOP, **options})
        context.set_default_timeout(20_000)
        contexts.append(context)
        page = context.new_page()
        listen(page, problems)
        return Rig(page, address)

    yield visit
    for context in contexts:
        context.close()
    assert problems == []
