"""What a gauge misses: the velocity head at its tapping, and the pressure that is left."""

from __future__ import annotations

from typing import TYPE_CHECKING

from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import PathPoint

FLANGES = ("suction", "discharge")
ROUNDING = 1e-6  # [m] to which the flow is known at which the suction line boils, as head

if TYPE_CHECKING:
    from loadfirst.plant.solved import OnePlant


def suction_velocity_head(one: OnePlant) -> float:
    """v²/2g in the suction line. [m]"""
    return one.velocity_head("suction-line", one.plant.suction.bore_mm)


def discharge_velocity_head(one: OnePlant) -> float:
    """v²/2g at the station's outlet, whose bore is that of the discharge line. [m]"""
    return one.velocity_head("suction-line", one.plant.discharge.bore_mm)


def line_velocity_head(one: OnePlant) -> float:
    """v²/2g behind the control valve. [m]"""
    return one.velocity_head("valve", one.plant.discharge.bore_mm)


def static_pressure(one: OnePlant, head: float | None, height: float, velocity: float) -> float | None:
    """Gauge pressure ρg (head - height - v²/2g); None where the head is undefined. [Pa]"""
    return None if head is None else one.weight * (head - height - velocity)


def point(one: OnePlant, node: str, behind: float, height: float, velocity: float) -> PathPoint:
    """A node as a place along the path, where the liquid has that velocity head.

    Parameters
    ----------
    behind : length of pipe from the supply. [m]
    height, velocity : [m]
    """
    head = one.head(node)
    pressure = not_below_vapour(one, node, static_pressure(one, head, height, velocity))
    return PathPoint(node, behind, height, head, pressure)


def not_below_vapour(one: OnePlant, node: str, pressure: float | None) -> float | None:
    """Pressure at the pumps' flanges: that of the vapour where the liquid does not reach them. [Pa]

    And where the line boils at the flange, exactly that, whatever the last digit.
    """
    if pressure is None or node not in FLANGES:
        return pressure
    vapour = one.liquid.vapour_pressure - air_pressure(one.plant)
    near = node == "suction" and abs(pressure - vapour) < ROUNDING * one.weight
    return max(pressure, vapour) if one.suction_dry or near else pressure
