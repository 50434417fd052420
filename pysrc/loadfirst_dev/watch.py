"""Tells which sources have changed since the last look."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

Look = dict[Path, tuple[int, int]]


def look(folders: Iterable[Path]) -> Look:
    """Time of change and size of every file in the folders."""
    found: Look = {}
    for folder in folders:
        for path in folder.rglob("*"):
            if "__pycache__" in path.parts or path.name.startswith("."):
                continue
            try:
                stat = path.stat()
            except FileNotFoundError:  # an editor is just replacing it
                continue
            if path.is_file():
                found[path] = (stat.st_mtime_ns, stat.st_size)
    return found


def changed(before: Look, after: Look) -> set[Path]:
    """Files that came, went or are different."""
    return {path for path in before.keys() | after.keys() if before.get(path) != after.get(path)}
