"""Measures start, solver, answer and drag, each beside its aim; no time makes it fail."""

from __future__ import annotations

import argparse
import os
import subprocess
from pathlib import Path

from loadfirst_dev import browsers, environment, places
from loadfirst_dev.pins import read_pins
from loadfirst_dev.say import say

PARTS = ("solve", "clock", "worker", "drag", "start", "puzzles", "sizes")


def main(arguments: list[str]) -> int:
    """Make the environment and measure in it."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev bench", description=__doc__)
    parser.add_argument("--only", choices=PARTS, action="append", help="one part; may be given again")
    parser.add_argument("--runs", type=int, default=5, metavar="N", help="cold starts of each page (5)")
    parser.add_argument(
        "--runtime", type=Path, metavar="DIR", help="take the runtime from an unpacked Pyodide release"
    )
    parser.parse_args(arguments)
    pins = read_pins()
    python = environment.whole(pins)
    if not browsers.present("chromium"):
        browsers.ensure(pins)
    say("Measuring. Other work on this machine makes times longer; ratios within one run suffer less.")
    env = {**os.environ, "PYTHONPATH": str(places.REPO / "pysrc")}
    command = [str(python), "-m", "loadfirst_dev.bench", *arguments]
    return subprocess.run(command, cwd=places.REPO, env=env, check=False).returncode
