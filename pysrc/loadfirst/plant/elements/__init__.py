"""The sections of a plant, one file each, and `WAY`: all of them, in the order the liquid meets them."""

from __future__ import annotations

from loadfirst.plant.elements import (
    branch,
    burst,
    check_valve,
    control_valve,
    delivery,
    discharge_line,
    filter,
    open_end,
    relief,
    return_line,
    second_line,
    station,
    suction_line,
    summit,
)
from loadfirst.plant.elements.section import Section

WAY: tuple[Section, ...] = (
    suction_line.SECTION,
    station.SECTION,
    relief.SECTION,
    return_line.SECTION,
    check_valve.SECTION,
    burst.SECTION,
    branch.SECTION,
    control_valve.SECTION,
    filter.SECTION,
    second_line.SECTION,
    discharge_line.SECTION,
    summit.SECTION,
    delivery.SECTION,
    open_end.SECTION,
)
