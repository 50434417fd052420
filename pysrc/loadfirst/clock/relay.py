"""The overload relay of each motor: what the current warms it by, and when it trips.

    τ dθ/dt = i² - θ,

i the current over the one it is set to, θ trips at the square of what it picks up at
(`physics.overload`). Over a step i² stands, and θ follows exactly.
"""

from __future__ import annotations

from math import exp

from loadfirst.physics.overload import PICK_UP, time_constant
from loadfirst.plant.plant import Plant
from loadfirst.units import PERCENT

WARM = 1.0
"""Current beforehand of a motor that is overloaded when the clock starts, over the set one. [-]"""
HOTTEST = 1e6
"""More heat than that says nothing more: a relay far too small trips at once. [-]"""


def settled(plant: Plant, current: float, rated: float) -> float:
    """Heat of a relay that has long had a current, over that at which it trips. [A], [A] -> [-]"""
    return (min(_share(plant, current, rated), WARM) / PICK_UP) ** 2


def warmed(plant: Plant, heat: float, current: float, rated: float, span: float) -> float:
    """Heat after a span of time with a current. [-], [A], [A], [s] -> [-]"""
    end = (_share(plant, current, rated) / PICK_UP) ** 2
    return min(end + (heat - end) * exp(-span / time_constant(plant.drive.trip_class)), HOTTEST)


def _share(plant: Plant, current: float, rated: float) -> float:
    return current / (rated * plant.drive.relay_percent * PERCENT)
