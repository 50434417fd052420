"""What tests share: hypothesis settings, the built site on a free port, and a browser's page.

Loads inside the browser's Python too, so whatever needs files or processes is
imported where it is used.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, settings

HERE = Path(__file__).parent
IN_BROWSER = sys.platform == "emscripten"
WITH_BROWSER = ("page", "pyodide")
CHROMIUM_OPTIONS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
]

# The browser's Python drops plain asserts; pytest keeps those of tests, and of these helpers.
HELPERS = [
    ".".join(path.relative_to(HERE).with_suffix("").parts)
    for path in HERE.rglob("*.py")
    if not path.stem.startswith(("conftest", "test_"))
]
pytest.register_assert_rewrite(*HELPERS, *(f"tests.{name}" for name in HELPERS))

# The same examples at every run, no clock: a slow machine must not make a test fail.
settings.register_profile(
    "loadfirst",
    derandomize=True,
    deadline=None,
    database=None,
    max_examples=15 if IN_BROWSER else 60,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("loadfirst")

os.environ.setdefault("LOADFIRST_RERAISE", "1")  # a bug behind the door raises instead of being worded


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """What lies in a folder of browser tests is marked so."""
    for item in items:
        if item.path.is_relative_to(HERE) and item.path.relative_to(HERE).parts[0] in WITH_BROWSER:
            item.add_marker("browser")


@pytest.fixture(scope="session")
def store() -> Any:
    """The cache of fetched files, with the runtime in it."""
    from loadfirst_dev.fetch import Store
    from loadfirst_dev.pins import read_pins

    store = Store(read_pins())
    store.fetch([*store.pins.group("site"), *store.pins.group("tests")])
    return store


@pytest.fixture(scope="session")
def built_site(store: Any, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a freshly built site."""
    from loadfirst_dev.build import build

    folder = tmp_path_factory.mktemp("built") / "site"
    build(store.pins, store, folder)
    return folder


@pytest.fixture(scope="session")
def site(built_site: Path) -> Iterator[str]:
    """Address of the built site, served under a sub-path as a host might: ends with a slash."""
    from loadfirst_dev import web

    server = web.listen(built_site.parent, 0)
    web.in_background(server)
    yield web.address(server) + built_site.name + "/"
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="session")
def chromium() -> Iterator[Any]:
    """Chromium, driven by Playwright."""
    import shutil

    from playwright.sync_api import sync_playwright

    program = shutil.which("chromium") or shutil.which("chromium-browser")
    if program is None:
        pytest.fail("There is no Chromium here, and the browser tests are not skipped.")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=CHROMIUM_OPTIONS)
        yield browser
        browser.close()


@pytest.fixture
def problems() -> list[str]:
    """What a page complained of; a test that expects complaints clears it."""
    return []


@pytest.fixture
def context(chromium: Any, request: pytest.FixtureRequest) -> Iterator[Any]:
    """A fresh browser profile; an indirect parameter `context` is a dictionary of its options."""
    options = {"viewport": {"width": 1280, "height": 800}, "locale": "en-GB", **getattr(request, "param", {})}
    context = chromium.new_context(**options)
    context.set_default_timeout(20_000)
    yield context
    context.close()


@pytest.fixture
def page(context: Any, problems: list[str]) -> Iterator[Any]:
    """A page whose complaints, on the console or uncaught, fail the test."""
    page = context.new_page()
    page.on("console", lambda said: problems.append(said.text) if said.type in ("error", "warning") else None)
    page.on("pageerror", lambda error: problems.append(str(error)))
    yield page
    assert problems == []
