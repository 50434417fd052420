"""The site's own Python in a Chromium worker, with pytest and the tests of the physics beside it."""

from __future__ import annotations

import itertools
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

CALL = """
([code, id]) => {
  globalThis.worker ??= new Worker("worker.js", {type: "module"});
  return new Promise((resolve, reject) => {
    worker.addEventListener("message", ({data}) => data.id === id && resolve(data));
    worker.addEventListener("error", (event) => reject(new Error(event.message)));
    worker.postMessage({id, code});
  });
}
"""

Run = Callable[[str], Any]
NUMBERS = itertools.count()


@pytest.fixture(scope="session")
def test_site(store: Any, built_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Address of a copy of the site that holds the test worker too, under ``tests/``."""
    from tests.in_browser import clone, wheels

    from loadfirst_dev import packs, web

    folder = tmp_path_factory.mktemp("pyodide") / "site"
    shutil.copytree(built_site, folder)
    shutil.copytree(Path(__file__).parent / "served", folder / "tests")
    (folder / "tests" / "wheels.pack").write_bytes(packs.pack(wheels(store)))
    (folder / "tests" / "clone.pack").write_bytes(packs.pack(clone()))
    server = web.listen(folder, 0)
    web.in_background(server)
    yield web.address(server)
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="session")
def python_page(chromium: Any, test_site: str) -> Iterator[Any]:
    """A page whose worker runs Python; its requests are kept in `page.asked`."""
    page = chromium.new_page()
    page.asked = []
    page.on("request", lambda request: page.asked.append(request.url.removeprefix(test_site)))
    page.goto(f"{test_site}tests/index.html")
    yield page
    page.close()


@pytest.fixture
def run(python_page: Any) -> Run:
    """Runs Python text in the worker and gives the value of its last expression."""

    def run(code: str) -> Any:
        reply = python_page.evaluate(CALL, [code, next(NUMBERS)])
        if "error" in reply:
            pytest.fail(reply["error"])
        return reply["value"]

    return run
