"""What kind of file a person gave: a plant, a pump or a puzzle, told by its keys alone."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct

from loadfirst.cases.case import Case
from loadfirst.plant.plant import Plant, PumpFile

Kind = Literal["plant", "pump", "case"]

KINDS: dict[Kind, type[Struct]] = {"plant": Plant, "pump": PumpFile, "case": Case}
"""What all of them could be is a plant, so plants come first."""


def kind_of(data: Mapping[str, Any]) -> Kind:
    """The kind of file that has most of these keys; neither its name nor its folder counts.

    Parameters
    ----------
    data : mapping
        A whole file as a TOML reader leaves it, sound or not.
    """
    return max(KINDS, key=lambda kind: len(data.keys() & set(KINDS[kind].__struct_fields__)))
