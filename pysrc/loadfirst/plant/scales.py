"""Ends of scales as they are sold, and the flow meter that suits a pump."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from loadfirst.plant.pump_file import Curve
from loadfirst.units import BAR, TO_SI, G

if TYPE_CHECKING:
    from collections.abc import Sequence

    from loadfirst.plant.plant import Plant, Pump

STEPS = (1.0, 1.5, 2.5, 4.0, 6.0, 10.0)
"""Upper ends of meter scales within one decade. Common practice for panel meters."""

LEAST_CAPACITY = 0.05  # [m³/h] of a relief valve
OVER_RATED = 1.1
"""Of a relief valve's set pressure. [-]"""
OVER_LAST = 1.25
"""A flow meter reaches a quarter beyond the last point: the flow at 60 Hz, and a little. Own choice. [-]"""


def next_scale(least: float) -> float:
    """The smallest usual upper end that is at least `least` (> 0), in the same unit."""
    decade = 10.0 ** math.floor(math.log10(least))
    return decade * next(step for step in STEPS if step * decade >= least * (1 - 1e-12))


def flow_meter_scale(plant: Plant, pumps: Sequence[Pump]) -> float:
    """Upper end of a flow meter that suits the pumps as they were measured, whatever their speed. [m³/h]"""
    return next_scale(OVER_LAST * together(plant, pumps))


def relief_set(plant: Plant, pumps: Sequence[Pump]) -> float:
    """Set pressure of a relief valve that suits the pumps: a little above what they are made for. [bar]

    A tenth above the rated pressure, or that at no flow: common practice.
    """
    usual = [
        max(pump.head_m) * pump.density_kgm3 * G / BAR if isinstance(pump, Curve) else pump.pressure_bar
        for pump in pumps
    ]
    return OVER_RATED * (sum(usual) if plant.pump.arrangement == "in-line" else max(usual))


def together(plant: Plant, pumps: Sequence[Pump]) -> float:
    """The greatest flow of all pumps together; a relief valve for less would not do. [m³/h]"""
    lasts = [last_flow(pump) for pump in pumps]
    return sum(lasts) if plant.pump.arrangement == "side-by-side" else max(lasts)


def last_flow(pump: Pump) -> float:
    """The greatest flow of a pump as it was measured: the last point, or all that is displaced. [m³/h]"""
    if isinstance(pump, Curve):
        return pump.flow_m3h[-1]
    return pump.displacement_cm3 * TO_SI["cm3"] * pump.speed_rpm * 60
