"""Causes in what turns the pump: supply, drive, belt, phases."""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.controller import controller_causes
from loadfirst.causes.group import Group
from loadfirst.causes.pairs import Way, factors
from loadfirst.causes.which_pump import FIRST, SECOND, WhichPump
from loadfirst.plant.drives import frequency, has_drive
from loadfirst.plant.pumps import ResolvedPlant

GROUP: Group = "drive"
LEAST, MOST = 5.0, 75.0  # [Hz] that a plant file may state


def _needs_supply(plant: ResolvedPlant) -> str | None:
    return "a variable-speed drive makes the frequency" if has_drive(plant.plant.drive) else None


def _turned(plant: ResolvedPlant, size: float) -> Edits:
    return {"drive.frequency_hz": frequency(plant.plant.drive) * size}


def _turned_room(plant: ResolvedPlant) -> tuple[float, float]:
    now = frequency(plant.plant.drive)
    return LEAST / now, MOST / now


_BELT = e.bars_with("drive.belt", "none", "there is no belt")

FREQUENCY = factors(
    ("drive.frequency_hz",),
    Way("drive-set-up", "The variable-speed drive was set to a higher frequency.", 1.08),
    Way("drive-set-back", "The variable-speed drive was set to a lower frequency.", 0.9),
    says="frequency, over the one before", low=0.4, high=1.5, edit=_turned, room=_turned_room,
    group=GROUP, unless=e.first(e.needs_drive, e.drive_by_hand), shown_by=("drive-display",),
)  # fmt: skip
MAINS_SLOW = Cause(
    id="supply-slow", group=GROUP, keys=("drive.mains_percent",),
    says="The supply runs below its frequency, as an island or a generator may.",
    size=Size("-", "frequency, over the one before", 0.8, 1, none=1, usual=0.95),
    edit=e.scaled("drive.mains_percent"), room=e.factors("drive.mains_percent", 80.0, 120.0),
    unless=_needs_supply, shown_by=("supply-measured",),
)  # fmt: skip
VOLTAGE_LOW = Cause(
    id="voltage-low", group=GROUP, keys=("drive.voltage_percent",),
    says="The voltage at the motor is low, at the usual frequency.",
    size=Size("-", "voltage, over the one before", 0.6, 1, none=1, usual=0.9),
    edit=e.scaled("drive.voltage_percent"), room=e.factors("drive.voltage_percent", 60.0, 115.0),
    shown_by=("supply-measured",),
)  # fmt: skip
PHASE_LOST = Cause(
    id="phase-lost", group=GROUP, keys=("drive.phases",),
    says="One phase of the supply is lost, by a fuse or a contact; the motor runs on between the other two.",
    edit=e.to("drive.phases", 2), shown_by=("supply-measured",),
    unless=e.first(_needs_supply, e.needs("drive.phases", 3, "one is lost already")),
)  # fmt: skip
CURRENT_LIMIT = Cause(
    id="current-limit-lower", group=GROUP, keys=("drive.current_limit_percent",),
    says="The current limit of the variable-speed drive was set lower.",
    size=Size("%", "the limit, of the rated current", 50, 150, none=300, usual=80),
    edit=lambda plant, size: {"drive.current_limit_percent": size}, unless=e.needs_drive,
    room=lambda plant: (0.0, plant.plant.drive.current_limit_percent or e.ENDLESS),
    shown_by=("drive-display",),
)  # fmt: skip
BELT_SLACK = Cause(
    id="belt-slack", group=GROUP, keys=("drive.belt_tension_percent",),
    says="The belt has gone slack and slips.",
    size=Size("-", "tension, over the one before", 0.1, 1, none=1, usual=0.4),
    edit=e.scaled("drive.belt_tension_percent"), room=e.factors("drive.belt_tension_percent", 10.0, 150.0),
    unless=_BELT, shown_by=("belt-seen",),
)  # fmt: skip
OTHER_PULLEY = Cause(
    id="other-pulley", group=GROUP, keys=("drive.belt_ratio",),
    says="A pulley of another size was fitted, and the pump turns more slowly.",
    size=Size("-", "ratio of speeds, over the one before", 0.6, 1, none=1, usual=0.9),
    edit=e.scaled("drive.belt_ratio"), room=e.factors("drive.belt_ratio", 0.25, 2.5),
    unless=_BELT, shown_by=("belt-seen", "job-card"),
)  # fmt: skip
MORE_POLES = Cause(
    id="motor-of-more-poles", group=GROUP, keys=("drive.poles",),
    says="A motor with more poles was fitted, and the pump turns far more slowly.",
    edit=lambda plant, size: {"drive.poles": plant.plant.drive.poles + 2},
    unless=e.bars_with("drive.poles", 8, "no motor with more poles is known here"),
    shown_by=("motor-plate", "job-card"),
)  # fmt: skip


def _swapped(which: WhichPump) -> Cause:
    key = f"{which.table}.rotation"
    return Cause(
        id=f"{which.prefix}phases-swapped", group=GROUP, keys=(key,), edit=e.to(key, "wrong"),
        alike=f"{which.prefix}impeller-backwards", shown_by=("arrow",),
        says=f"Two phases of {which.name}'s motor were exchanged: it turns the wrong way.",
        unless=e.first(which.there, e.needs(key, "right", "it does so already")),
        source="common practice; cause lists of the trade name it after work at a motor",
    )  # fmt: skip


CAUSES = (
    *FREQUENCY, MAINS_SLOW, VOLTAGE_LOW, PHASE_LOST, CURRENT_LIMIT, BELT_SLACK, OTHER_PULLEY, MORE_POLES,
    _swapped(FIRST), _swapped(SECOND),
    *controller_causes(GROUP, "drive"),
)  # fmt: skip
