"""Fetches the one script that the tests take from an npm package; npm's own client talks to the registry."""

from __future__ import annotations

import os
import shutil
import subprocess
import tarfile
import tempfile
from pathlib import Path

from loadfirst_dev import environment, places
from loadfirst_dev.node import packaged
from loadfirst_dev.pins import Pins, digest
from loadfirst_dev.say import Problem, say


def axe(pins: Pins, root: Path | None = None) -> str:
    """The script of axe-core, from the user's cache or through npm.

    Parameters
    ----------
    root : Path, optional
        Where the cache stands; the user's if left out.

    Raises
    ------
    Problem
        When it cannot be had, or is not the pinned one.
    """
    wanted = pins.axe["sha256"]
    kept = (root or places.cache()) / "files" / f"{wanted[:16]}-{Path(pins.axe['inside']).name}"
    if not kept.exists() or digest(kept.read_bytes()) != wanted:
        data = packed(pins, pins.axe["requirement"], pins.axe["inside"])
        if digest(data) != wanted:
            raise Problem(f"{pins.axe['requirement']} as it came is not the pinned one and was not used.")
        kept.parent.mkdir(parents=True, exist_ok=True)
        part = kept.with_name(f"part-{os.getpid()}-{kept.name}")
        part.write_bytes(data)
        part.replace(kept)
    return kept.read_text(encoding="utf-8")


def packed(pins: Pins, requirement: str, inside: str) -> bytes:
    """One file out of an npm package."""
    say(f"Fetching {requirement} …")
    with tempfile.TemporaryDirectory() as folder:
        command = [*client(pins), "pack", requirement, "--silent", "--pack-destination", folder]
        done = subprocess.run(
            command, cwd=folder, capture_output=True, text=True, stdin=subprocess.DEVNULL, check=False
        )
        archives = list(Path(folder).glob("*.tgz"))
        if done.returncode or not archives:
            raise Problem(
                f"{requirement} could not be fetched, and it is not in the cache. A network that reaches\n"
                f"the package registry is needed, once. npm said:\n{environment.last_words(done.stderr)}"
            )
        with tarfile.open(archives[0]) as archive:
            file = archive.extractfile(inside)
            return file.read() if file else b""


def client(pins: Pins) -> list[str]:
    """How npm is started: the machine's, else the one that came with our Node."""
    found = shutil.which("npm")
    if found:
        return [found]
    own = packaged(pins)
    return [str(own), str(own.parents[1] / "lib" / "node_modules" / "npm" / "bin" / "npm-cli.js")]
