"""Fetches the pinned runtime into the user's cache (build and serve do it too)."""

from __future__ import annotations

import argparse
from pathlib import Path

from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import read_pins
from loadfirst_dev.say import say


def main(arguments: list[str]) -> int:
    """Fetch everything, and list it."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev fetch", description=__doc__)
    parser.add_argument(
        "--runtime", type=Path, metavar="DIR", help="take the files from an unpacked Pyodide release"
    )
    options = parser.parse_args(arguments)
    store = Store(read_pins(), runtime=options.runtime)
    store.fetch(store.pins.files)
    for file in store.pins.files:
        say(f"{file.sha256}  {file.name}")
    return 0
