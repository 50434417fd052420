"""How far an instrument has moved between two days, and whether that is more than it can err by itself."""

from __future__ import annotations

import math
from typing import Literal

from msgspec import Struct

from loadfirst.instruments.faults.own_error import repeatable
from loadfirst.instruments.instrument import Quantity, Reading
from loadfirst.instruments.uncertainty import of_difference, standard

Direction = Literal["up", "down", "same"]

COVERAGE = 2.0
"""Coverage factor: so many standard uncertainties hold about 95 of 100 differences that are none.
Source: JCGM 100:2008 (GUM), 6.3.3 and G.6.6 (from memory). [-]"""
ENDS: dict[str | None, int] = {"low": -1, None: 0, "high": 1}


class Shift(Struct, frozen=True):
    """One instrument on two days, in SI units.

    Attributes
    ----------
    id, quantity : as in `Reading`.
    yesterday, today : the readings; None where it was not there.
    same_instrument : whether one piece gave both; its lasting error then goes out of the difference.
    change : today less yesterday; None without two readings on the scale.
    explained : a change up to this is no more than the instrument can make by itself. None likewise.
    moved : which way it went by more than that; None where nobody can say.
    """

    id: str
    quantity: Quantity
    yesterday: Reading | None
    today: Reading | None
    same_instrument: bool
    change: float | None
    explained: float | None
    moved: Direction | None


def shift(yesterday: Reading | None, today: Reading | None, same_instrument: bool) -> Shift:
    """Compare two readings of an instrument, of which at least one was taken.

    Notes
    -----
    A difference counts that is more than both greatest errors together, of one instrument only
    of what does not repeat, and of noise more than is usual.
    """
    known = yesterday or today
    assert known is not None
    change = explained = None
    moved: Direction | None = None
    if yesterday and today and yesterday.value is not None and today.value is not None:
        ends = ENDS[yesterday.off_scale], ENDS[today.off_scale]
        if ends == (0, 0):
            change = today.value - yesterday.value
            explained = _by_itself(yesterday, today, same_instrument)
            moved = "same" if abs(change) <= explained else "up" if change > 0 else "down"
        elif ends[0] != ends[1]:
            moved = "up" if ends[1] > ends[0] else "down"
    return Shift(known.id, known.quantity, yesterday, today, same_instrument, change, explained, moved)


def _by_itself(yesterday: Reading, today: Reading, same_instrument: bool) -> float:
    """The greatest difference of two readings of what has not changed; of their noise what is usual."""
    errors = yesterday.accuracy or 0.0, today.accuracy or 0.0
    limit = of_difference(*errors, same=same_instrument, changes=repeatable(yesterday.quantity))
    return limit + COVERAGE * math.hypot(_noise(yesterday), _noise(today))


def _noise(reading: Reading) -> float:
    """Standard deviation of what trembles, without the errors within the class."""
    whole, steady = reading.uncertainty or 0.0, standard(reading.accuracy or 0.0)
    return math.sqrt(max(whole**2 - steady**2, 0.0))
