"""Ends of scales as they are sold, and the flow meter that suits a pump."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from loadfirst.plant.plant import Curve, Plant

STEPS = (1.0, 1.5, 2.5, 4.0, 6.0, 10.0)
"""Upper ends of meter scales within one decade. Common practice for panel meters."""

OVER_LAST = 1.25
"""A flow meter reaches a quarter beyond the last point: the flow at 60 Hz, and a little. Own choice. [-]"""


def next_scale(least: float) -> float:
    """The smallest usual upper end that is at least `least` (> 0), in the same unit."""
    decade = 10.0 ** math.floor(math.log10(least))
    return decade * next(step for step in STEPS if step * decade >= least * (1 - 1e-12))


def flow_meter_scale(plant: Plant, curve: Curve) -> float:
    """Upper end of a flow meter that suits the pumps as they were measured, whatever their speed. [m³/h]"""
    beside = 2 if plant.pump.arrangement == "side-by-side" else 1
    return next_scale(OVER_LAST * beside * curve.flow_m3h[-1])
