"""Measures everything in one run and tells it; started by the command `bench` in the whole environment."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable
from pathlib import Path

from loadfirst_dev import places
from loadfirst_dev.bench import clock, drag, inside, puzzles, sizes, solves, start, stock
from loadfirst_dev.bench.compare import compare
from loadfirst_dev.bench.figures import Figure, summary, table
from loadfirst_dev.build import build
from loadfirst_dev.chromium import chromium
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import read_pins
from loadfirst_dev.say import Problem, say

FOLDER = places.BUILT / "bench"
PARTS = ("solve", "clock", "worker", "drag", "start", "puzzles", "sizes")


def main(arguments: list[str]) -> int:
    """Measure the chosen parts. Always 0, whatever the figures: they are told, not tested."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev bench")
    parser.add_argument("--runtime", type=Path)
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--only", choices=PARTS, action="append")
    options = parser.parse_args(arguments)
    parts = options.only or PARTS
    pins = read_pins()
    store = Store(pins, runtime=options.runtime)
    store.fetch([*pins.group("site"), *pins.group("bench")])
    build(pins, store, FOLDER / "site")
    stock.write_stock(pins, store, FOLDER / "stock")
    inside.write_inside(pins, store, FOLDER / "inside")
    found = [
        *measured("solve", "The solver, natively", parts, lambda: solves.figures("natively", compare())),
        *measured("clock", "A day of the clock, natively", parts, clock.day),
        *measured("puzzles", "Puzzles, natively", parts, puzzles.proving),
        *in_browser(parts, options.runs),
    ]
    if "sizes" in parts:
        say(f"\nFiles of the site\n{sizes.table(FOLDER / 'site')}")
    say(f"\n{summary(found)}")
    return 0


def in_browser(parts: tuple[str, ...], runs: int) -> list[Figure]:
    """Everything that Chromium is needed for."""
    if not {"worker", "drag", "start", "puzzles"} & set(parts):
        return []
    with chromium() as browser:
        return [
            *measured("worker", "Inside the page's worker", parts, lambda: inside.figures(browser, FOLDER)),
            *measured("drag", "From hand to picture", parts, lambda: drag.figures(browser, FOLDER)),
            *measured(
                "start", "From address to first reading", parts, lambda: start.figures(browser, FOLDER, runs)
            ),
            *measured("puzzles", "Puzzles in the page", parts, lambda: puzzles.figures(browser, FOLDER)),
        ]


def measured(
    part: str, title: str, parts: tuple[str, ...], measure: Callable[[], list[Figure]]
) -> list[Figure]:
    """Measure one part if it is wanted, and tell it at once."""
    if part not in parts:
        return []
    found = measure()
    busy = f"   (load of the machine {os.getloadavg()[0]:.1f})" if hasattr(os, "getloadavg") else ""
    say(f"\n{title}{busy}\n{table(found)}")
    return found


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except Problem as problem:
        sys.exit(str(problem))
