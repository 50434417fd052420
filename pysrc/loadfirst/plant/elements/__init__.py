"""The sections of a plant, one file each, and `WAY`: all of them, in the order the liquid meets them."""

from __future__ import annotations

from loadfirst.plant.elements import (
    branch,
    check_valve,
    control_valve,
    delivery,
    discharge_line,
    open_end,
    relief,
    station,
    suction_line,
)
from loadfirst.plant.elements.section import Section

WAY: tuple[Section, ...] = (
    suction_line.SECTION,
    station.SECTION,
    relief.SECTION,
    check_valve.SECTION,
    branch.SECTION,
    control_valve.SECTION,
    discharge_line.SECTION,
    delivery.SECTION,
    open_end.SECTION,
)
