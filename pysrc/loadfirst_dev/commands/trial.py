"""Tries any number of random plants and prints what fails as files to keep.

Every answer is asked what `tests/trial.py` asks: balanced by an independent
checker, finite in all its numbers and on all dials, nowhere below vapour
pressure without a note. What fails is cut down to the keys that matter, ready
for `tests/plant/regressions`. The same seed tries the same plants.
"""

from __future__ import annotations

import argparse
import os
import subprocess

from loadfirst_dev import environment, places
from loadfirst_dev.pins import read_pins


def main(arguments: list[str]) -> int:
    """Make the environment and run the trial in it."""
    parser = argparse.ArgumentParser(
        prog="loadfirst_dev trial", description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--plants", type=int, default=10_000, metavar="N", help="how many (10000)")
    parser.add_argument("--seed", type=int, default=1, metavar="N", help="which ones (1)")
    parser.add_argument(
        "--processes", type=int, default=os.cpu_count(), metavar="N", help="at once (all cores)"
    )
    parser.add_argument(
        "--clock",
        action="store_true",
        help="an hour of plant time in each, with causes on the way",
    )
    options = parser.parse_args(arguments)
    python = environment.whole(read_pins())
    paths = (places.REPO / "pysrc", places.REPO, places.REPO / "tests")
    env = {**os.environ, "PYTHONPATH": os.pathsep.join(map(str, paths))}
    command = [str(python), "-m", "tests.trial"]
    for name in ("plants", "seed", "processes"):
        command += [f"--{name}", str(getattr(options, name))]
    command += ["--clock"] if options.clock else []
    return subprocess.run(command, cwd=places.REPO, env=env, check=False).returncode
