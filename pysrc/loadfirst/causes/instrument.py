"""Causes in what is read: the plant is as it was, and one instrument shows something else."""

from __future__ import annotations

from collections.abc import Callable

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.edit import value
from loadfirst.causes.group import Group
from loadfirst.causes.liquid import density
from loadfirst.plant.drives import has_drive
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.units import PERCENT

GROUP: Group = "instrument"
DISCHARGE = "gauges.discharge"


def _of_span(gauge: str) -> Callable[[ResolvedPlant, float], Edits]:
    """A zero that is off by a share of the gauge's span. [%]"""

    def edit(plant: ResolvedPlant, size: float) -> Edits:
        low, high = value(plant, f"{gauge}.range_bar")
        key = f"{gauge}.fault.zero_bar"
        return {key: value(plant, key) + size * PERCENT * (high - low)}

    return edit


def _within(key: str, end: float = 50.0) -> e.Room:
    """Additions that keep the key's value within ± end."""
    return lambda plant: (-end - value(plant, key), end - value(plant, key))


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


def _design_density(plant: ResolvedPlant) -> float:
    """[kg/m³]"""
    design: float | None = plant.plant.meters.flow_density_kgm3
    return density(plant) if design is None else design


def _scaled_density(plant: ResolvedPlant, size: float) -> Edits:
    return {"meters.flow_density_kgm3": _design_density(plant) * size}


def _without_drive(plant: ResolvedPlant) -> str | None:
    return None if has_drive(plant.plant.drive) else "there is no variable-speed drive"


_ORIFICE = e.needs("meters.flow_kind", "orifice", "the flow meter is no orifice")
_OPEN = e.needs(f"{DISCHARGE}.fault.root_valve", "open", "it is shut off already")
_ROOTED = e.first(_ORIFICE, e.needs("meters.flow_fault.root", "right", "its root is wrong already"))

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
    room=_within(f"{DISCHARGE}.fault.span_percent"),
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
FLOW_ZERO = Cause(
    id="flow-meter-zero-off", group=GROUP, keys=("meters.flow_fault.zero_percent",),
    says="The flow meter's zero is off.",
    size=Size("%", "error of its zero, of its range", -20, 20, none=0, usual=-5),
    edit=e.plus("meters.flow_fault.zero_percent"), room=_within("meters.flow_fault.zero_percent"),
    shown_by=("tank-timed",),
)  # fmt: skip
FLOW_SPAN = Cause(
    id="flow-meter-span-off", group=GROUP, keys=("meters.flow_fault.span_percent",),
    says="The flow meter's span is off, or its range was changed at one end of the wire only.",
    size=Size("%", "part of what it senses that it adds", -40, 40, none=0, usual=-10),
    edit=e.plus("meters.flow_fault.span_percent"), room=_within("meters.flow_fault.span_percent"),
    shown_by=("tank-timed", "meter-settings"),
)  # fmt: skip
FLOW_PLACE = Cause(
    id="flow-meter-elsewhere", group=GROUP, keys=("meters.flow_place",),
    says="The flow meter was moved behind the return line's tee, and misses what goes back.",
    edit=e.put(meters__flow_place="after-return"), shown_by=("meter-place",),
    unless=e.first(
        e.needs("return_line.fitted", True, "there is no return line"),
        e.bars_with("meters.flow_place", "after-return", "it stands there already"),
    ),
)  # fmt: skip
PLATE = Cause(
    id="plate-reversed", group=GROUP, keys=("meters.flow_fault.plate",),
    says="The orifice plate was put in with its bevelled side upstream.",
    edit=e.put(meters__flow_fault__plate="reversed"), shown_by=("plate-tag", "tank-timed"),
    alike="flow-meter-span-off",
    unless=e.first(_ORIFICE, e.needs("meters.flow_fault.plate", "right", "it is reversed already")),
)  # fmt: skip
ROOT_MISSING = Cause(
    id="root-missing", group=GROUP, keys=("meters.flow_fault.root",),
    says="Nobody takes the square root of the orifice's differential pressure.",
    edit=e.put(meters__flow_fault__root="missing"), unless=_ROOTED, shown_by=("meter-settings",),
)  # fmt: skip
ROOT_DOUBLED = Cause(
    id="root-doubled", group=GROUP, keys=("meters.flow_fault.root",),
    says="The square root of the orifice's differential pressure is taken twice.",
    edit=e.put(meters__flow_fault__root="doubled"), unless=_ROOTED, shown_by=("meter-settings",),
)  # fmt: skip
FLOW_DENSITY = Cause(
    id="flow-meter-other-density", group=GROUP, keys=("meters.flow_density_kgm3",),
    says="The orifice meter is scaled for a liquid of another density.",
    size=Size("-", "density it is scaled for, over the one before", 0.5, 2, none=1, usual=1.2, scale="log"),
    edit=_scaled_density, unless=_ORIFICE, shown_by=("density-set", "sample-weighed"),
    alike="flow-meter-span-off", source="orifice: q = k √(Δp/ρ)",
    room=lambda plant: (1 / _design_density(plant), 20000 / _design_density(plant)),
)  # fmt: skip
CURRENT_ZERO = Cause(
    id="ammeter-zero-off", group=GROUP, keys=("meters.current_fault.zero_percent",),
    says="The ammeter's zero is off.",
    size=Size("%", "error of its zero, of its range", -20, 20, none=0, usual=-5),
    edit=e.plus("meters.current_fault.zero_percent"), room=_within("meters.current_fault.zero_percent"),
    shown_by=("current-clamped",),
)  # fmt: skip
CURRENT_SPAN = Cause(
    id="ammeter-span-off", group=GROUP, keys=("meters.current_fault.span_percent",),
    says="The ammeter's span is off, as with a current transformer of another ratio.",
    size=Size("%", "part of the current that it adds", -40, 40, none=0, usual=-10),
    edit=e.plus("meters.current_fault.span_percent"), room=_within("meters.current_fault.span_percent"),
    shown_by=("current-clamped",),
)  # fmt: skip
CURRENT_PLACE = Cause(
    id="ammeter-before-drive", group=GROUP, keys=("meters.current_place",),
    says="The current is now read before the drive, where it follows the power.",
    edit=e.put(meters__current_place="before-drive"), shown_by=("current-clamped",),
    unless=e.first(
        _without_drive, e.needs("meters.current_place", "motor", "it is read there already")
    ),
)  # fmt: skip

CAUSES = (
    MOVED_UP, MOVED_DOWN, LEG, ROOT_SHUT, ZERO, SPAN, RE_RANGED, ABSOLUTE, TAPPED_BEHIND,
    SUCTION_ROOT_SHUT, SUCTION_ZERO, FLOW_ZERO, FLOW_SPAN, FLOW_PLACE, PLATE,
    ROOT_MISSING, ROOT_DOUBLED, FLOW_DENSITY, CURRENT_ZERO, CURRENT_SPAN, CURRENT_PLACE,
)  # fmt: skip
