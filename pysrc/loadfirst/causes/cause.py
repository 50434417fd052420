"""A cause: one thing that can change between two days, as a small edit of a plant with a size.

An edit starts from the plant as it is (half the opening that there was, 2 m
below the level that there was), so that a cause can happen to any plant. At
the size that means nothing happened it edits nothing.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal

from loadfirst.causes.group import Group
from loadfirst.errors import InputError
from loadfirst.plant.pumps import ResolvedPlant

Edits = dict[str, Any]
"""Dotted plant keys and their new values, as `plant.edits` takes them."""

COMMON = "common practice"
ROUNDING = 1e-12
"""Of a plant's room: a sum of decimals may end beyond the range of its key by its last digit. [-]"""


@dataclass(frozen=True, slots=True)
class Size:
    """How large a cause is.

    Attributes
    ----------
    unit : as in the author's guide; ``-`` for a plain number.
    says : what the number is.
    low, high : its range on any plant; a plant may leave less room (`Cause.sizes`).
    none : where nothing has happened; it may lie outside the range (a hole of no width).
    usual : a size worth showing, within the range.
    scale : how sizes spread over the range: "log" where they differ by factors.
    """

    unit: str
    says: str
    low: float
    high: float
    none: float
    usual: float
    scale: Literal["linear", "log"] = "linear"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """One thing that can change.

    Attributes
    ----------
    id : small letters, digits, single hyphens.
    group : where it sits.
    says : what happened, for the command line; the page has its own words.
    keys : the plant keys that it edits.
    size : None where it happens or does not.
    edit : the edits of a resolved plant at a size that is not `none`.
    unless : why it cannot happen to a plant, None where it can.
    room : the least and greatest size that a plant leaves room for, where that is less than the range.
    shown_by : ids of `observations` that show it.
    hunts : the readings are unsteady, which a state at rest cannot show.
    alike : the id of a cause that it cannot be told from by readings; only an observation tells.
    source : where cause and direction come from.
    """

    id: str
    group: Group
    says: str
    keys: tuple[str, ...]
    edit: Callable[[ResolvedPlant, float], Edits]
    shown_by: tuple[str, ...]
    size: Size | None = None
    unless: Callable[[ResolvedPlant], str | None] = lambda plant: None
    room: Callable[[ResolvedPlant], tuple[float, float]] | None = None
    hunts: bool = False
    alike: str = ""
    source: str = COMMON

    def sizes(self, plant: ResolvedPlant) -> tuple[float, float]:
        """Smallest and largest size that this plant leaves room for; (0, 1) where there is none to give.

        The first is above the second where no size fits.
        """
        if self.size is None:
            return 0.0, 1.0
        least, most = (self.size.low, self.size.high) if self.room is None else self.room(plant)
        return (
            max(self.size.low, least + ROUNDING * abs(least)),
            min(self.size.high, most - ROUNDING * abs(most)),
        )

    def applies(self, plant: ResolvedPlant) -> str | None:
        """Why it cannot happen to this plant; None where it can."""
        reason = self.unless(plant)
        if reason is not None:
            return reason
        low, high = self.sizes(plant)
        if low > high or low == high == (self.size.none if self.size else None):
            return "the plant leaves no room for it"
        return None

    def usual(self, plant: ResolvedPlant) -> float:
        """A size worth showing on this plant; 1 where there is none to give."""
        if self.size is None:
            return 1.0
        low, high = self.sizes(plant)
        return min(max(self.size.usual, low), high)

    def at(self, plant: ResolvedPlant, share: float) -> float:
        """The size at a share of the room that this plant leaves, 0 to 1, as `scale` has them; 1 without."""
        if self.size is None:
            return 1.0
        low, high = self.sizes(plant)
        if self.size.scale == "log":
            return low * float((high / low) ** share)
        return low + (high - low) * share

    def spread(self, plant: ResolvedPlant, count: int) -> tuple[float, ...]:
        """Sizes over the room that this plant leaves, as `scale` has them: evenly, or by equal factors.

        Parameters
        ----------
        plant : to which the cause can happen.
        count : how many, both ends among them, at least 2; a cause without size has one all the same.
        """
        if self.size is None:
            return (1.0,)
        return tuple(self.at(plant, step / (count - 1)) for step in range(count))

    def edits(self, plant: ResolvedPlant, size: float | None = None) -> Edits:
        """What it changes in a plant.

        Parameters
        ----------
        plant : the plant as it is, resolved.
        size : in the unit of `size`, `usual` if left out; 0 or 1 (happened) where it has none.

        Returns
        -------
        dict
            Dotted keys and new values; empty where the size means that nothing happened.

        Raises
        ------
        InputError
            Where it cannot happen to this plant, or not at this size.
        """
        if size is None:
            size = self.usual(plant)
        none = 0.0 if self.size is None else self.size.none
        if size == none:
            return {}
        reason = self.applies(plant)
        if reason is not None:
            raise InputError(
                f"cause {self.id}", plant.plant.title, "a plant to which it can happen", f"Here {reason}."
            )
        low, high = self.sizes(plant)
        if not low - ROUNDING * abs(low) <= size <= high + ROUNDING * abs(high):
            unit = "" if self.size is None or self.size.unit == "-" else f" {self.size.unit}"
            raise InputError(f"cause {self.id}", size, f"from {low:g} to {high:g}{unit}", low=low, high=high)
        return self.edit(plant, min(max(size, low), high))
