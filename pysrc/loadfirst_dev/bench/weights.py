"""What files weigh in brotli of the highest quality; kept by hash, since large ones take half a minute."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import brotli  # type: ignore[import-untyped]

from loadfirst_dev import places
from loadfirst_dev.pins import digest
from loadfirst_dev.say import say

QUALITY = 11
SLOW = 1_000_000  # [bytes] from here on it is told that it takes a while


def brotli_size(data: bytes, kept: Path | None = None) -> int:
    """Size after brotli. [bytes]

    Parameters
    ----------
    kept : Path, optional
        Folder of the sizes already known; in the user's cache if left out.
    """
    kept = kept or places.cache() / "brotli"
    known = kept / f"{digest(data)[:32]}-{QUALITY}"
    try:
        return int(known.read_text())
    except (OSError, ValueError):
        pass
    if len(data) > SLOW:
        say(f"  weighing {len(data) / 1e6:.1f} MB in brotli, once …")
    size = len(brotli.compress(data, quality=QUALITY))
    kept.mkdir(parents=True, exist_ok=True)
    known.write_text(str(size))
    return size


def weigh(folder: Path, names: Iterable[str]) -> dict[str, tuple[int, int]]:
    """Size of each file as it is and in brotli. [bytes]"""
    found = {}
    for name in sorted(names):
        data = (folder / name).read_bytes()
        found[name] = (len(data), brotli_size(data))
    return found
