"""What speaks most against a verdict: the reading that it would have moved otherwise."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from typing import NamedTuple

from loadfirst.cases.compose.guess import Guess
from loadfirst.cases.compose.morning import Morning
from loadfirst.days.shift import Shift

FAR = 1.5
"""How far supposed and real reading must lie apart to speak against a verdict, of what is explained. [-]"""
FARTHER = 3.0
"""The same where both went one way, and other sizes may draw them together. As far is far enough. [-]"""
WAYS = ("up", "down", "same")
NEARLY = 0.3
"""So much of the strongest, and a reading speaks as well. Own choice. [-]"""


class Against(NamedTuple):
    """A reading that speaks against a verdict.

    Attributes
    ----------
    id : the instrument.
    supposed : which way it would have gone.
    real : what it did; "more" or "less" where it would have gone so far.
    far : how far apart the two are, of what the instrument explains. [-]
    table : of the replies.
    """

    id: str
    supposed: str
    real: str
    far: float
    table: str = "against"


def speaks(
    morning: Morning, one: Guess, told: str, seen: Collection[str], used: Collection[str]
) -> Against | None:
    """The reading that speaks against a guess; None where none does.

    Parameters
    ----------
    told : the story's reading; a guess that explains it is as large as that needs, any other as usual.
    seen : instruments that can be quoted.
    used : those that speak against others already; another one is better.
    """
    fitted, real = morning.suppose(one), morning.shifts[told].moved
    explained = fitted[told].moved == real != "same"  # what did not move says of no size how large it is
    found = list(_against(morning, fitted, seen)) if explained else []
    if not found:
        usual = morning.suppose(one.usual)
        if explained and usual[told].moved != real:
            return None  # it explains what was told the other way round than it usually comes
        found = list(_as_usual(_against(morning, usual, seen), one))
    return _best(found, used) if found else None


def _as_usual(every: Iterator[Against], one: Guess) -> Iterator[Against]:
    """Of a guess as large as it usually is: other ways, not other distances.

    Where its cause has sizes on both sides of nothing it might have gone the other way as well.
    """
    sizes = [cause.size for cause in one.causes if cause.size is not None]
    either = any(size.low < size.none < size.high for size in sizes)
    for each in every:
        if not sizes:
            yield each
        elif each.real == "same":
            yield each._replace(table="usual", supposed="either" if either else each.supposed)
        elif each.real in WAYS and (each.supposed == "same" or not either):
            yield each


def _best(found: list[Against], used: Collection[str]) -> Against:
    """Another direction before another distance, another instrument before one that has spoken."""
    directions = [one for one in found if one.real not in ("more", "less")] or found
    strong = sorted(directions, key=lambda one: -one.far)
    near = [one for one in strong if one.far >= min(NEARLY * strong[0].far, FARTHER)]
    return next((one for one in near if one.id not in used), strong[0])


def _against(morning: Morning, supposed: Mapping[str, Shift], seen: Collection[str]) -> Iterator[Against]:
    for id in seen:
        found = _compared(id, supposed[id], morning.shifts[id])
        if found is not None and found.far > (FARTHER if found.real in ("more", "less") else FAR):
            yield found


def _compared(id: str, supposed: Shift, real: Shift) -> Against | None:
    if supposed.change is None or real.change is None or not real.explained:
        return None
    if supposed.moved is None or real.moved is None:
        return None
    far = abs(supposed.change - real.change) / real.explained
    if supposed.moved != real.moved:
        return Against(id, supposed.moved, real.moved, far)
    if real.moved == "same":
        return None
    return Against(id, real.moved, "more" if abs(supposed.change) > abs(real.change) else "less", far)
