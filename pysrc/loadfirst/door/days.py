"""A remembered day and today, compared."""

from __future__ import annotations

from typing import Any

import msgspec

from loadfirst.days.compare import compare
from loadfirst.door.messages import DaysAsk, Rig
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.places import inside
from loadfirst.plant.read import plant_data


def days(ask: DaysAsk) -> dict[str, Any]:
    """Answer a ``days`` ask.

    Returns
    -------
    dict
        As `days.compare.Compared`; SI units but for the values of `changed`.

    Raises
    ------
    InputError
        Where a plant cannot be used; `where` begins with the day.
    """
    yesterday, today = ask.yesterday, ask.today
    edited = {*yesterday.edits, *today.edits} if yesterday.plant == today.plant else ()
    both = _data(yesterday, "yesterday"), _data(today, "today")
    compared: dict[str, Any] = msgspec.to_builtins(compare(*both, edited, ask.moment))
    return compared


def _data(rig: Rig, day: str) -> dict[str, Any]:
    with inside(day):
        return apply_edits(plant_data(rig.plant), rig.edits)
