"""The few ways in which a cause edits a key, and reasons why it cannot."""

from __future__ import annotations

from collections.abc import Callable
from functools import reduce
from typing import Any

from loadfirst.causes.cause import Edits
from loadfirst.plant.automatic import acts
from loadfirst.plant.drives import has_drive
from loadfirst.plant.plant import Curve
from loadfirst.plant.pumps import ResolvedPlant

Edit = Callable[[ResolvedPlant, float], Edits]
Unless = Callable[[ResolvedPlant], str | None]
Room = Callable[[ResolvedPlant], tuple[float, float]]
End = str | float | Callable[[ResolvedPlant], float]
"""Where a value ends: at a number, at another key's value, or at what a plant makes of it."""

ENDLESS = float("inf")


def value(plant: ResolvedPlant, key: str) -> Any:
    """What a plant has at a dotted key, defaults and what suits it filled in."""
    return reduce(getattr, key.split("."), plant.plant)


def plus(key: str, times: float = 1.0) -> Edit:
    """The key's value and so many times the size."""
    return lambda plant, size: {key: value(plant, key) + times * size}


def scaled(key: str) -> Edit:
    """The key's value times the size."""
    return lambda plant, size: {key: value(plant, key) * size}


def to(key: str, value: Any) -> Edit:
    """A fixed value, whatever the size."""
    return lambda plant, size: {key: value}


def towards(key: str, end: float) -> Edit:
    """The key's value moved by the share `size` of what parts it from `end`."""
    return lambda plant, size: {key: (1 - size) * value(plant, key) + size * end}


def above(key: str, end: End) -> Room:
    """From 0 to what lies between the key's value and an end above it."""
    return lambda plant: (0.0, _end(plant, end) - value(plant, key))


def below(key: str, end: End) -> Room:
    """From 0 to what lies between the key's value and an end below it."""
    return lambda plant: (0.0, value(plant, key) - _end(plant, end))


def within(key: str, end: float = 50.0) -> Room:
    """Additions that keep the key's value within ± end."""
    return lambda plant: (-end - value(plant, key), end - value(plant, key))


def factors(key: str, low: float, high: float) -> Room:
    """The factors that keep the key's value between two numbers."""

    def room(plant: ResolvedPlant) -> tuple[float, float]:
        now = value(plant, key) or 0.0
        return (low / now, high / now) if now > 0 else (0.0, ENDLESS)

    return room


def _end(plant: ResolvedPlant, end: End) -> float:
    if isinstance(end, str):
        return float(value(plant, end))
    return end if isinstance(end, int | float) else end(plant)


def first(*reasons: Unless) -> Unless:
    """The first reason of several."""
    return lambda plant: next((found for one in reasons if (found := one(plant)) is not None), None)


def needs(key: str, wanted: Any, reason: str) -> Unless:
    """The reason, unless the key has that value."""
    return lambda plant: None if value(plant, key) == wanted else reason


def bars_with(key: str, wanted: Any, reason: str) -> Unless:
    """The reason, where the key has that value already."""
    return lambda plant: reason if value(plant, key) == wanted else None


def needs_line(plant: ResolvedPlant) -> str | None:
    """Nothing stands behind a flange without its line."""
    return None if plant.plant.discharge.attached else "the line is off"


def controlled(plant: ResolvedPlant, on: str) -> bool:
    """Whether a controller in automatic moves the valve or the drive."""
    return plant.plant.control.on == on and acts(plant.plant)


def valve_by_hand(plant: ResolvedPlant) -> str | None:
    """A controller in automatic puts the valve elsewhere than its key says."""
    return "a controller moves that valve" if controlled(plant, "valve") else None


def drive_by_hand(plant: ResolvedPlant) -> str | None:
    """A controller in automatic puts the frequency elsewhere than its key says."""
    return "a controller moves the drive" if controlled(plant, "drive") else None


def needs_impeller(plant: ResolvedPlant) -> str | None:
    """What can happen to impellers only."""
    return None if isinstance(plant.curve, Curve) else "the pump has no impeller"


def needs_drive(plant: ResolvedPlant) -> str | None:
    """What needs a variable-speed drive."""
    return None if has_drive(plant.plant.drive) else "there is no variable-speed drive"


def needs_two(plant: ResolvedPlant) -> str | None:
    """What needs a second pump."""
    return "there is one pump only" if plant.plant.pump.arrangement == "single" else None
