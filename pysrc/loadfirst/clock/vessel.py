"""Both vessels by their volumes: surfaces, walls, and what a hand did to them since."""

from __future__ import annotations

from typing import TYPE_CHECKING

from loadfirst.clock.account import Account, add
from loadfirst.clock.moment import Stock
from loadfirst.units import HOUR

if TYPE_CHECKING:
    from loadfirst.plant.plant import Delivery, Plant, Supply

BRIM = 1e-12
"""A vessel that lacks less than this share is full. [-]"""


def room(vessel: Supply | Delivery) -> float:
    """Volume up to the rim. [m³]"""
    return vessel.area_m2 * (vessel.top_m - vessel.bottom_m)


def surface(vessel: Supply | Delivery, volume: float) -> float:
    """Height of the surface; never below the bottom nor above the rim. [m³] -> [m]"""
    return min(max(vessel.bottom_m + volume / vessel.area_m2, vessel.bottom_m), vessel.top_m)


def inflow(plant: Plant) -> float:
    """What comes into the supply from elsewhere. [m³/s]"""
    return plant.supply.inflow_m3h / HOUR


def draw(plant: Plant) -> float:
    """What is asked of the delivery by others. [m³/s]"""
    return plant.delivery.draw_m3h / HOUR


def stock(vessel: Supply | Delivery, volume: Account | None = None) -> Stock:
    """A vessel as its plant has it, or with another volume."""
    if volume is None:
        volume = (vessel.area_m2 * (vessel.surface_m - vessel.bottom_m), 0.0)
    return Stock(volume, vessel.surface_m, vessel.bottom_m, vessel.area_m2)


def after_hands(vessel: Supply | Delivery, before: Stock) -> tuple[Stock, float]:
    """The stock where keys of the plant have been changed since, and what was taken from it.

    A surface that was set stands where it was set; where only walls were moved the
    surface stays, as far as they let it.
    """
    if (vessel.surface_m, vessel.bottom_m, vessel.area_m2) == (
        before.surface_m,
        before.bottom_m,
        before.area_m2,
    ):
        return before, 0.0
    if vessel.surface_m != before.surface_m:
        level = vessel.surface_m
    else:
        level = before.bottom_m + before.volume[0] / before.area_m2
    level = min(max(level, vessel.bottom_m), vessel.top_m)
    taken = before.volume[0] - vessel.area_m2 * (level - vessel.bottom_m)
    return stock(vessel, add(before.volume, -taken)), taken


def is_empty(volume: Account) -> bool:
    """Whether nothing is left."""
    return volume[0] <= 0.0


def is_full(vessel: Supply | Delivery, volume: Account) -> bool:
    """Whether it stands at its rim."""
    return volume[0] >= room(vessel) * (1 - BRIM)
