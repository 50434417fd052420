"""The wrong verdicts of a composed case: what else somebody might think of."""

from __future__ import annotations

from loadfirst.cases.case import Level
from loadfirst.cases.compose.against import speaks
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.guess import Guess, usually
from loadfirst.cases.compose.lead import Lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.causes.catalogue import NOTHING

WRONG: dict[Level, int] = {"first-steps": 3, "operator": 4, "engineer": 5}
"""Wrong verdicts on offer."""
LEAST = 3
"""Wrong verdicts on offer even where little else can be thought of."""
THINKABLE = 0.002
"""Probability, by what stands open at first, from which somebody might think of it. [-]"""
ANYWAY = 0.4
"""Share of the cases of something in which it is on offer that nothing has changed. [-]"""


def rivals(morning: Morning, of: Lead, chance: Chance) -> list[Guess]:
    """The wrong verdicts, without the truth.

    Two at once and either of them, where two are on offer; the teller's; then the likeliest by what stands
    open, other groups first, of those against which a reading speaks.
    """
    about = morning.subject
    seen = list(morning.sure)
    chosen: list[Guess] = []
    two = about.causes if len(about.causes) == 2 else about.mistaken or ()
    for one in (*([usually(*two)] if two else []), *map(usually, two), of.blamed):
        _add(chosen, one, about.families)
    if chance.share("anyway") < ANYWAY:
        _add(chosen, usually(NOTHING), about.families)
    likely = [one for one in of.suspects if one.probability > THINKABLE]
    most = WRONG[about.level] + bool(two)
    for some, enough in ((_fresh(chosen, likely, about.groups), most), (likely, most), (of.suspects, LEAST)):
        for one in some:
            if len(chosen) < enough and speaks(morning, one, of.told, seen, ()):
                _add(chosen, one, about.families)
    return chosen


def _add(chosen: list[Guess], one: Guess, truth: frozenset[str]) -> None:
    """Where it is another verdict than those on offer and than the right one."""
    if one.families not in (truth, *(other.families for other in chosen)):
        chosen.append(one)


def _fresh(chosen: list[Guess], likely: list[Guess], true: frozenset[str]) -> list[Guess]:
    """The likeliest of each group that is not on offer yet."""
    groups = {*true, *(one.group for one in chosen)}
    first = {one.group: one for one in reversed(likely)}
    return [one for one in likely if one.group not in groups and first[one.group] is one]
