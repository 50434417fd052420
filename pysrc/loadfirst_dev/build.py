"""Puts the finished static site together: what a plain file server needs, every address relative."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from loadfirst_dev import packs, places
from loadfirst_dev.fetch import Store
from loadfirst_dev.licences import licences
from loadfirst_dev.pins import Pins
from loadfirst_dev.preloads import with_preloads
from loadfirst_dev.runtime import make_runtime

MANIFEST = "runtime/manifest.json"
FIRST_ANSWER = "first-answer.json"  # the default plant's, and the catalogue
LICENCES = "licences.txt"


def contents(pins: Pins, store: Store) -> dict[str, bytes]:
    """Every file of the site, by its address. Fetches and compiles what is not there yet."""
    store.fetch(pins.group("site"))
    runtime = make_runtime(pins, store)
    made = {f"runtime/{name}": data for name, data in runtime.files.items()}
    made[FIRST_ANSWER] = as_json(runtime.trace.first)
    made |= {f"cases/{name}.json": as_json(view) for name, view in runtime.trace.cases.items()}
    made[LICENCES] = licences(pins, store).encode()
    return pages() | made


def pages() -> dict[str, bytes]:
    """The files of the page, as they were written but for the preloads."""
    return with_preloads(packs.folder_contents(places.SITE_SOURCE))


def as_json(value: Any) -> bytes:
    """What the engine said while building, for a page whose Python is not there yet."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False).encode() + b"\n"


def write(files: Mapping[str, bytes], folder: Path) -> list[str]:
    """Make a folder hold exactly these files; returns the names that were written.

    What is unchanged is left alone. The manifest comes last but for removing
    what is gone, so that a page loaded meanwhile finds all that it names.
    """
    changed = []
    for name in sorted(files, key=lambda name: (name == MANIFEST, name)):
        path = folder / name
        if path.is_file() and path.read_bytes() == files[name]:
            continue
        path.parent.mkdir(parents=True, exist_ok=True)
        part = path.with_name(f".{path.name}.part")
        part.write_bytes(files[name])
        os.replace(part, path)
        changed.append(name)
    remove_others(files, folder)
    return changed


def remove_others(files: Mapping[str, bytes], folder: Path) -> None:
    """Delete what does not belong to the site (any more)."""
    for path in sorted(folder.rglob("*"), reverse=True):
        if path.is_dir():
            if not any(path.iterdir()):
                path.rmdir()
        elif path.relative_to(folder).as_posix() not in files:
            path.unlink()


def build(pins: Pins, store: Store, folder: Path | None = None) -> list[str]:
    """Build the site into its ignored folder. Returns the names of changed files."""
    folder = folder or places.SITE
    folder.mkdir(parents=True, exist_ok=True)
    return write(contents(pins, store), folder)
