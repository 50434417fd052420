"""Files that a person opens: plants and puzzles."""

from __future__ import annotations

from typing import Any

from loadfirst.cases.load import load_case
from loadfirst.cases.recognise import kind_of
from loadfirst.door.messages import FileAsk
from loadfirst.errors import FileError, InputError
from loadfirst.plant import toml_text
from loadfirst.plant.read import resolve_data


def open_file(ask: FileAsk) -> dict[str, Any]:
    """Check a file that a person opened, and say what it is.

    Returns
    -------
    dict
        ``kind`` and ``title``. Of a plant also ``plant``, the keys the file gives and no
        more. A puzzle is proven; it is played by asking ``case`` with the same name and text.

    Raises
    ------
    FileError
        For the first thing in it that cannot be used, or for a pump, which is no plant yet.
    """
    data = toml_text.parse(ask.text, ask.name)
    kind = kind_of(data)
    if kind == "case":
        return {"kind": kind, "title": load_case((ask.name, ask.text)).case.title}
    if kind == "pump":
        hint = "Write its points into a plant, as a table [pump.curve]."
        raise FileError(ask.name, InputError("the file", "a pump", "a plant or a puzzle", hint, rule="pump"))
    return {"kind": kind, "title": resolve_data(data, ask.name).plant.title, "plant": data}
