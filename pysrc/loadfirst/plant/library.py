"""The files that come with Loadfirst: plants, pumps, cases and pieces of cases, by their id.

They lie in `scenarios` inside the installed package, or beside `pysrc` in a
clone. An id is the file's name without ``.toml``.
"""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path
from typing import Any, Literal

import msgspec

from loadfirst.errors import InputError
from loadfirst.plant import toml_text
from loadfirst.plant.expect import one_of
from loadfirst.plant.near import meant

Shelf = Literal["plants", "pumps", "cases", "compose"]

ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
LONGEST_ID = 60


def is_id(name: str) -> bool:
    """Whether `name` is an id: small letters, digits, single hyphens. Never a path."""
    return len(name) <= LONGEST_ID and ID.fullmatch(name) is not None


@lru_cache(maxsize=8)
def folder(shelf: Shelf) -> Path:
    """The folder that holds the packaged files of one kind."""
    package = Path(__file__).parents[1]
    inside = package / "scenarios" / shelf
    return inside if inside.is_dir() else package.parents[1] / "scenarios" / shelf


@lru_cache(maxsize=8)
def ids(shelf: Shelf) -> tuple[str, ...]:
    """Ids of all packaged files of one kind, sorted."""
    return tuple(sorted(path.stem for path in folder(shelf).glob("*.toml")))


def has(shelf: Shelf, name: str) -> bool:
    """Whether a packaged file has that id, which may be any text."""
    return is_id(name) and path(shelf, name).is_file()


def known(shelf: Shelf, name: str) -> str:
    """The same id, where a packaged file has it.

    Raises
    ------
    InputError
        Where none has; it stands at ``plant``, ``pump`` or ``case``.
    """
    if has(shelf, name):
        return name
    what, choices = shelf.removesuffix("s"), list(ids(shelf))
    allowed = f"the id of a {what}: {one_of(choices)}"
    raise InputError(what, name, allowed, meant(name, choices), rule="lookup", choices=choices)


def path(shelf: Shelf, name: str) -> Path:
    """Where the packaged file of that id is, or would be; `name` must be an id."""
    return folder(shelf) / f"{name}.toml"


def data(shelf: Shelf, name: str) -> dict[str, Any]:
    """The content of a packaged file, a fresh copy each time; read once only.

    Raises
    ------
    FileError
        Where it cannot be read: it ships with the program, so this is our fault.
    """
    copy: dict[str, Any] = msgspec.to_builtins(_read_once(shelf, name))
    return copy


@lru_cache(maxsize=128)
def _read_once(shelf: Shelf, name: str) -> dict[str, Any]:
    return toml_text.read(path(shelf, name))
