"""Puzzles: what proving all of them takes, and how long a learner waits for a check and for the points."""

from __future__ import annotations

import contextlib
import io
from pathlib import Path
from time import process_time
from typing import Any

from playwright.sync_api import Browser, Page

from loadfirst.cases.compose.compose import compose
from loadfirst.cases.compose.subject import Wish
from loadfirst.cases.load import load_case
from loadfirst.cases.read import catalogue
from loadfirst.cli.commands import run
from loadfirst.errors import InputError
from loadfirst.plant import library
from loadfirst_dev.bench.figures import Figure, percentile
from loadfirst_dev.bench.recording import recording
from loadfirst_dev.chromium import LONGEST, wait_for_engine
from loadfirst_dev.links import fragment

PLAYED = ("the-dropped-gauge", "not-double", "a-hundred-per-cent")
"""A plain plant, one with a test by hand, and the one whose suspects take longest."""
SLOWED = 4  # times, as a cheap phone is; the main thread only
AT_ONCE = 100  # [ms] that feel like none; common practice
SEEDS = range(1, 6)  # of composed puzzles

TAP = """async (id) => {
  const began = performance.now();
  document.querySelector(`[data-key="take-${id}"]`).click();
  const passed = () => performance.now() - began;
  const there = () => document.querySelector(`[data-key="check-${id}"]`);
  while (!there() && passed() < 60000) await new Promise(requestAnimationFrame);
  return there() ? passed() : NaN;
}"""
"""From the press of a button to the frame in which its answer stands. [ms]"""
DECIDE = """async () => {
  const sets = document.querySelectorAll("#case fieldset");
  for (const set of sets) set.querySelector("input[type=radio]").click();
  const began = performance.now();
  document.querySelector('#case [data-key="decide"]').click();
  const passed = () => performance.now() - began;
  const there = () => document.querySelector("#case .case-points");
  while (!there() && passed() < 180000) await new Promise(requestAnimationFrame);
  return there() ? passed() : NaN;
}"""
"""The first answer to all that is asked, then from the verdict to its points. [ms]"""


def proving() -> list[Figure]:
    """The check command on all packaged puzzles, and puzzles made from seeds, natively. [s]"""
    began, printed = process_time(), io.StringIO()
    with contextlib.redirect_stdout(printed):
        code = run(["check", str(library.folder("cases"))])
    took = process_time() - began
    count = len(catalogue())
    began, draws, made = process_time(), 0, 0
    for seed in SEEDS:
        with contextlib.suppress(InputError):
            draws += compose(Wish(seed)).tried
            made += 1
    composing = process_time() - began
    proven, drawn = f"{count} puzzles; exit code {code}", f"{made} made of {draws} draws"
    return [
        Figure("`check` of all packaged puzzles, natively", took, "s", basis=proven),
        Figure("a composed puzzle, natively", composing / max(made, 1), "s", basis=drawn),
    ]


def figures(browser: Browser, folder: Path) -> list[Figure]:
    """Puzzles played in the page: all checks, every other one at fourfold slowdown, then the verdict."""
    found = []
    with recording(folder) as (address, _):
        for id in PLAYED:
            context = browser.new_context(viewport={"width": 360, "height": 740}, locale="en-GB")
            try:
                page = context.new_page()
                page.set_default_timeout(LONGEST)
                found += _told(id, *_play(page, f"{address}site/", id))
            finally:
                context.close()
    return found


def _play(page: Page, url: str, id: str) -> tuple[list[float], list[float], float]:
    """What the checks took as the machine is, what others took slowed, and the points. [ms]"""
    case = load_case(id).case
    first: dict[str, Any] = {"do": "predict", "says": "same", "suspects": case.teller}
    view = {"place": "case", "case": id, "moves": [first]}
    page.goto(f"{url}#{fragment(view=view, plant=case.plant)}")
    wait_for_engine(page)
    slower = page.context.new_cdp_session(page)
    page.locator('[data-key="decide"]').wait_for()
    took: tuple[list[float], list[float]] = [], []
    offered = [check.id for check in case.checks if page.locator(f'[data-key="take-{check.id}"]').count()]
    for number, check in enumerate(offered):
        slower.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED if number % 2 else 1})
        took[number % 2].append(float(page.evaluate(TAP, check)))
    return *took, float(page.evaluate(DECIDE))


def _told(id: str, took: list[float], slowed: list[float], points: float) -> list[Figure]:
    taken, slow = (f"median of {len(all)}, the slowest {max(all):.0f} ms" for all in (took, slowed))
    tap = f"{id}: from tap to a check's answer"
    return [
        Figure(tap, percentile(took, 50), "ms", most=AT_ONCE, basis=taken),
        Figure(f"{tap}, slowed", percentile(slowed, 50), "ms", basis=f"{slow}; the worker is not"),
        Figure(f"{id}: from verdict to points", points / 1e3, "s", basis="at once after the last check"),
    ]
