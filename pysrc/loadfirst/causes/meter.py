"""Causes at the flow meter and the ammeters: the plant is as it was, and one of them shows something else."""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.group import Group
from loadfirst.causes.liquid import density
from loadfirst.plant.pumps import ResolvedPlant

GROUP: Group = "instrument"


def _design_density(plant: ResolvedPlant) -> float:
    """[kg/m³]"""
    design: float | None = plant.plant.meters.flow_density_kgm3
    return density(plant) if design is None else design


def _scaled_density(plant: ResolvedPlant, size: float) -> Edits:
    return {"meters.flow_density_kgm3": _design_density(plant) * size}


_ORIFICE = e.needs("meters.flow_kind", "orifice", "the flow meter is no orifice")
_ROOTED = e.first(_ORIFICE, e.needs("meters.flow_fault.root", "right", "its root is wrong already"))

FLOW_ZERO = Cause(
    id="flow-meter-zero-off", group=GROUP, keys=("meters.flow_fault.zero_percent",),
    says="The flow meter's zero is off.",
    size=Size("%", "error of its zero, of its range", -20, 20, none=0, usual=-5),
    edit=e.plus("meters.flow_fault.zero_percent"), room=e.within("meters.flow_fault.zero_percent"),
    shown_by=("tank-timed",),
)  # fmt: skip
FLOW_SPAN = Cause(
    id="flow-meter-span-off", group=GROUP, keys=("meters.flow_fault.span_percent",),
    says="The flow meter's span is off, or its range was changed at one end of the wire only.",
    size=Size("%", "part of what it senses that it adds", -40, 40, none=0, usual=-10),
    edit=e.plus("meters.flow_fault.span_percent"), room=e.within("meters.flow_fault.span_percent"),
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
    edit=e.plus("meters.current_fault.zero_percent"), room=e.within("meters.current_fault.zero_percent"),
    shown_by=("current-clamped",),
)  # fmt: skip
CURRENT_SPAN = Cause(
    id="ammeter-span-off", group=GROUP, keys=("meters.current_fault.span_percent",),
    says="The ammeter's span is off, as with a current transformer of another ratio.",
    size=Size("%", "part of the current that it adds", -40, 40, none=0, usual=-10),
    edit=e.plus("meters.current_fault.span_percent"), room=e.within("meters.current_fault.span_percent"),
    shown_by=("current-clamped",),
)  # fmt: skip
CURRENT_PLACE = Cause(
    id="ammeter-before-drive", group=GROUP, keys=("meters.current_place",),
    says="The current is now read before the drive, where it follows the power.",
    edit=e.put(meters__current_place="before-drive"), shown_by=("current-clamped",),
    unless=e.first(
        e.needs_drive, e.needs("meters.current_place", "motor", "it is read there already")
    ),
)  # fmt: skip

CAUSES = (
    FLOW_ZERO, FLOW_SPAN, FLOW_PLACE, PLATE, ROOT_MISSING,
    ROOT_DOUBLED, FLOW_DENSITY, CURRENT_ZERO, CURRENT_SPAN, CURRENT_PLACE,
)  # fmt: skip
