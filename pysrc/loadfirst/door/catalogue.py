"""What comes with the program, and the range of every key: the page's controls are made from it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import Any

import msgspec

from loadfirst.cases.read import catalogue as case_list
from loadfirst.plant import library
from loadfirst.plant.keys import Key, keys_of
from loadfirst.plant.plant import Plant
from loadfirst.plant.pump_kind import pump_kind
from loadfirst.plant.pumps import find_pump


@lru_cache(maxsize=1)
def catalogue() -> dict[str, Any]:
    """Answer a ``catalogue`` ask: the same every time, so made once.

    Returns
    -------
    dict
        ``plants``, ``pumps`` and ``cases`` as lists of {id, title, …}; a
        pump's ``kind`` is as in an answer;
        ``limits`` by dotted key: unit, low, high and default of a number (``whole`` where it is one),
        with ``least`` and ``most`` entries where it is a list of them;
        choices and default of a word; ``longest`` of a text. File units.
    """
    return {
        "plants": [_plant(name) for name in library.ids("plants")],
        "pumps": [_pump(name) for name in _by_size(library.ids("pumps"))],
        "cases": msgspec.to_builtins(case_list()),
        "limits": {path: limits for path, key in keys_of(Plant).items() if (limits := _limits(key))},
    }


def _by_size(pumps: Sequence[str]) -> list[str]:
    """Smallest motor first."""
    return sorted(pumps, key=lambda name: find_pump(name).motor_kw)


def _plant(name: str) -> dict[str, str]:
    data = library.data("plants", name)
    return {"id": name, "title": data["title"], "about": data.get("about", "")}


def _pump(name: str) -> dict[str, str]:
    pump = find_pump(name)
    return {"id": name, "title": pump.title, "kind": pump_kind(pump)}


def _limits(key: Key) -> dict[str, Any]:
    kind, facts = key.expected.kind, key.expected.facts
    if kind in ("number", "whole"):
        whole = {"whole": True} if kind == "whole" else {}
        return {"unit": key.unit, "low": facts["low"], "high": facts["high"], "default": key.default} | whole
    if kind == "list":
        ends = {name: facts[name] for name in ("low", "high", "least", "most")}
        return {"unit": key.unit, **ends, "default": key.default}
    if kind in ("choice", "flag"):
        return {"choices": facts["choices"], "default": key.default}
    if kind == "text":
        return {"longest": facts["high"], "default": key.default}
    return {}
