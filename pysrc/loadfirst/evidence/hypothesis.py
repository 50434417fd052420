"""What may have changed: one cause of the catalogue, or two at once, and how likely that is beforehand.

Causes that no reading tells apart (`alike`) are one family: it counts as one
cause, shared evenly among those of its members that can happen here.
Otherwise a plant would be likelier to leak air the more names air has. That
nothing has changed counts as twenty.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from loadfirst.causes.cause import Cause
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import changed

TWO = 0.1
"""How likely a second thing is to happen between two looks besides the first. Own choice. [-]"""


NOTHING = 20.0
"""How many times likelier it is that nothing has changed than any one cause: on a usual plant, one call in
four is about nothing. Own choice. [-]"""


class Hypothesis(NamedTuple):
    """One cause, or two that happened in this order."""

    causes: tuple[Cause, ...]

    @property
    def id(self) -> str:
        """``worn``, or ``worn + gauge-zero-off``."""
        return " + ".join(cause.id for cause in self.causes)

    @property
    def group(self) -> str:
        """Where it sits; both groups, in alphabetical order, where two causes sit in two."""
        return " + ".join(sorted({cause.group for cause in self.causes}))

    @property
    def shown_by(self) -> frozenset[str]:
        """Observations that show any of it."""
        return frozenset(id for cause in self.causes for id in cause.shown_by)

    @property
    def sizes(self) -> int:
        """How many of its causes have a size."""
        return sum(cause.size is not None for cause in self.causes)

    def hunts(self) -> bool:
        """Whether the flow is unsteady with it: all pointers swing, not only one that trembles by itself."""
        return any(cause.hunts and cause.group != "instrument" for cause in self.causes)

    def at(self, plant: ResolvedPlant, shares: Sequence[float]) -> ResolvedPlant:
        """The plant with all of it happened.

        Parameters
        ----------
        plant : as it was, not settled.
        shares : of the room of each cause that has a size, from 0 to 1. [-]

        Raises
        ------
        InputError
            Where the plant leaves no room for it.
        """
        left = list(shares)
        for cause in self.causes:
            share = 1.0 if cause.size is None else left.pop(0)
            plant = changed(plant, cause.edits(plant, cause.at(plant, share)))
        return plant


def priors(hypotheses: Sequence[Hypothesis], weights: Mapping[str, float] | None = None) -> list[float]:
    """How likely each is beforehand; they add up to 1.

    Parameters
    ----------
    hypotheses : single causes, and pairs of them.
    weights : by id of a cause, how many times likelier it is than it would be; 0: ruled out. 1 if left out,
        20 for `nothing`.
    """
    single = {one.causes[0].id: one.causes[0] for one in hypotheses if len(one.causes) == 1}
    named = {cause.id: cause for one in hypotheses for cause in one.causes} | single
    members = Counter(_family(cause) for cause in named.values())
    given = {"nothing": NOTHING, **(weights or {})}
    share = {id: given.get(id, 1.0) / members[_family(cause)] for id, cause in named.items()}
    whole = sum(share.values())
    chance = [_chance([share[cause.id] / whole for cause in one.causes]) for one in hypotheses]
    return [one / sum(chance) for one in chance]


def _family(cause: Cause) -> str:
    return cause.alike or cause.id


def _chance(shares: list[float]) -> float:
    """Two causes may have come in either order."""
    return shares[0] if len(shares) == 1 else 2 * TWO * shares[0] * shares[1]
