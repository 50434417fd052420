"""Causes at a controller. It belongs to what it moves: the valve to the load, the drive to the drive."""

from __future__ import annotations

from typing import Literal

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.group import Group
from loadfirst.plant.pumps import ResolvedPlant

SET_POINTS = {"flow": "set_m3h", "pressure": "set_bar", "level": "set_m"}


def _set_point(plant: ResolvedPlant) -> tuple[str, float]:
    """Key and value of the set point that counts."""
    name = next(name for ending, name in SET_POINTS.items() if plant.plant.control.of.endswith(ending))
    return f"control.{name}", getattr(plant.plant.control, name)


def _moved(plant: ResolvedPlant, size: float) -> Edits:
    key, now = _set_point(plant)
    return {key: now * size}


def set_point_causes(group: Group, on: Literal["valve", "drive"]) -> tuple[Cause, Cause]:
    """The set point lowered or raised, and the controller put in manual, for one that moves this."""

    def unless(plant: ResolvedPlant) -> str | None:
        return None if e.controlled(plant, on) else f"no controller moves the {on}"

    def no_level(plant: ResolvedPlant) -> str | None:
        level = plant.plant.control.of.endswith("level")
        return "its set point is a level, which moves in its vessel" if level else None

    moved = Cause(
        id=f"{on}-set-point-moved", group=group, keys=("control.set_m3h", "control.set_bar"),
        says=f"The set point of the controller on the {on} was moved.",
        size=Size("-", "set point, over the one before", 0.5, 1.5, none=1, usual=0.85),
        edit=_moved, unless=e.first(unless, no_level), shown_by=("controller-face",),
    )  # fmt: skip
    manual = Cause(
        id=f"{on}-in-manual", group=group, keys=("control.mode",),
        says=f"The controller on the {on} was put in manual, and what it moves stands where it was left.",
        edit=e.put(control__mode="manual"), unless=unless, shown_by=("controller-face",),
    )  # fmt: skip
    return moved, manual
