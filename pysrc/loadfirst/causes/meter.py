"""Causes at the flow meter and the ammeters: the plant is as it was, and one of them shows something else."""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.group import Group
from loadfirst.causes.liquid import density
from loadfirst.causes.pairs import zero_and_span
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

FLOW = zero_and_span(
    "meters.flow_fault", "flow-meter", "flow meter",
    span="or its range was changed at one end of the wire only", says="what it senses",
    shown_by=("tank-timed", "meter-settings"),
)  # fmt: skip
CURRENT = zero_and_span(
    "meters.current_fault", "ammeter", "ammeter", span="as with a current transformer of another ratio",
    says="the current", shown_by=("current-clamped",),
)  # fmt: skip
FLOW_NOISE = Cause(
    id="flow-meter-noisy", group=GROUP, keys=("meters.flow_fault.noise_percent",), hunts=True,
    says="The flow meter's signal is noisy: air in its pulse lines, a bad earth, or a swirl before it.",
    size=Size("%", "standard deviation of its noise, of its range, added", 0, 10, none=0, usual=2),
    edit=e.plus("meters.flow_fault.noise_percent"), room=e.above("meters.flow_fault.noise_percent", 20.0),
    shown_by=("meter-lines",),
)  # fmt: skip
FLOW_DAMPED = Cause(
    id="flow-meter-damped", group=GROUP, keys=("meters.flow_fault.damping_s",),
    says="The flow meter was damped heavily, and its quiet hides what trembles.",
    size=Size("s", "time constant of its damping, added", 0, 300, none=0, usual=30),
    edit=e.plus("meters.flow_fault.damping_s"), room=e.above("meters.flow_fault.damping_s", 600.0),
    shown_by=("meter-settings",),
)  # fmt: skip
FLOW_PLACE = Cause(
    id="flow-meter-elsewhere", group=GROUP, keys=("meters.flow_place",),
    says="The flow meter was moved behind the return line's tee, and misses what goes back.",
    edit=e.to("meters.flow_place", "after-return"), shown_by=("meter-place",),
    unless=e.first(
        e.needs("return_line.fitted", True, "there is no return line"),
        e.bars_with("meters.flow_place", "after-return", "it stands there already"),
    ),
)  # fmt: skip
PLATE = Cause(
    id="plate-reversed", group=GROUP, keys=("meters.flow_fault.plate",),
    says="The orifice plate was put in with its bevelled side upstream.",
    edit=e.to("meters.flow_fault.plate", "reversed"), shown_by=("plate-tag", "tank-timed"),
    alike="flow-meter-span-off",
    unless=e.first(_ORIFICE, e.needs("meters.flow_fault.plate", "right", "it is reversed already")),
)  # fmt: skip
EDGE = Cause(
    id="plate-worn", group=GROUP, keys=("meters.flow_fault.span_percent",), alike="flow-meter-span-off",
    says="The sharp edge of the orifice plate is worn round.",
    size=Size("%", "part of the differential pressure that is lost", 0, 20, none=0, usual=6),
    edit=e.plus("meters.flow_fault.span_percent", -1), unless=_ORIFICE,
    shown_by=("plate-seen", "tank-timed"),
    room=e.below("meters.flow_fault.span_percent", -50.0),
    source="common practice: a round edge passes more at the same differential pressure",
)  # fmt: skip
ROOT_MISSING = Cause(
    id="root-missing", group=GROUP, keys=("meters.flow_fault.root",),
    says="Nobody takes the square root of the orifice's differential pressure.",
    edit=e.to("meters.flow_fault.root", "missing"), unless=_ROOTED, shown_by=("meter-settings",),
)  # fmt: skip
ROOT_DOUBLED = Cause(
    id="root-doubled", group=GROUP, keys=("meters.flow_fault.root",),
    says="The square root of the orifice's differential pressure is taken twice.",
    edit=e.to("meters.flow_fault.root", "doubled"), unless=_ROOTED, shown_by=("meter-settings",),
)  # fmt: skip
FLOW_DENSITY = Cause(
    id="flow-meter-other-density", group=GROUP, keys=("meters.flow_density_kgm3",),
    says="The orifice meter is scaled for a liquid of another density.",
    size=Size("-", "density it is scaled for, over the one before", 0.5, 2, none=1, usual=1.2, scale="log"),
    edit=_scaled_density, unless=_ORIFICE, shown_by=("density-set", "sample-weighed"),
    alike="flow-meter-span-off", source="orifice: q = k √(Δp/ρ)",
    room=lambda plant: (1 / _design_density(plant), 20000 / _design_density(plant)),
)  # fmt: skip
CURRENT_PLACE = Cause(
    id="ammeter-before-drive", group=GROUP, keys=("meters.current_place",),
    says="The current is now read before the drive, where it follows the power.",
    edit=e.to("meters.current_place", "before-drive"), shown_by=("current-clamped",),
    unless=e.first(
        e.needs_drive, e.needs("meters.current_place", "motor", "it is read there already")
    ),
)  # fmt: skip

CAUSES = (
    *FLOW, FLOW_NOISE, FLOW_DAMPED, FLOW_PLACE, PLATE, EDGE, ROOT_MISSING, ROOT_DOUBLED, FLOW_DENSITY,
    *CURRENT, CURRENT_PLACE,
)  # fmt: skip
