"""The right verdict, derived from what happened overnight.

An author cannot declare it: groups come from the causes, the direction of the
load from the load curves of the two days.
"""

from __future__ import annotations

from typing import Literal, NamedTuple, get_args

from loadfirst.cases.case import Case, Choice, LoadChange
from loadfirst.causes.catalogue import cause
from loadfirst.causes.group import Group
from loadfirst.days.two_days import Days
from loadfirst.errors import InputError

LOAD_GROUPS: frozenset[Group] = frozenset({"discharge-side", "suction-side", "liquid"})
"""Groups whose causes make the load lighter or heavier."""

NOTICEABLE_LOAD = 0.005
"""Least change of the head asked, at yesterday's flow, that counts as another load. [-]"""

GROUPS = frozenset(get_args(Group))

Rightness = Literal["right", "group", "part", "wrong"]
"""Of a verdict: borne out; the true group, but not what happened there; true, but not all of it; wrong."""


class Truth(NamedTuple):
    """What happened: ids of the causes, their groups each once, and what they did to the load."""

    causes: tuple[str, ...]
    groups: tuple[Group, ...]
    load: LoadChange | None


def truth_of(case: Case, days: Days) -> Truth:
    """The truth of a case.

    Raises
    ------
    InputError
        Where `nothing` stands beside something.
    """
    causes = tuple(change.cause for change in case.today)
    if "nothing" in causes and len(causes) > 1:
        raise InputError("today", ", ".join(causes), "either nothing or causes", rule="together")
    groups = tuple(dict.fromkeys(cause(id).group for id in causes))
    return Truth(causes, groups, _load_change(groups, days))


def _load_change(groups: tuple[Group, ...], days: Days) -> LoadChange | None:
    if not LOAD_GROUPS.intersection(groups):
        return None
    return load_change(*days.load_at_yesterdays_flow, days.head_scale)


def load_change(before: float | None, after: float | None, scale: float) -> LoadChange | None:
    """How the head asked at yesterday's flow has changed; None where the load curves agree there.

    Parameters
    ----------
    before, after : head; None where no flow can pass. [m]
    scale : head to compare a change with, above 0. [m]
    """
    if before is None or after is None:
        return None
    change = (after - before) / scale
    if abs(change) < NOTICEABLE_LOAD:
        return None
    return "heavier" if change > 0 else "lighter"


def family(id: str) -> str:
    """The cause that stands for all those which no reading tells from it."""
    return cause(id).alike or id


def groups_of(choice: Choice) -> frozenset[Group]:
    """The groups that a verdict blames, by themselves or through their causes."""
    return frozenset(name if name in GROUPS else cause(name).group for name in choice.blames)  # type: ignore[misc]


def rightness(choice: Choice, truth: Truth) -> Rightness:
    """How far a verdict is borne out.

    Right: its groups are the true ones, every cause that it names happened (or cannot be
    told from one that did), and so did the direction of the load, where it names one.
    In part: all of that is so, but a group is missing.
    """
    blamed, groups = groups_of(choice), set(truth.groups)
    happened = {family(id) for id in truth.causes}
    named = {family(name) for name in choice.blames if name not in GROUPS}
    so = named <= happened and choice.load in (None, truth.load)
    if blamed == groups:
        return "right" if so else "group"
    return "part" if so and blamed < groups else "wrong"


def right_choice(case: Case, truth: Truth) -> Choice:
    """The right verdict of a case that holds."""
    return next(choice for choice in case.choices if rightness(choice, truth) == "right")
