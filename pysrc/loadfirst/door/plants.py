"""Plant files that a person opens."""

from __future__ import annotations

from typing import Any

from loadfirst.door.messages import PlantFileAsk
from loadfirst.plant import toml_text
from loadfirst.plant.read import resolve_data


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
