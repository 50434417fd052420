"""A plant's file that a command was given, told from the other kinds of file."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from loadfirst.cases.recognise import Kind, kind_of
from loadfirst.errors import FileError, InputError
from loadfirst.plant import toml_text
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import read_resolved

OTHERS: dict[Kind, tuple[str, str]] = {
    "case": ("a puzzle", "See whether it holds with check; play it in the page."),
    "pump": ("a pump", "Name it in a plant, as pump.model, or write its points there, in [pump.curve]."),
}
"""What a file is that is no plant, and what can be done with it."""


def plant_of(path: Path, edits: Mapping[str, Any] | None = None) -> ResolvedPlant:
    """The plant of a file, with some keys changed.

    Raises
    ------
    FileError
        For the first thing in the file that cannot be used, or another kind of file.
    InputError
        For an edit that cannot be used.
    """
    kind = kind_of(toml_text.read(path))
    if kind != "plant":
        what, hint = OTHERS[kind]
        raise FileError(path.name, InputError("the file", what, "a plant", hint, rule="pump"))
    return read_resolved(path, edits)
