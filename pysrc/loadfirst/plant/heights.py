"""Heights that follow from more than one key of a plant."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant


def pours_freely(plant: Plant) -> bool:
    """Whether the pipe ends above the delivery's surface, so that nothing can flow back."""
    outlet = plant.delivery.outlet_m
    return outlet is not None and outlet > plant.delivery.surface_m


def pipe_end_height(plant: Plant) -> float:
    """Height at which the discharge pipe ends; at the vessel's bottom when nothing is said. [m]"""
    outlet = plant.delivery.outlet_m
    return plant.delivery.bottom_m if outlet is None else outlet


def far_height(plant: Plant) -> float:
    """Height the load lifts to: the delivery's surface, the pipe's end above it, the open flange. [m]"""
    if not plant.discharge.attached:
        return plant.pump.centre_m
    return pipe_end_height(plant) if pours_freely(plant) else plant.delivery.surface_m


def far_gas_bar(plant: Plant) -> float:
    """Gauge pressure there. [bar]"""
    return plant.delivery.gas_bar if plant.discharge.attached else 0.0
