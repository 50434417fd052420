"""Where a rule is used outside what it was made for, and what was done about it.

A rule fitted to tests says nothing beyond them. A transform never goes on
quietly: it says which of its limits was passed, so that a page can show it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from loadfirst.errors import InputError
from loadfirst.physics.law import Array


@dataclass(frozen=True, slots=True)
class Limit:
    """The range a rule was made for.

    Attributes
    ----------
    low, high : float
        Ends of the range, both inside it.
    unit : str
        Of both, as `units.TO_SI` or a page names it; ``-`` for a plain number.
    held : bool
        Whether the rule is held at the end of the range; else it is applied
        as it stands, without the backing of tests.
    """

    low: float
    high: float
    unit: str
    held: bool = False

    def hold(self, value: float) -> float:
        """The value itself, or the end of the range that is nearest to it."""
        return min(max(value, self.low), self.high)


@dataclass(frozen=True, slots=True)
class Outside:
    """One limit that was passed.

    Attributes
    ----------
    rule : str
        Which rule: ``viscosity``, ``trim``, ``rotation``, ``gas``.
    limit : str
        Which of its limits: ``parameter``, ``viscosity``, ``specific-speed`` …
    got : float
        What was asked, in the unit of the limit.
    range : Limit
        What the rule was made for.
    """

    rule: str
    limit: str
    got: float
    range: Limit


def passed(rule: str, limits: Mapping[str, Limit], got: Mapping[str, float]) -> tuple[Outside, ...]:
    """Which limits of a rule some values pass, in the order of `got`; an empty tuple where none."""
    return tuple(
        Outside(rule, name, value, limits[name])
        for name, value in got.items()
        if not limits[name].low <= value <= limits[name].high
    )


def between(where: str, value: float, low: float, high: float) -> None:
    """Refuse a size that no pump could have, NaN included.

    Raises
    ------
    InputError
        Unless `low` <= `value` <= `high`.
    """
    if not low <= value <= high:
        raise InputError(where, value, f"from {low:g} to {high:g}", low=low, high=high)


def never_rising(head: Array, like: Array) -> Array:
    """Heads as computed, without rises that are rounding only.

    Parameters
    ----------
    head : ndarray (K,)
        Of the changed pump. [m]
    like : ndarray (K,)
        Of the pump before: where these do not rise, neither does the answer. A
        curve that droops keeps its droop. [m]
    """
    if (np.diff(like) <= 0).all():
        return np.minimum.accumulate(head)
    return head
