"""Writes the finished static site into .built/site, for any static file server."""

from __future__ import annotations

import argparse
from pathlib import Path

from loadfirst_dev import places
from loadfirst_dev.build import build
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import digest, read_pins
from loadfirst_dev.say import say


def main(arguments: list[str]) -> int:
    """Build, and tell where the site is and what it weighs."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev build", description=__doc__)
    parser.add_argument(
        "--runtime", type=Path, metavar="DIR", help="take the runtime from an unpacked Pyodide release"
    )
    parser.add_argument(
        "--into", type=Path, metavar="DIR", default=places.SITE, help="the folder to write to"
    )
    options = parser.parse_args(arguments)
    pins = read_pins()
    build(pins, Store(pins, runtime=options.runtime), options.into)
    files = sorted(path for path in options.into.rglob("*") if path.is_file())
    whole = digest(b"".join(digest(path.read_bytes()).encode() + path.name.encode() for path in files))
    weight = sum(path.stat().st_size for path in files) / 1e6
    say(f"{options.into}: {len(files)} files, {weight:.1f} MB, {whole[:16]}")
    return 0
