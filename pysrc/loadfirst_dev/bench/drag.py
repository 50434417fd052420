"""From hand to picture: a scripted drag of the valve's slider on a main thread slowed fourfold."""

from __future__ import annotations

import json
import time
from functools import lru_cache
from math import cos, pi
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page

from loadfirst.door.handle import handle
from loadfirst.door.messages import PROTOCOL
from loadfirst.plant import library
from loadfirst_dev.bench.drag_check import Painted, Readings, judge
from loadfirst_dev.bench.figures import FRAME, Figure, percentile
from loadfirst_dev.bench.recording import recording
from loadfirst_dev.bench.stock import SERVED
from loadfirst_dev.chromium import LONGEST, wait_for_engine
from loadfirst_dev.links import DEFAULT_PLANT

SLOWED = 4  # times, as a cheap phone is
SECONDS = 3.0
STEP = 1 / 60  # [s] between two movements of the pointer
PAUSE, AFTER = 500.0, 300.0  # [ms] before the first movement, after the last
SLIDER = "#valve-opening"
THUMB = 16.0  # [px] width of the slider's handle
BEFORE = float(library.data("plants", DEFAULT_PLANT)["valve"]["opening"])  # [-] where the slider stands

# The worker is not slowed with the page's main thread, so its own time is taken and told.
CLOCK = """() => {
  const took = (self.benchTook = {});
  const post = self.postMessage.bind(self);
  let asked = 0;
  const answer = self.onmessage;
  self.onmessage = (event) => {
    asked = performance.now();
    return answer(event);
  };
  self.postMessage = (message, ...rest) => {
    const now = performance.now();
    if (message?.reply) took[JSON.parse(message.reply).id] = now - asked;
    post(message, ...rest);
  };
}"""
"""Runs in the worker: notes how long each reply took. [ms]"""


def drags(page: Page, url: str) -> list[dict[str, Any]]:
    """Open the page and drag twice, at once and again; what marks.js and the worker noted of each."""
    page.add_init_script((SERVED / "marks.js").read_text(encoding="utf-8"))
    page.goto(url)
    wait_for_engine(page)
    (worker,) = page.workers
    worker.evaluate(CLOCK)
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    found = []
    for _ in range(2):
        page.wait_for_timeout(PAUSE)
        page.evaluate("() => benchMarks.clear()")
        before = float(page.locator(SLIDER).input_value())
        drag(page)
        marks = page.evaluate("() => structuredClone(benchMarks.noted)")
        found.append(marks | {"before": before, "took": worker.evaluate("() => benchTook")})
    return found


def drag(page: Page) -> None:
    """The slider from where it stands down to a tenth of it, and back, by the mouse."""
    slider = page.locator(SLIDER)
    slider.scroll_into_view_if_needed()
    box = slider.bounding_box()
    assert box is not None  # it is there, and in sight
    left, width, y = box["x"] + THUMB / 2, box["width"] - THUMB, box["y"] + box["height"] / 2

    def move(passed: float) -> None:
        share = BEFORE * (0.55 + 0.45 * cos(2 * pi * passed / SECONDS))
        page.mouse.move(left + width * share, y)

    move(0.0)
    page.mouse.down()
    began = time.monotonic()
    while (passed := time.monotonic() - began) < SECONDS:
        move(passed)
        time.sleep(max(0.0, STEP - (time.monotonic() - began - passed)))
    move(SECONDS)
    page.wait_for_timeout(AFTER)
    page.mouse.up()


@lru_cache(maxsize=512)
def native(opening: float) -> Readings:
    """What the instruments show at an opening, computed here. [bar] [bar] [m³/h]"""
    body = {"plant": DEFAULT_PLANT, "edits": {"valve.opening": opening}, "curve_points": 2}
    reply = json.loads(handle(json.dumps({"v": PROTOCOL, "id": 1, "kind": "answer", "body": body})))
    shown = {reading["id"]: reading["value"] for reading in reply["body"]["shown"]}
    return shown["gauge-suction"] / 1e5, shown["gauge-discharge"] / 1e5, shown["flow-meter"] * 3600


def slowed(marks: dict[str, Any], painted: Painted) -> list[float]:
    """Delays with the worker's time as long as if it, too, were slowed. [ms]"""
    took: dict[float, float] = {}
    for ask in marks["asks"]:
        opening = BEFORE if ask["opening"] is None else ask["opening"]
        took[opening] = max(took.get(opening, 0.0), marks["took"].get(str(ask["id"]), 0.0))
    extra = SLOWED - 1
    return [
        delay + extra * took.get(opening, 0.0)
        for delay, opening in zip(painted.delays, painted.openings, strict=True)
    ]


def figures(browser: Browser, folder: Path) -> list[Figure]:
    """Two drags, judged."""
    context = browser.new_context(viewport={"width": 1280, "height": 800}, locale="en-GB")
    with recording(folder) as (address, _):
        try:
            page = context.new_page()
            page.set_default_timeout(LONGEST)
            first, again = drags(page, f"{address}site/")
        finally:
            context.close()
    return [
        told(first, "at once after the start", None),
        told(again, "once warm", 2 * FRAME),
        *right(first, again),
    ]


def told(marks: dict[str, Any], when: str, most: float | None) -> Figure:
    """How late the pictures of one drag were."""
    painted = judge(marks, marks["before"], native)
    delays = slowed(marks, painted)
    took = [marks["took"][str(ask["id"])] for ask in marks["asks"] if str(ask["id"]) in marks["took"]]
    return Figure(
        f"drag to paint, slowed fourfold, 95th percentile, {when}",
        percentile(delays, 95),
        "ms",
        most=most,
        basis=f"median {percentile(delays, 50):.1f} ms of {len(delays)} inputs in {painted.frames} frames; "
        f"worker {percentile(took, 50):.1f} ms, counted {SLOWED} times; "
        f"from the pointer's own time, worker as it is: {percentile(painted.pointer_delays, 95):.1f} ms",
    )


def right(*drags: dict[str, Any]) -> list[Figure]:
    """Whether everything painted was true, and of late."""
    painted = [judge(marks, marks["before"], native) for marks in drags]
    frames = sum(each.frames for each in painted)
    wrong = sum(each.strange + each.misread for each in painted)
    ages = painted[-1].ages
    return [
        Figure(
            "painted frames that are no input's solve, or misread",
            wrong,
            most=0,
            basis=f"of {frames}, both drags",
        ),
        Figure(
            "painted frames of an input more than two frames old",
            sum(age > 2 * FRAME for age in ages),
            most=0,
            basis=f"of {len(ages)}, once warm; the oldest had been overtaken for {max(ages):.1f} ms",
        ),
    ]
