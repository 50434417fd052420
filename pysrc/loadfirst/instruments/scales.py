"""Ends of scales as they are sold."""

from __future__ import annotations

import math

STEPS = (1.0, 1.5, 2.5, 4.0, 6.0, 10.0)
"""Upper ends of meter scales within one decade. Common practice for panel ammeters."""

OVER_RATED = 1.5
"""An ammeter reaches half as far again as the motor's rated current. Common practice."""


def next_scale(least: float) -> float:
    """The smallest usual upper end that is at least `least` (> 0), in the same unit."""
    decade = 10.0 ** math.floor(math.log10(least))
    return decade * next(step for step in STEPS if step * decade >= least * (1 - 1e-12))


def ammeter_scale(rated_current: float) -> float:
    """Upper end of an ammeter that suits a motor of this rated current. [A]"""
    return next_scale(OVER_RATED * rated_current)
