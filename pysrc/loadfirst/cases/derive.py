"""The right verdict, derived from what differs between the two days.

An author cannot declare it: the group comes from the plant keys that differ,
the direction of the load from the load curves of the two days.
"""

from __future__ import annotations

from typing import Any

from loadfirst.cases.case import Case, Choice, Direction, LoadChange
from loadfirst.cases.days import Days
from loadfirst.cases.groups import LOAD_GROUPS, group_in
from loadfirst.causes.group import Group
from loadfirst.errors import InputError
from loadfirst.instruments.panel import Reading
from loadfirst.instruments.piece import same_piece
from loadfirst.instruments.uncertainty import of_difference

NOTICEABLE_LOAD = 0.005
"""Least change of the head asked, at yesterday's flow, that counts as another load. [-]"""


def truth_of(case: Case, days: Days) -> Group:
    """The group of causes that the difference between the days belongs to.

    Raises
    ------
    InputError
        Where nothing differs without the file saying so, where a key cannot
        change overnight, or where the differences belong to several groups.
    """
    keys = list(days.differences)
    if case.today.unchanged:
        return _nothing(keys)
    if not keys:
        raise InputError(
            "today",
            {},
            "different from yesterday in at least one plant key",
            "Write `unchanged = true` where nothing has changed and that is the point.",
            rule="days",
        )
    moves = days.today.resolved.plant.control.on
    groups = list(dict.fromkeys(_group(key, moves) for key in keys))
    if len(groups) > 1:
        raise InputError(
            "today.plant",
            ", ".join(keys),
            f"of one group of causes, not of {' and '.join(groups)}",
            "One cause at a time.",
            rule="days",
        )
    return groups[0]


def _nothing(keys: list[str]) -> Group:
    if keys:
        raise InputError(
            "today.unchanged",
            True,
            f"left out, because {', '.join(keys)} differs from yesterday",
            rule="days",
        )
    return "nothing"


def _group(key: str, moves: str) -> Group:
    group = group_in(key, moves)
    if group is None:
        raise InputError(f"today.plant.{key}", key, "a key that can change between two days", rule="days")
    return group


def load_change(truth: Group, days: Days) -> LoadChange | None:
    """How the head asked at yesterday's flow has changed.

    None where the difference lies inside the machine, its drive or an
    instrument, or where the two load curves agree at that flow.
    """
    if truth not in LOAD_GROUPS:
        return None
    before, after = days.load_at_yesterdays_flow
    if before is None or after is None:
        return None
    change = (after - before) / days.head_scale
    if abs(change) < NOTICEABLE_LOAD:
        return None
    return "heavier" if change > 0 else "lighter"


def is_right(choice: Choice, truth: Group, load: LoadChange | None) -> bool:
    """Whether a verdict is borne out: its group, and its direction of the load where it names one."""
    return choice.blames == truth and choice.load in (None, load)


def moved(days: Days, id: str) -> Direction | None:
    """Which way an instrument moved, by more than it differs from itself between two looks.

    An instrument beyond one end of its scale on one day only has moved; without
    a reading on a day there is nothing to say.
    """
    yesterday, today = days.reading(id)
    before, after = _rank(yesterday), _rank(today)
    if before is None or after is None:
        return None
    if before != after:
        return "up" if after > before else "down"
    if before != 0 or yesterday.value is None or today.value is None:
        return "same"
    change = today.value - yesterday.value
    if abs(change) <= unexplained_from(days, id):
        return "same"
    return "up" if change > 0 else "down"


def unexplained_from(days: Days, id: str) -> float:
    """The least difference between the days that the instrument does not make by itself, in its unit.

    The same instrument shares its lasting error on both days: only what does not repeat counts.
    """
    errors = [reading.accuracy or 0.0 for reading in days.reading(id)]
    plants = days.yesterday.settled.plant, days.today.settled.plant
    return of_difference(*errors, same=same_piece(id, *plants))


def _rank(reading: Reading) -> int | None:
    """-1 below the scale, 0 on it, 1 above, None without a reading."""
    ends: dict[Any, int] = {"low": -1, "high": 1}
    if reading.off_scale is not None:
        return ends[reading.off_scale]
    return None if reading.value is None else 0
