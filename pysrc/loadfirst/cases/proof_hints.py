"""Ways out for an author whose case does not hold: which key is the one to be changed, and why."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from loadfirst.cases.case import Case
from loadfirst.cases.happened import Happened
from loadfirst.cases.scope import READINGS, Text
from loadfirst.cases.truth import Truth, rightness
from loadfirst.cases.words import Placeholder
from loadfirst.causes.catalogue import cause
from loadfirst.instruments.file_units import UNITS
from loadfirst.instruments.instrument import Reading
from loadfirst.plant.keys import keys_of
from loadfirst.plant.near import nearest
from loadfirst.plant.plant import Plant


def wrong_way(case: Case, truth: Truth) -> tuple[str, dict[str, Any]]:
    """Hint and fact for a verdict that would be right but for what it says of the load; empty without one."""
    for choice in case.choices:
        if choice.load is not None and rightness(replace(choice, load=None), truth) == "right":
            return f"`{choice.id}` blames rightly, but says load {choice.load}.", {"nearly": choice.id}
    return "", {}


def small_per_cent(case: Case) -> tuple[str, dict[str, Any]]:
    """Hint and fact for a size that looks like a share where per cent are meant; empty where none does."""
    for number, change in enumerate(case.today):
        size = cause(change.cause).size
        given = change.size
        if size is not None and size.unit == "%" and given is not None and 0 < abs(given) < 1:
            percent, meant = f"{given:.3g}", f"{100 * given:.3g}"
            hint = f"The size of today[{number}] is in %, now {percent} %: was {meant} meant?"
            return hint, {"percent": percent, "meant": meant}
    return "", {}


def seen_by_then(case: Case, text: Text, place: Placeholder) -> tuple[str, dict[str, Any]]:
    """Hint and fact for a placeholder that comes too early: what was seen by then, or who may tell it."""
    check = _in_check(case, text.where)
    if ":" in place.source:
        return f"What a test reads is told{check} too early: replies may.", {}
    if place.source in READINGS:
        seen = ", ".join(sorted(text.may_name or ()))
        return f"Seen by then{check}: {seen or 'nothing'}.", {"seen": seen} if seen else {}
    tell = ", ".join(sorted({id for change in case.today for id in cause(change.cause).shown_by}))
    may = f"`shows` of a check that shows what happened ({tell}), and " if tell else ""
    hint = f"The plant as it is today is told{check} too early: {may}replies may."
    return hint, {"tell": tell} if tell else {}


def _in_check(case: Case, where: str) -> str:
    """The id of the check to which a text belongs, in words."""
    ids = [check.id for number, check in enumerate(case.checks) if where.startswith(f"checks[{number}].")]
    return f" (in check {ids[0]})" if ids else ""


def stands_for_nothing(place: Placeholder, what: Happened) -> tuple[str, dict[str, Any]]:
    """Hint and facts for a placeholder without a number: a pointer on its stop, or a name nearly known."""
    readings = [*what.days.yesterday.readings, *what.tested_readings]
    if place.source in readings:
        shift = what.shift(place.source)
        reading = shift.today if place.day == "today" else shift.yesterday
        return _no_number(place, reading), {"off": (reading and reading.off_scale) or "nothing"}
    facts: dict[str, Any] = {"choices": readings}
    near = nearest(place.source, [*readings, *keys_of(Plant)])
    if near:
        return f"Did you mean {{{place.day}.{near}}}?", facts | {"nearest": f"{{{place.day}.{near}}}"}
    return f"Readings here: {', '.join(readings)}.", facts


def _no_number(place: Placeholder, reading: Reading | None) -> str:
    if reading is None or reading.off_scale is None:
        return f"On that day ({place.day}) it shows nothing that can be read."
    unit, size, _ = UNITS[reading.quantity]
    end = "below" if reading.off_scale == "low" else "above"
    scale = f"from {reading.low / size:.4g} to {reading.high / size:.4g} {unit}"
    return f"On that day ({place.day}) it would stand {end} its scale, which goes {scale}."
