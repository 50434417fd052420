"""What the teller of a story goes by, and what is blamed: a reading that misleads."""

from __future__ import annotations

from typing import NamedTuple

from loadfirst.cases.case import Level
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.guess import Guess, guessed, usually
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.pieces import pieces
from loadfirst.cases.compose.plausible import thinkable
from loadfirst.cases.compose.refused import Refused, TooWide
from loadfirst.cases.compose.subject import GROUPS
from loadfirst.causes.catalogue import NOTHING
from loadfirst.causes.group import Group
from loadfirst.days.shift import Direction
from loadfirst.evidence.suspects import suspects

PLAIN = 0.75
"""Probability of the true group by the story's reading, from which that reading does not mislead. [-]"""
SOLVED = 0.85
"""Probability of the true group by all that stands open at first, from which nothing is left to do. [-]"""
FOUND = 0.7
"""Probability of what happened by all readings and a look at it, below which nobody could tell. [-]"""
RIGHTLY: dict[Group, float] = {"machine": 0.35, "nothing": 0.4}
"""Share of the stories whose teller is right, by what happened. [-]"""
SELDOM_RIGHT = 0.2
"""The same for any other group. [-]"""
STILL = 0.2
"""Share of the stories of something that go by a reading that did not move. [-]"""
UNMOVED = 0.6
"""Share of those whose teller says that nothing has happened. [-]"""
MACHINE = 5
"""How many times likelier than any other group the machine is blamed."""
TINGE = 0.25
"""The least difference of a reading that did not move worth a word, of what the instrument explains. [-]"""
AT_FIRST: dict[Level, int] = {"first-steps": 1, "operator": 1, "engineer": 0}
"""How many instruments stand open besides the story's."""
BELIEVED = 3
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
    suspects : single causes that may have happened by what stands open, the likeliest first; not the truth.
    """

    told: str
    way: Direction
    at_first: tuple[str, ...]
    blamed: Guess
    suspects: tuple[Guess, ...]

    @property
    def teller(self) -> Group:
        """The group that the teller blames."""
        return self.blamed.group


def lead(morning: Morning, chance: Chance) -> Lead:
    """Choose how the case begins.

    Raises
    ------
    Refused
        Where no reading misleads, where the first ones tell all, or all of them together too little.
    """
    about = morning.subject
    told = _told(morning, chance)
    others = [id for id in OPEN if id in morning.shifts and id != told]
    at_first = tuple(chance.mixed("at-first", others)[: AT_FIRST[about.level]])
    known = morning.after([told, *at_first])
    if "nothing" not in about.groups and morning.of_groups(known) > SOLVED:
        raise Refused("what stands open at first tells all")
    blamed = _blamed(morning, chance, told)
    rest = tuple(one for one in _thinkable(morning, [told, *at_first]) if one.families != about.families)
    return Lead(told, morning.sure[told], at_first, blamed, rest)


def _thinkable(morning: Morning, open_now: list[str]) -> list[Guess]:
    """Single causes that somebody at the plant would think of, the likeliest first."""
    every = (guessed(one) for one in suspects(morning.after(open_now)))
    about = morning.subject
    return [
        one for one in every if len(one.causes) == 1 and thinkable(about.plant, one.causes[0], about.span)
    ]


def _told(morning: Morning, chance: Chance) -> str:
    """An instrument whose reading misleads, in every draw of another seed too; the cheap questions first."""
    about = morning.subject
    nothing = "nothing" in about.groups
    names = [id for id in pieces("stories")["instrument"] if id in morning.shifts and "level" not in id]
    clear = [id for id in names if morning.clear(id)]
    if not nothing and all(morning.shifts[id].moved == "same" for id in clear):
        raise Refused("no reading has moved clearly")
    still = nothing or chance.share("still") < STILL
    fit = [id for id in clear if (morning.shifts[id].moved == "same") == still]
    if nothing:
        fit = [id for id in fit if _tinged(morning, id)]
    else:
        fit = [id for id in fit if morning.of_groups(morning.after([id])) < PLAIN]
    if not fit:
        raise Refused("no reading misleads")
    _can_be_told(morning)
    fit = [id for id in fit if id in morning.sure]
    if not fit:
        raise TooWide("no reading goes one way at all sizes")
    found: str = chance.pick("told", [id for id in fit for _ in range(1 if id in SELDOM else 3)])
    return found


def _can_be_told(morning: Morning) -> None:
    """Refuse what all readings and one look at each thing could not tell; cheaper than to play it."""
    about = morning.subject
    seen = {id: True for cause in about.causes for id in cause.shown_by}
    if morning.of_causes(morning.after(list(morning.shifts), seen)) < FOUND:
        raise Refused("all readings together tell too little")


def _tinged(morning: Morning, id: str) -> bool:
    one = morning.shifts[id]
    if one.moved != "same" or one.change is None or one.explained is None:
        return False
    return abs(one.change) > TINGE * one.explained


def _blamed(morning: Morning, chance: Chance, told: str) -> Guess:
    """What the teller believes in: it explains the story's reading, and as a rule it is wrong."""
    about = morning.subject
    every = _thinkable(morning, [told])
    true = chance.pick("true", about.causes)
    if chance.share("rightly") < RIGHTLY.get(true.group, SELDOM_RIGHT):
        return next((one for one in every if one.causes == (true,)), usually(true))
    still = morning.sure[told] == "same"
    if still and "nothing" not in about.groups and chance.share("unmoved") < UNMOVED:
        return usually(NOTHING)
    others = [group for group in GROUPS if group not in (*about.groups, "nothing")]
    wrong = [group for group in others for _ in range(MACHINE if group == "machine" else 1)]
    for group in dict.fromkeys(chance.mixed("blamed", wrong)):
        members = [one for one in every if one.group == group][:BELIEVED]
        found = [one for one in members if _explains(morning, one, told)]
        if found:
            return chance.pick("believed", found)
    raise Refused("nobody can be wrong here")


def _explains(morning: Morning, one: Guess, told: str) -> bool:
    """Whether it would have moved the reading the way it went; where it did not, the way it leans."""
    real = morning.shifts[told]
    supposed = morning.suppose(one.usual if real.moved == "same" else one)[told]
    if supposed.change is None or real.change is None:
        return False
    return supposed.moved not in ("same", None) and supposed.change * real.change > 0
