"""Fetches the runtime, builds the site, serves it, and rebuilds when a source changes."""

from __future__ import annotations

import argparse
import time
from pathlib import Path

from loadfirst_dev import places, watch, web
from loadfirst_dev.build import build
from loadfirst_dev.fetch import Store
from loadfirst_dev.pins import Pins, read_pins
from loadfirst_dev.say import Problem, say

PORT = 8000
PAUSE = 0.5  # [s] between two looks at the sources
SOURCES = (places.SITE_SOURCE, places.PYTHON_SOURCE, places.SCENARIOS, places.TOOL / "inside")


def main(arguments: list[str]) -> int:
    """Serve until stopped."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev serve", description=__doc__)
    parser.add_argument("--port", type=int, default=PORT, help=f"{PORT}, or the next free one, if left out")
    parser.add_argument("--host", default="127.0.0.1", help="0.0.0.0 lets other machines in")
    parser.add_argument(
        "--runtime", type=Path, metavar="DIR", help="take the runtime from an unpacked Pyodide release"
    )
    parser.add_argument("--once", action="store_true", help="do not look for changes")
    options = parser.parse_args(arguments)
    pins = read_pins()
    store = Store(pins, runtime=options.runtime)
    seen = watch.look(SOURCES)
    build(pins, store)
    server = web.listen(places.SITE, options.port, options.host)
    web.in_background(server)
    say(f"\nLoadfirst is at {web.address(server)}   (Ctrl-C stops it)")
    try:
        while True:
            time.sleep(PAUSE)
            if not options.once:
                seen = rebuild(pins, store, seen)
    finally:
        server.shutdown()


def rebuild(pins: Pins, store: Store, seen: watch.Look) -> watch.Look:
    """Build again if something changed; what cannot be built leaves the old site. Returns the new look."""
    now = watch.look(SOURCES)
    if not watch.changed(seen, now):
        return seen
    started = time.monotonic()
    try:
        names = build(pins, store)
    except Problem as problem:
        say(f"{problem}\nThe site is as it was before this change.")
    else:
        say(f"Rebuilt in {time.monotonic() - started:.1f} s: {', '.join(names) or 'nothing changed'}")
    return now
