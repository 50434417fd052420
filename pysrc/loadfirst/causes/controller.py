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


def controller_causes(group: Group, on: Literal["valve", "drive"]) -> tuple[Cause, ...]:
    """Set point moved, put in manual, output limited: for a controller that moves this."""

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
        edit=e.to("control.mode", "manual"), unless=unless, shown_by=("controller-face",),
    )  # fmt: skip
    limited = Cause(
        id=f"{on}-output-limited", group=group, keys=("control.high_percent",),
        says=f"The upper limit of the output of the controller on the {on} was set lower.",
        size=Size("-", "the limit, over the one before", 0.1, 1, none=1, usual=0.6),
        edit=e.scaled("control.high_percent"), unless=unless, shown_by=("controller-face",),
        room=lambda plant: (plant.plant.control.low_percent / max(plant.plant.control.high_percent, 1e-9), 1),
    )  # fmt: skip
    return moved, manual, limited
