"""Two days side by side: one answer to what changed, why it moved, and what every instrument makes of it."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any, Literal

from msgspec import Struct

from loadfirst.causes.group import Group
from loadfirst.clock.moment import Moment
from loadfirst.days.alone import Parts, alone
from loadfirst.days.groups import group_in
from loadfirst.days.meeting import Meeting, meeting
from loadfirst.days.moment import LEVELS, at_moment
from loadfirst.days.reason import Reason, reasons
from loadfirst.days.shift import Shift, shift
from loadfirst.days.two_days import Days, flat, two_days
from loadfirst.instruments.piece import same_piece
from loadfirst.plant.effective import effective

Side = Literal["load", "machine", "drive", "liquid", "instrument"]

SIDES: dict[Group, Side] = {
    "discharge-side": "load", "suction-side": "load", "liquid": "liquid",
    "drive": "drive", "machine": "machine", "instrument": "instrument",
}  # fmt: skip
PUMPS = ("pump.arrangement", "pump.running", "pump.second.running")
"""How many pumps run is load to each of them, but machine where they are looked at together."""


class Changed(Struct, frozen=True):
    """One plant key that was changed.

    Attributes
    ----------
    key : dotted.
    side : where it lies.
    yesterday, today : its values in file units, as in the plants' files; None where it is left out.
    """

    key: str
    side: Side
    yesterday: Any
    today: Any


class Compared(Struct, frozen=True):
    """All there is to say of two days.

    Attributes
    ----------
    changed : what was changed by hand.
    meeting : duty points, and both curves at yesterday's flow.
    parts : what each change does to the flow; None where there is one, or where they cannot be told apart.
    readings : every instrument.
    reasons : why each instrument moved that did, by its id.
    """

    changed: tuple[Changed, ...]
    meeting: Meeting
    parts: Parts | None
    readings: tuple[Shift, ...]
    reasons: dict[str, Reason]


def compare(
    yesterday: dict[str, Any],
    today: dict[str, Any],
    edited: Collection[str] = (),
    moment: Moment | None = None,
) -> Compared:
    """Compare two days.

    Parameters
    ----------
    yesterday, today : plants as plain data, all edits applied.
    edited : keys that were changed by hand on either day, where both are the same plant; what
        else differs then only follows from these. Empty: all that differs counts.
    moment : of the clock, where time runs: today is then what stands at that moment.

    Raises
    ------
    InputError
        For a plant that cannot be used, or that comes to no steady state.
    """
    days = two_days(yesterday, today)
    if moment is not None:
        days = at_moment(days, moment)
    changed = _changed(days, edited)
    met = meeting(days)
    shifts = _shifts(days)
    why = reasons(days, met, shifts)
    if moment is not None:
        why |= {id: "time" for id, key in LEVELS.items() if id in why and key not in edited}
    return Compared(
        changed, met, alone(days, [one.key for one in changed if one.side != "instrument"]),
        tuple(shifts), why,
    )  # fmt: skip


def _changed(days: Days, edited: Collection[str]) -> tuple[Changed, ...]:
    moves = days.today.resolved.plant.control.on
    keys = {key: group for key in days.differences if (group := group_in(key, moves)) is not None}
    by_hand = {key: group for key, group in keys.items() if key in edited}
    sides = {key: SIDES[group] for key, group in (by_hand or keys).items()}
    plants = [
        flat(effective(day.resolved)) for day in (days.yesterday, days.today)
    ]  # no frequency: the supply's
    values = {
        key: [plant.get(key, given) for plant, given in zip(plants, days.differences[key], strict=True)]
        for key in sides
    }
    return tuple(Changed(key, _side(key, side), *values[key]) for key, side in sides.items())


def _side(key: str, side: Side) -> Side:
    return "machine" if key in PUMPS else side


def _shifts(days: Days) -> list[Shift]:
    before, after = days.yesterday, days.today
    plants = before.settled.plant, after.settled.plant
    return [
        shift(before.readings.get(id), after.readings.get(id), same_piece(id, *plants))
        for id in dict.fromkeys([*before.readings, *after.readings])
    ]
