"""What a plant sets by itself: a controller's output, and the frequency of a drive at its current limit.

Each of them settles on the value of a key. So a plant with them is, at rest,
an ordinary plant with that key set: `settled` finds the value, and whatever
comes afterwards (state, curves, a checker) knows nothing of controllers.

A level is a matter of time: it stands still where as much comes as goes. What
users draw from the delivery vessel, or what runs into the supply vessel, is
given by the vessel's own keys; the controller settles where the flow equals it,
with the surface at the set point. At a limit of its output the surface goes to
where the plant balances without it, or to the vessel's rim or bottom.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from loadfirst.plant.drives import frequency
from loadfirst.plant.heights import filling

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.pumps import ResolvedPlant

LOWEST_HZ = 5.0
"""Least frequency of a drive: the lower end of `drive.frequency_hz`."""


def settled(plants: Sequence[ResolvedPlant]) -> Sequence[ResolvedPlant]:
    """The same plants, each with what it has set by itself set; `found` says what that was.

    Parameters
    ----------
    plants : of any shape; plain ones, and those settled already, are given back as they are.
    """
    rows = [row for row, one in enumerate(plants) if _sets_itself(one)]
    if not rows:
        return plants
    from loadfirst.plant.settling import settle  # a plain plant does without, and starts sooner

    result = list(plants)
    for row, one in zip(rows, settle([plants[row] for row in rows]), strict=True):
        result[row] = one
    return result


def _sets_itself(one: ResolvedPlant) -> bool:
    return one.found is None and (acts(one.plant) or one.plant.drive.current_limit_percent is not None)


def acts(plant: Plant) -> bool:
    """Whether a controller in automatic has something to measure and something to move."""
    return plant.control.fitted and plant.control.mode == "automatic" and in_place(plant)


def in_place(plant: Plant) -> bool:
    """Whether what the controller measures and moves is there: both may have gone with the line."""
    control = plant.control
    if control.of == "delivery-level" and filling(plant):
        return False
    with_line = control.on == "valve" or control.of in ("after-valve-pressure", "delivery-level")
    return plant.discharge.attached or not with_line


def output_hz(plant: Plant, output: float) -> float:
    """Frequency that an output [-] asks of the drive. [Hz]"""
    return max(output * full_hz(plant), LOWEST_HZ)


def full_hz(plant: Plant) -> float:
    """Frequency at full output. [Hz]"""
    return plant.control.full_hz or float(plant.drive.supply_hz)


def frequency_of(plant: Plant) -> float:
    """Frequency that reaches the motors. [Hz]"""
    return frequency(plant.drive)


def output_of(plant: Plant) -> float:
    """Output that valve or drive stand at, whoever has set them. [-]"""
    if plant.control.on == "valve":
        return plant.valve.opening
    return frequency_of(plant) / full_hz(plant)
