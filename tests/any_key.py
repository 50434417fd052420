"""Any key of a plant, set anywhere in its range: found by walking the type, so that a new key is drawn too.

What must hold between keys is not known here. A plant that a key has made
illegal is made legal again by taking that key's change back; so a new key with
a relation of its own is drawn at once, and only more seldom than it might be.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log
from typing import Any, NamedTuple, Protocol, TypeVar

from loadfirst.errors import InputError
from loadfirst.plant.keys import Key, keys_of
from loadfirst.plant.plant import Plant

Data = dict[str, Any]

LEFT_OUT = {
    "format": "there is one number of this format",
    "title": "what people call a plant changes nothing",
    "about": "likewise",
    "pump.curve.title": "likewise",
    "pump.displacement.title": "likewise",
    "liquid.name": "goes with the liquid's properties, which the sensible plant draws",
    "pump.arrangement": "a shape, which the sensible plant draws",
    "discharge.attached": "likewise",
    "pump.model": "goes with the whole pump, which the sensible plant draws",
    "pump.second.model": "likewise",
    "pump.curve.flow_m3h": "points belong together, and the sensible plant draws them",
    "pump.curve.head_m": "likewise",
    "pump.curve.efficiency_percent": "likewise",
    "pump.curve.power_kw": "likewise",
    "pump.curve.npshr_m": "likewise",
}
"""Keys that are not set by themselves, and why."""

WITHIN = ("pump.curve", "pump.displacement")
"""Tables that are there only where the plant's own pump stands in its file."""


T = TypeVar("T")


class Chooser(Protocol):
    """Where the choices come from."""

    def number(self, low: float, high: float) -> float:
        """Any number of a range, both ends included."""
        ...

    def pick(self, items: Sequence[T]) -> T:
        """One of a few."""
        ...


class Change(NamedTuple):
    """A key that was set, and what stood there before; None where nothing did."""

    path: str
    before: Any


def drawn_keys() -> dict[str, Key]:
    """Every key that is set by itself."""
    return {path: key for path, key in keys_of(Plant).items() if path not in LEFT_OUT}


def set_any(choose: Chooser, data: Data) -> Change | None:
    """Set one key, if the plant has its table; what it was is returned."""
    keys = drawn_keys()
    path = choose.pick(sorted(keys))
    value = any_value(choose, keys[path])
    table, _, _ = path.rpartition(".")
    if table in WITHIN and table.rpartition(".")[2] not in data["pump"]:
        return None
    return Change(path, put(data, path, value))


def any_value(choose: Chooser, key: Key) -> Any:
    """One of its words, or a number: an end of its range, or anywhere in it or in its orders of size."""
    facts = key.expected.facts
    match key.expected.kind:
        case "choice" | "flag":
            return choose.pick(tuple(facts["choices"]))
        case "number" | "whole":
            number = _number(choose, float(facts["low"]), float(facts["high"]))
            return round(number) if key.expected.kind == "whole" else number
        case "list":
            count = facts["most"] if facts["least"] == facts["most"] else facts["least"]
            return sorted(_number(choose, float(facts["low"]), float(facts["high"])) for _ in range(count))
    raise AssertionError(f"{key.path}: a {key.expected.kind} cannot be drawn; leave it out with a reason")


def _number(choose: Chooser, low: float, high: float) -> float:
    inside = choose.number(low, high)
    sizes = min(max(exp(choose.number(log(low), log(high))), low), high) if low > 0 else inside
    return float(choose.pick((low, high, inside, sizes)))


def put(data: Data, path: str, value: Any) -> Any:
    """Set a dotted key, or take it away with None; what stood there is returned."""
    *tables, name = path.split(".")
    for table in tables:
        data = data.setdefault(table, {})
    before = data.get(name)
    if value is None:
        data.pop(name, None)
    else:
        data[name] = value
    return before


def take_back(data: Data, changes: list[Change], fault: InputError) -> None:
    """Undo the change that a fault speaks of, or the last one."""
    named = {fault.where, str(fault.facts.get("other", ""))}
    found = [
        change for change in changes if change.path in named or fault.where.startswith(f"{change.path}[")
    ]
    change = (found or changes)[-1]
    changes.remove(change)
    put(data, change.path, change.before)
