"""How large what happened is: two ends between which another seed may draw, by level and by plant."""

from __future__ import annotations

from typing import NamedTuple

from loadfirst.cases.case import Level
from loadfirst.cases.compose import plausible
from loadfirst.cases.compose.chance import Chance
from loadfirst.causes.cause import Cause
from loadfirst.plant.pumps import ResolvedPlant

FAINT, STRONG = 0.4, 1.8
"""Least and greatest size, over one worth showing, where nothing says what is plausible. Own choice. [-]"""
ROOM: dict[Level, tuple[float, float]] = {
    "first-steps": (0.4, 1.0), "operator": (0.2, 0.75), "engineer": (0.0, 0.5)
}  # fmt: skip
"""Where on the way from the faintest to the strongest a level draws its sizes. Own choice. [-]"""
WIDTHS = (0.12, 0.05, 0.0)
"""How far the ends stand from the middle on that way: tried one after the other. [-]"""
EDGE = 0.02
"""So much of the room that a plant leaves a cause is not used at either end. [-]"""


class Sizes(NamedTuple):
    """The sizes of one cause, three digits each.

    Attributes
    ----------
    low, high : ends, the smaller number first; the same where the size is fixed.
    """

    low: float
    high: float

    @property
    def middle(self) -> float:
        """Half way."""
        return (self.low + self.high) / 2


def drawn(
    chance: Chance, cause: Cause, where: tuple[str, ResolvedPlant], level: Level, width: float
) -> Sizes | None:
    """Sizes of a cause; None where it has none.

    Parameters
    ----------
    where : id of the plant, and the plant.
    width : one of `WIDTHS`; the middle does not depend on it.
    """
    if cause.size is None:
        return None
    faint, strong = _way(chance, cause, where[0])
    room = (cause.at(where[1], EDGE), cause.at(where[1], 1 - EDGE))
    least, most = ROOM[level]
    middle = least + (most - least) * chance.share(f"size.{cause.id}")
    ends = [faint + (strong - faint) * min(max(middle + far, 0.0), 1.0) for far in (-width, width)]
    return Sizes(*sorted(float(f"{min(max(end, room[0]), room[1]):.3g}") for end in ends))


def _way(chance: Chance, cause: Cause, plant: str) -> tuple[float, float]:
    """From the faintest to the strongest; to either side where the range has both."""
    own = plausible.sizes(plant, cause)
    if own is not None:
        return own
    assert cause.size is not None
    none, far = cause.size.none, cause.size.usual - cause.size.none
    if cause.size.low < none < cause.size.high and chance.share(f"side.{cause.id}") < 0.5:
        far = -far
    return none + FAINT * far, none + STRONG * far
