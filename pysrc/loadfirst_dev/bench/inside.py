"""Measured inside the page's worker: the whole live answer, and the solver against scipy's root finder."""

from __future__ import annotations

import importlib.util
import json
import random
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page

from loadfirst.door.messages import PROTOCOL
from loadfirst_dev import packs, places
from loadfirst_dev.bench import clock, solves
from loadfirst_dev.bench.figures import FRAME, Figure, percentile
from loadfirst_dev.bench.recording import recording
from loadfirst_dev.bench.stock import SERVED
from loadfirst_dev.chromium import LONGEST
from loadfirst_dev.fetch import Store
from loadfirst_dev.links import DEFAULT_PLANT
from loadfirst_dev.pins import Pins
from loadfirst_dev.say import Problem

ASKS = 400
WARM = 40  # answers that do not count: a browser compiles what is used often
CURVE_POINTS = 60  # as the page asks
PACK = "compare.pack"
TOOL_FILES = ("__init__.py", "bench/__init__.py", "bench/compare.py", "bench/loop.py")
COMPARE = "import json; from loadfirst_dev.bench.compare import compare; json.dumps(compare())"

CALL = """(message) => new Promise((resolve, reject) => {
  globalThis.worker ??= new Worker("inside-worker.js", {type: "module"});
  worker.onmessage = ({data}) => ("error" in data ? reject(new Error(data.error)) : resolve(data.value));
  worker.onerror = (event) => reject(new Error(event.message));
  worker.postMessage(message);
})"""


def write_inside(pins: Pins, store: Store, folder: Path) -> None:
    """Write the page, its worker and what the comparison needs into `folder`."""
    folder.mkdir(parents=True, exist_ok=True)
    for name in ("inside.html", "inside-worker.js"):
        shutil.copyfile(SERVED / name, folder / name)
    (folder / PACK).write_bytes(packs.pack(packages(pins, store)))


def packages(pins: Pins, store: Store) -> dict[str, bytes]:
    """scipy for the browser, fluids from the environment (Python alone), and the comparison itself."""
    found = packs.zip_contents(store.read(pins.of_part("scipy")))
    spec = importlib.util.find_spec("fluids")
    assert spec is not None and spec.origin is not None  # the environment has it
    fluids = packs.folder_contents(Path(spec.origin).parent, "fluids/")
    found |= {name: data for name, data in fluids.items() if name.endswith(".py")}
    return found | {f"loadfirst_dev/{name}": (places.TOOL / name).read_bytes() for name in TOOL_FILES}


@contextmanager
def inside_page(browser: Browser, folder: Path) -> Iterator[Page]:
    """The page whose worker is asked."""
    context = browser.new_context()
    with recording(folder) as (address, _):
        try:
            page = context.new_page()
            page.set_default_timeout(3 * LONGEST)
            page.goto(f"{address}inside/inside.html")
            yield page
        finally:
            context.close()


def call(page: Page, **message: Any) -> Any:
    """Ask the worker.

    Raises
    ------
    Problem
        With what went wrong in it.
    """
    try:
        return page.evaluate(CALL, message)
    except Exception as error:
        raise Problem(f"The measuring worker failed: {error}") from error


def asks(count: int) -> list[str]:
    """Questions as the page puts them while a valve is moved: each another opening."""
    draw = random.Random(1)
    return [
        json.dumps(
            {
                "v": PROTOCOL,
                "id": number,
                "kind": "answer",
                "body": {
                    "plant": DEFAULT_PLANT,
                    "edits": {"valve.opening": round(draw.uniform(0, 1), 2)},
                    "curve_points": CURVE_POINTS,
                },
            }
        )
        for number in range(1, count + 1)
    ]


def figures(browser: Browser, folder: Path) -> list[Figure]:
    """Live answer, then the comparison, in one worker."""
    with inside_page(browser, folder) as page:
        took = call(page, kind="answers", asks=asks(ASKS + WARM))[WARM:]
        steps = call(page, kind="answers", asks=clock.asks())
        compared = json.loads(call(page, kind="run", pack=PACK, code=COMPARE))
    basis = f"median; 95th percentile {percentile(took, 95):.1f} ms, of {len(took)} answers"
    live = Figure(
        "whole live answer inside the worker", percentile(took, 50), "ms", most=FRAME / 2, basis=basis
    )
    return [live, *clock.figures(steps), *solves.figures("in the browser", compared)]
