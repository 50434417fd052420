"""The ammeter that suits a motor."""

from __future__ import annotations

from loadfirst.plant.scales import next_scale

OVER_RATED = 1.5
"""An ammeter reaches half as far again as the motor's rated current. Common practice."""


def ammeter_scale(rated_current: float) -> float:
    """Upper end of an ammeter that suits a motor of this rated current. [A]"""
    return next_scale(OVER_RATED * rated_current)
