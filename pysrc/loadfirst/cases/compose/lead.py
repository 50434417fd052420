"""What the teller of a story goes by, and what is blamed: a reading that moved, and that misleads."""

from __future__ import annotations

from typing import NamedTuple

from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.pieces import pieces
from loadfirst.cases.compose.refused import Refused
from loadfirst.cases.compose.subject import GROUPS, Level
from loadfirst.cases.truth import family
from loadfirst.causes.group import Group
from loadfirst.days.shift import Direction
from loadfirst.evidence.suspects import Suspect, suspects

PLAIN = 0.75
"""Probability of the true group by the story's reading, from which that reading does not mislead. [-]"""
SOLVED = 0.85
"""Probability of the true group by all that stands open at first, from which nothing is left to do. [-]"""
RIGHTLY = 0.15
"""Share of the stories whose teller is right about the group. [-]"""
MACHINE = 4
"""How many times likelier than any other group the machine is blamed."""
TINGE = 0.25
"""Where nothing has happened: the least difference worth a word, of what the instrument explains. [-]"""
AT_FIRST: dict[Level, int] = {"first-steps": 1, "operator": 1, "engineer": 0}
"""How many instruments stand open besides the story's."""
BELIEVED = 4
"""How many suspects of a group a teller thinks of."""
SELDOM = ("tachometer-1", "tachometer-2", "ammeter-2")
"""Instruments of which stories speak three times less often than of the others."""
OPEN = ("gauge-suction", "level-supply", "level-delivery", "gauge-discharge", "tachometer-1", "ammeter-1")


class Lead(NamedTuple):
    """How a case begins.

    Attributes
    ----------
    told : the instrument of the story.
    way : which way the story has it.
    at_first : instruments that stand open besides.
    blamed : what the teller believes in.
    suspects : everything that may have happened by what stands open, the likeliest first; not the truth.
    """

    told: str
    way: Direction
    at_first: tuple[str, ...]
    blamed: Suspect
    suspects: tuple[Suspect, ...]

    @property
    def teller(self) -> Group:
        """The group that the teller blames."""
        return self.blamed.hypothesis.causes[0].group


def lead(morning: Morning, chance: Chance) -> Lead:
    """Choose how the case begins.

    Raises
    ------
    Refused
        Where no reading misleads, or where the first ones tell all.
    """
    truth = morning.subject.cause
    told = _told(morning, chance)
    others = [id for id in OPEN if id in morning.shifts and id != told]
    at_first = tuple(chance.mixed("at-first", others)[: AT_FIRST[morning.subject.level]])
    known = morning.after([told, *at_first])
    if truth.group != "nothing" and float(known.groups[truth.group][0]) > SOLVED:
        raise Refused("what stands open at first tells all")
    every = suspects(known)
    blamed = _blamed(morning, chance, told)
    rest = tuple(one for one in every if family(_id(one)) != family(truth.id))
    moved = morning.shifts[told].moved
    return Lead(told, moved or "same", at_first, blamed, rest)


def _id(one: Suspect) -> str:
    return one.hypothesis.causes[0].id


def _told(morning: Morning, chance: Chance) -> str:
    truth = morning.subject.cause
    names: list[str] = [
        id for id in pieces("stories")["instrument"] if id in morning.shifts and "level" not in id
    ]
    if truth.group == "nothing":
        fit = [id for id in names if _tinged(morning, id)]
    else:
        moved = [id for id in names if morning.clear(id) and morning.shifts[id].moved in ("up", "down")]
        if not moved:
            raise Refused("no reading has moved clearly")
        fit = [id for id in moved if float(morning.after([id]).groups[truth.group][0]) < PLAIN]
    if not fit:
        raise Refused("no reading that moved misleads")
    return chance.pick("told", [id for id in fit for _ in range(1 if id in SELDOM else 3)])


def _tinged(morning: Morning, id: str) -> bool:
    one = morning.shifts[id]
    if one.moved != "same" or one.change is None or one.explained is None:
        return False
    return abs(one.change) > TINGE * one.explained


def _blamed(morning: Morning, chance: Chance, told: str) -> Suspect:
    """What the teller believes in: it explains the story's reading, and as a rule it is wrong."""
    truth = morning.subject.cause
    every = suspects(morning.after([told]))
    if truth.group != "nothing" and chance.share("rightly") < RIGHTLY:
        return next(one for one in every if _id(one) == truth.id)
    others = [group for group in GROUPS if group not in (truth.group, "nothing")]
    wrong = [group for group in others for _ in range(MACHINE if group == "machine" else 1)]
    for group in dict.fromkeys(chance.mixed("blamed", wrong)):
        members = [one for one in every if one.hypothesis.causes[0].group == group][:BELIEVED]
        found = next((one for one in members if _explains(morning, one, told)), None)
        if found is not None:
            return found
    raise Refused("nobody can be wrong here")


def _explains(morning: Morning, one: Suspect, told: str) -> bool:
    """Whether it would have moved the reading the way it went; where nothing happened, the way it leans."""
    real = morning.shifts[told]
    supposed = morning.suppose(one, usual=real.moved == "same")[told]
    if supposed.change is None or real.change is None:
        return False
    return supposed.moved not in ("same", None) and supposed.change * real.change > 0
