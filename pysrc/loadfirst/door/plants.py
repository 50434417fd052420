"""Plants that an ask names or carries, and plant files that a person opens."""

from __future__ import annotations

from typing import Any

from loadfirst.door.messages import PlantFileAsk
from loadfirst.errors import InputError
from loadfirst.plant import library, toml_text
from loadfirst.plant.decode import nearest
from loadfirst.plant.expect import one_of
from loadfirst.plant.read import resolve_data


def plant_data(plant: str | dict[str, Any]) -> dict[str, Any]:
    """The data of a packaged plant by its id, or the data themselves.

    Raises
    ------
    InputError
        Where no packaged plant has that id.
    """
    if isinstance(plant, dict):
        return plant
    if not library.has("plants", plant):
        known = list(library.ids("plants"))
        near = nearest(plant, known)
        hint = f"Did you mean {near}?" if near else ""
        allowed = f"the id of a plant: {one_of(known)}"
        raise InputError("plant", plant, allowed, hint, rule="lookup", choices=known)
    return library.data("plants", plant)


def plant_file(ask: PlantFileAsk) -> dict[str, Any]:
    """Check a file that a person opened and hand it back as data.

    Returns
    -------
    dict
        ``plant``, the keys the file gives and no more; ``title``.

    Raises
    ------
    FileError
        For the first thing in it that cannot be used.
    """
    data = toml_text.parse(ask.text, ask.name)
    return {"plant": data, "title": resolve_data(data, ask.name).plant.title}
