"""Makes the files that the page's worker reads: stored zips and packs, the same bytes at every build."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Mapping
from pathlib import Path

LONG_AGO = (1980, 1, 1, 0, 0, 0)
Contents = Mapping[str, bytes]


def stored_zip(contents: Contents) -> bytes:
    """An archive without compression, names sorted, dates fixed; a server compresses it better."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        for name in sorted(contents):
            entry = zipfile.ZipInfo(name, LONG_AGO)
            entry.create_system = 3  # the same on every system
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, contents[name])
    return out.getvalue()


def pack(contents: Contents) -> bytes:
    """Many files in one: length of the index, the index as JSON, the files' bytes (see pack.js)."""
    names = sorted(contents)
    index = json.dumps([[name, len(contents[name])] for name in names], separators=(",", ":")).encode()
    return b"".join([len(index).to_bytes(4, "little"), index, *(contents[name] for name in names)])


def zip_contents(data: bytes) -> dict[str, bytes]:
    """All files of an archive."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return {info.filename: archive.read(info) for info in archive.infolist() if not info.is_dir()}


def folder_contents(folder: Path, under: str = "") -> dict[str, bytes]:
    """All files of a folder by their names in it, without what Python and editors leave there."""
    found = {}
    for path in sorted(folder.rglob("*")):
        inside = path.relative_to(folder)
        if path.is_file() and not any(part.startswith((".", "__pycache__")) for part in inside.parts):
            found[under + inside.as_posix()] = path.read_bytes()
    return found


def split(contents: Contents, used: set[str]) -> tuple[dict[str, bytes], dict[str, bytes]]:
    """The used files, and the rest."""
    first = {name: data for name, data in contents.items() if name in used}
    rest = {name: data for name, data in contents.items() if name not in used}
    return first, rest
