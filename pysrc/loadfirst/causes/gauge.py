"""Causes at the gauges: the plant is as it was, and one dial shows something else."""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.edit import value
from loadfirst.causes.group import Group
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.units import PERCENT

GROUP: Group = "instrument"
DISCHARGE = "gauges.discharge"


def _of_span(gauge: str) -> e.Edit:
    """A zero that is off by a share of the gauge's span. [%]"""

    def edit(plant: ResolvedPlant, size: float) -> Edits:
        low, high = value(plant, f"{gauge}.range_bar")
        key = f"{gauge}.fault.zero_bar"
        return {key: value(plant, key) + size * PERCENT * (high - low)}

    return edit


def _re_ranged(key: str) -> e.Edit:
    """A span so many times the one before. [-] -> [%]"""
    return lambda plant, size: {key: ((1 + value(plant, key) * PERCENT) * size - 1) / PERCENT}


def _re_ranged_room(key: str) -> e.Room:
    def room(plant: ResolvedPlant) -> tuple[float, float]:
        now = 1 + value(plant, key) * PERCENT
        return 0.5 / now, 1.5 / now

    return room


def _level_leg(plant: ResolvedPlant) -> str | None:
    level = value(plant, f"{DISCHARGE}.height_m") == plant.plant.pump.centre_m
    return "the gauge hangs as high as its tapping, where its leg does not count" if level else None


_OPEN = e.needs(f"{DISCHARGE}.fault.root_valve", "open", "it is shut off already")

MOVED_UP = Cause(
    id="gauge-moved-up", group=GROUP, keys=(f"{DISCHARGE}.height_m",),
    says="The discharge gauge was hung higher, its leg full.",
    size=Size("m", "how much higher", 0, 20, none=0, usual=2),
    edit=e.plus(f"{DISCHARGE}.height_m"), unless=_OPEN, shown_by=("height-measured",),
    alike="gauge-zero-off", source="hydrostatics",
)  # fmt: skip
MOVED_DOWN = Cause(
    id="gauge-moved-down", group=GROUP, keys=(f"{DISCHARGE}.height_m",),
    says="The discharge gauge was hung lower, its leg full.",
    size=Size("m", "how much lower", 0, 20, none=0, usual=2),
    edit=e.plus(f"{DISCHARGE}.height_m", -1), unless=_OPEN, shown_by=("height-measured",),
    room=e.below(f"{DISCHARGE}.height_m", -30.0), alike="gauge-zero-off", source="hydrostatics",
)  # fmt: skip
LEG = Cause(
    id="gauge-leg-gassed", group=GROUP, keys=(f"{DISCHARGE}.fault.leg_filled",),
    says="Gas has gathered in the discharge gauge's leg.",
    size=Size("-", "share that is full, over the one before", 0, 1, none=1, usual=0.5),
    edit=e.scaled(f"{DISCHARGE}.fault.leg_filled"), unless=e.first(_OPEN, _level_leg),
    shown_by=("leg-bled",), alike="gauge-zero-off",
)  # fmt: skip
ROOT_SHUT = Cause(
    id="gauge-shut-off", group=GROUP, keys=(f"{DISCHARGE}.fault.root_valve",),
    says="The discharge gauge's root valve is shut, or its line plugged: it keeps what it showed.",
    edit=lambda plant, size: {f"{DISCHARGE}.fault.root_valve": "shut"}, unless=_OPEN,
    shown_by=("pointer-lively", "gauge-vented"),
)  # fmt: skip
ZERO = Cause(
    id="gauge-zero-off", group=GROUP, keys=(f"{DISCHARGE}.fault.zero_bar",),
    says="The discharge gauge's zero is off.",
    size=Size("%", "error of its zero, of its span", -30, 30, none=0, usual=-10),
    edit=_of_span(DISCHARGE), unless=_OPEN, shown_by=("gauge-vented", "gauge-compared"),
)  # fmt: skip
SPAN = Cause(
    id="gauge-span-off", group=GROUP, keys=(f"{DISCHARGE}.fault.span_percent",),
    says="The discharge gauge's span is off: it is right at zero only.",
    size=Size("%", "part of the pressure that it adds", -40, 40, none=0, usual=-10),
    edit=e.plus(f"{DISCHARGE}.fault.span_percent"), unless=_OPEN, shown_by=("gauge-compared",),
    room=e.within(f"{DISCHARGE}.fault.span_percent"),
)  # fmt: skip
RE_RANGED = Cause(
    id="transmitter-re-ranged", group=GROUP, keys=(f"{DISCHARGE}.fault.span_percent",),
    says="The discharge transmitter was set to another range, its display was not.",
    size=Size("-", "what it shows, over what it should", 0.5, 1.5, none=1, usual=0.8), alike="gauge-span-off",
    edit=_re_ranged(f"{DISCHARGE}.fault.span_percent"), unless=_OPEN, shown_by=("range-read",),
    room=_re_ranged_room(f"{DISCHARGE}.fault.span_percent"),
)  # fmt: skip
ABSOLUTE = Cause(
    id="gauge-from-vacuum", group=GROUP, keys=(f"{DISCHARGE}.fault.reads",),
    says="The discharge gauge was replaced by one that counts from vacuum.",
    edit=lambda plant, size: {f"{DISCHARGE}.fault.reads": "absolute"}, shown_by=("dial-read",),
    alike="gauge-zero-off",
    unless=e.first(_OPEN, e.needs(f"{DISCHARGE}.fault.reads", "gauge", "it counts from vacuum already")),
)  # fmt: skip
TAPPED_BEHIND = Cause(
    id="gauge-tapped-behind-valve", group=GROUP, keys=(f"{DISCHARGE}.fault.tapping",),
    says="The discharge gauge was connected behind the control valve.",
    edit=lambda plant, size: {f"{DISCHARGE}.fault.tapping": "after-valve"}, shown_by=("tapping-traced",),
    unless=e.first(
        e.needs_line, _OPEN, e.needs(f"{DISCHARGE}.fault.tapping", "own", "it is tapped elsewhere already")
    ),
)  # fmt: skip
SUCTION_ROOT_SHUT = Cause(
    id="suction-gauge-shut-off", group=GROUP, keys=("gauges.suction.fault.root_valve",),
    says="The suction gauge's root valve is shut, or its line plugged: it keeps what it showed.",
    edit=lambda plant, size: {"gauges.suction.fault.root_valve": "shut"},
    unless=e.needs("gauges.suction.fault.root_valve", "open", "it is shut off already"),
    shown_by=("pointer-lively", "gauge-vented"),
)  # fmt: skip
SUCTION_ZERO = Cause(
    id="suction-gauge-zero-off", group=GROUP, keys=("gauges.suction.fault.zero_bar",),
    says="The suction gauge's zero is off.",
    size=Size("%", "error of its zero, of its span", -30, 30, none=0, usual=-10),
    edit=_of_span("gauges.suction"), shown_by=("gauge-vented", "gauge-compared"),
    unless=e.needs("gauges.suction.fault.root_valve", "open", "it is shut off already"),
)  # fmt: skip

CAUSES = (
    MOVED_UP, MOVED_DOWN, LEG, ROOT_SHUT, ZERO,
    SPAN, RE_RANGED, ABSOLUTE, TAPPED_BEHIND, SUCTION_ROOT_SHUT,
    SUCTION_ZERO,
)  # fmt: skip
