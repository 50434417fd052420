"""Writes pictures of every view and state into .shots, with a page of thumbnails, for looking at."""

from __future__ import annotations

import argparse
import os
import subprocess
from pathlib import Path

from loadfirst_dev import browsers, environment, places
from loadfirst_dev.pins import read_pins


def main(arguments: list[str]) -> int:
    """Make the environment and take the pictures in it."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev shots", description=__doc__)
    parser.add_argument("--only", metavar="WORD", help="scenes with this in their name")
    parser.add_argument("--look", metavar="WORD", help="screens and themes with this: phone, laptop-dark, …")
    parser.add_argument(
        "--runtime", type=Path, metavar="DIR", help="take the runtime from an unpacked Pyodide release"
    )
    parser.parse_args(arguments)
    pins = read_pins()
    python = environment.whole(pins)
    if not browsers.present("chromium"):
        browsers.ensure(pins)
    env = {**os.environ, "PYTHONPATH": str(places.REPO / "pysrc")}
    command = [str(python), "-m", "loadfirst_dev.shots", *arguments]
    return subprocess.run(command, cwd=places.REPO, env=env, check=False).returncode
