"""The plant that a command was given: a file, a packaged one's id, or that of a puzzle's yesterday."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from loadfirst.cases.happened import yesterday_of
from loadfirst.cases.read import decode_case
from loadfirst.cases.recognise import kind_of
from loadfirst.errors import FileError, InputError
from loadfirst.plant import library, toml_text
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.near import meant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import read_resolved, resolve_data

WANTED = "a plant's file, the id of a packaged plant, or a puzzle"
"""What may stand where a command asks for a plant."""


def plant_of(asked: Path, edits: Mapping[str, Any] | None = None) -> ResolvedPlant:
    """The plant of a file, of a packaged id or of a puzzle as it was yesterday, with some keys changed.

    Raises
    ------
    FileError
        For the first thing in the file that cannot be used, or another kind of file.
    InputError
        For an edit that cannot be used.
    """
    path = _path(asked)
    kind = kind_of(toml_text.read(path))
    if kind == "pump":
        hint = "Name it in a plant, as pump.model, or write its points there, in [pump.curve]."
        raise FileError(path.name, InputError("the file", "a pump", "a plant", hint, rule="pump"))
    if kind == "case":
        yesterday = _yesterday(path)
        return resolve_data(apply_edits(yesterday, edits) if edits else yesterday)
    return read_resolved(path, edits)


def _path(asked: Path) -> Path:
    """The file itself where there is one; else that of the packaged plant of that id."""
    name = str(asked)
    if asked.exists() or asked.suffix or not library.is_id(name):
        return asked
    if library.has("plants", name):
        return library.path("plants", name)
    near = meant(name, library.ids("plants"), f"Packaged are {', '.join(library.ids('plants'))}.")
    what = "there is no such file, and no packaged plant of that id"
    raise FileError(name, InputError("the plant", what, WANTED, near, rule="unreadable"))


def _yesterday(path: Path) -> dict[str, Any]:
    """A puzzle's plant with the edits of its `[yesterday.plant]`, its instruments drawn by its own seed."""
    case = decode_case(path.read_text(encoding="utf-8-sig"), path.name)
    try:
        return yesterday_of(case.plant, case.seed, case.yesterday.plant)
    except FileError:
        raise
    except InputError as cause:
        raise FileError(path.name, cause) from None
