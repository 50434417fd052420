"""Reading a plant: from a file, or from data that came another way, to a checked `Plant`."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import msgspec

from loadfirst.errors import InputError
from loadfirst.plant import library, toml_text
from loadfirst.plant.checks import check_plant
from loadfirst.plant.decode import decode, in_file
from loadfirst.plant.edits import NAMING, apply_edits
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant, fitted, resolve, resolve_pump
from loadfirst.plant.vessels import with_walls


def read_resolved(path: Path | str, edits: Mapping[str, Any] | None = None) -> ResolvedPlant:
    """Read a plant file, change some keys, look up its pump.

    Parameters
    ----------
    path : Path or str
        The file; pumps are looked for beside it first.
    edits : dict, optional
        Dotted keys and values, as `plant.edits` takes them.

    Raises
    ------
    FileError
        For the first thing in the file that cannot be used.
    InputError
        For an edit that cannot be used, once the file itself is sound.
    """
    path = Path(path)
    data = toml_text.read(path)
    resolved = _resolved(data, path.parent, path.name)
    return _resolved(apply_edits(data, edits), path.parent, "") if edits else resolved


def changed(one: ResolvedPlant, edits: Mapping[str, Any]) -> ResolvedPlant:
    """A resolved plant with some keys changed; its instruments stay, also with another pump.

    Parameters
    ----------
    one : what it has set by itself is forgotten.
    edits : dotted keys and values, as `plant.edits` takes them; a pump that they name is a packaged one.

    Raises
    ------
    InputError
        For an edit that cannot be used.
    """
    if not edits:
        return one
    plant = decode_plant(apply_edits(msgspec.to_builtins(one.plant), edits))
    curve = resolve_pump(plant) if any(f"pump.{key}" in edits for key in NAMING) else one.curve
    return fitted(one._replace(plant=plant, curve=curve, found=None))


def plant_data(plant: str | dict[str, Any]) -> dict[str, Any]:
    """The data of a packaged plant by its id, or the data themselves.

    Raises
    ------
    InputError
        Where no packaged plant has that id.
    """
    return plant if isinstance(plant, dict) else library.data("plants", library.known("plants", plant))


def decode_plant(data: object, file: str = "") -> Plant:
    """Turn plain data into a checked plant.

    Parameters
    ----------
    data : dict
        The keys of a plant file.
    file : str
        Name of the file it came from, for the error.

    Raises
    ------
    InputError, or FileError where `file` is given
        For the first thing that cannot be used.
    """
    plant = decode(Plant, with_walls(data, data) if isinstance(data, dict) else data, file)
    check_plant(plant, file)
    return plant


def resolve_data(data: object, file: str = "") -> ResolvedPlant:
    """Decode plain data that came without a folder; only packaged pumps are known to it."""
    return _resolved(data, None, file)


def _resolved(data: object, beside: Path | None, file: str) -> ResolvedPlant:
    plant = decode_plant(data, file)
    try:
        return resolve(plant, beside)
    except InputError as cause:
        raise in_file(cause, file) from None
