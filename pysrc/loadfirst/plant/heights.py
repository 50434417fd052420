"""Heights that follow from more than one key of a plant."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant


def filling(plant: Plant) -> bool:
    """Whether the discharge line is still being filled: it is open to the air where its liquid ends."""
    return plant.discharge.filled < 1


def full_share(plant: Plant) -> float:
    """Share of the discharge line that is full and on the way: over a summit the liquid falls by itself."""
    summit = plant.summit
    return min(plant.discharge.filled, summit.at) if summit.fitted else plant.discharge.filled


def _front_height(plant: Plant) -> float:
    """Height of the liquid's front in a line that rises evenly, to its summit or its end. [m]"""
    start, summit = plant.pump.centre_m, plant.summit
    if summit.fitted:
        return start + full_share(plant) / summit.at * (summit.height_m - start)
    return start + plant.discharge.filled * (_end_height(plant) - start)


def pours_freely(plant: Plant) -> bool:
    """Whether the liquid ends above the delivery's surface, so that nothing can flow back."""
    if filling(plant):
        return True
    outlet = plant.delivery.outlet_m
    return outlet is not None and outlet > plant.delivery.surface_m


def pipe_end_height(plant: Plant) -> float:
    """Height at which the discharge pipe, or the liquid in it, ends. [m]"""
    return _front_height(plant) if filling(plant) else _end_height(plant)


def _end_height(plant: Plant) -> float:
    """At the vessel's bottom when nothing is said. [m]"""
    outlet = plant.delivery.outlet_m
    return plant.delivery.bottom_m if outlet is None else outlet


def far_height(plant: Plant) -> float:
    """Height the load lifts to: the delivery's surface, the pipe's end above it, the open flange. [m]"""
    if not plant.discharge.attached:
        return plant.pump.centre_m
    return pipe_end_height(plant) if pours_freely(plant) else plant.delivery.surface_m


def far_gas_bar(plant: Plant) -> float:
    """Gauge pressure there. [bar]"""
    return plant.delivery.gas_bar if plant.discharge.attached and not filling(plant) else 0.0
