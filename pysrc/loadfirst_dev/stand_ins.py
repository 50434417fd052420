"""Modules of the browser's Python that are replaced by leaner ones, and the tables of code for the page."""

from __future__ import annotations

import marshal

from loadfirst_dev import packs, places
from loadfirst_dev.packs import Contents

FOLDER = places.TOOL / "inside" / "stand_ins"
HEAD = 16  # bytes before the code in a compiled file
AS_FILES = ("encodings/", "sitecustomize.")  # imported before anything can be imported from memory


def sources(part: str) -> dict[str, bytes]:
    """The stand-ins of a part, by the names of the files that they replace."""
    return packs.folder_contents(FOLDER / part)


def replace(contents: Contents, leaner: Contents) -> dict[str, bytes]:
    """The compiled files with the compiled stand-ins in their places; the originals get another name."""
    moved = {whole(name): contents[name] for name in leaner if name in contents}
    return {**contents, **moved, **leaner}


def whole(name: str) -> str:
    """Where the original of a replaced file stands: beside it, inside where it is a package."""
    return name.replace("/__init__.pyc", "/.pyc").removesuffix(".pyc") + "_whole.pyc"


def with_table(key: str, contents: Contents) -> dict[str, bytes]:
    """All compiled files of a pack as one table, see `inside/sitecustomize.py`; the others as they are."""
    files = {name: data for name, data in contents.items() if not in_table(name)}
    table = {module_name(name): entry(name, contents[name]) for name in sorted(contents) if in_table(name)}
    return {**files, f"{key}.code": marshal.dumps(table, 2)}  # version 2: the same bytes at every build


def in_table(name: str) -> bool:
    """Whether a file is code that is imported from memory."""
    return name.endswith(".pyc") and not name.startswith(AS_FILES)


def entry(name: str, data: bytes) -> tuple[str, bool, bytes]:
    """Where the file would be, whether it is a package, its code."""
    return name, name.endswith("/__init__.pyc"), data[HEAD:]


def module_name(path: str) -> str:
    """Full name of the module in a compiled file."""
    return path.removesuffix(".pyc").removesuffix("/__init__").replace("/", ".")
