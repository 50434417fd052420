"""Causes that make the load lighter or heavier on the way to the delivery vessel."""

from __future__ import annotations

from loadfirst.causes import beside_the_way
from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Size
from loadfirst.causes.controller import controller_causes
from loadfirst.causes.edit import value
from loadfirst.causes.group import Group
from loadfirst.causes.pairs import Way, additions, travel
from loadfirst.plant.pumps import ResolvedPlant

GROUP: Group = "discharge-side"


def _pours_in(plant: ResolvedPlant) -> str | None:
    end = plant.plant.delivery.outlet_m
    pours = end is not None and end > plant.plant.delivery.surface_m
    return "the pipe pours in above the surface, whose level it does not feel" if pours else None


VALVE = travel(
    "valve.opening",
    Way("valve-opened", "The control valve in the discharge line was opened further.", 0.5),
    Way("valve-throttled", "The control valve in the discharge line was closed further.", 0.5),
    group=GROUP, unless=e.first(e.needs_line, e.valve_by_hand), shown_by=("valve-stem", "shift-log"),
)  # fmt: skip
USER = travel(
    "branch.opening",
    Way("user-opens", "The second user opened its valve.", 0.5),
    Way("user-closes", "The second user closed its valve further.", 0),
    group=GROUP, unless=e.needs("branch.fitted", True, "there is no second user"),
    shown_by=("other-user", "shift-log"),
)  # fmt: skip
DELIVERY_LEVEL = additions(
    "delivery.surface_m",
    Way("delivery-level-higher", "The level in the delivery vessel has risen.", 2),
    Way("delivery-level-lower", "The level in the delivery vessel has fallen.", 2),
    unit="m", most=20, ends=("delivery.top_m", "delivery.bottom_m"),
    group=GROUP, unless=e.first(e.needs_line, _pours_in), shown_by=("far-vessel",),
)  # fmt: skip
BACK_PRESSURE = additions(
    "delivery.gas_bar",
    Way("back-pressure-higher", "The gas pressure in the delivery vessel has risen.", 0.5),
    Way("back-pressure-lower", "The gas pressure in the delivery vessel has fallen.", 0.5),
    unit="bar", most=10, ends=(100.0, 0.0), group=GROUP, unless=e.needs_line, shown_by=("far-pressure",),
)  # fmt: skip
HAND_VALVE = Cause(
    id="hand-valve-half-shut", group=GROUP, keys=("discharge.fittings_k",),
    says="A hand valve in the discharge line was left half shut, or something lodges there.",
    size=Size("-", "loss coefficient that it adds", 0.1, 1000, none=0, usual=20, scale="log"),
    edit=e.plus("discharge.fittings_k"), unless=e.needs_line, shown_by=("hand-valves", "shift-log"),
)  # fmt: skip
LINE_SCALED = Cause(
    id="line-scaled", group=GROUP, keys=("discharge.bore_mm",),
    says="Scale has narrowed the discharge line.",
    size=Size("-", "inside diameter, over the one before", 0.7, 1, none=1, usual=0.9),
    edit=e.scaled("discharge.bore_mm"), unless=e.needs_line, shown_by=("piece-of-pipe",),
    room=lambda plant: (
        max(5.0, 20.0 * plant.plant.discharge.roughness_mm) / plant.plant.discharge.bore_mm, 1.0
    ),
)  # fmt: skip
FILTER_FOULED = Cause(
    id="filter-fouled", group=GROUP, keys=("filter.fouling",),
    says="The filter has caught more dirt.",
    size=Size("-", "resistance of the dirt, over that of the clean medium", 0.1, 100, 0, 3, "log"),
    edit=e.plus("filter.fouling"), room=e.above("filter.fouling", 1000.0),
    unless=e.first(e.needs_line, e.needs("filter.fitted", True, "there is no filter")),
    shown_by=("filter-drop",),
)  # fmt: skip
FILTER_CHANGED = Cause(
    id="filter-changed", group=GROUP, keys=("filter.fouling",),
    says="The filter was cleaned or changed.",
    size=Size("-", "dirt that is left, over the one before", 0, 1, none=1, usual=0),
    edit=e.scaled("filter.fouling"),
    unless=e.first(
        e.needs_line, e.needs("filter.fitted", True, "there is no filter"),
        e.bars_with("filter.fouling", 0.0, "it is clean already"),
    ),
    shown_by=("filter-drop", "shift-log"),
)  # fmt: skip
BURST = Cause(
    id="burst", group=GROUP, keys=("burst.fitted", "burst.hole_mm"),
    says="The discharge line has burst near the pump.",
    size=Size("mm", "width of the hole", 2, 200, none=0, usual=25, scale="log"),
    edit=lambda plant, size: {"burst.fitted": True, "burst.hole_mm": size},
    unless=e.first(e.needs_line, e.bars_with("burst.fitted", True, "it has burst already")),
    room=lambda plant: (0.0, value(plant, "discharge.bore_mm")), shown_by=("line-walked",),
)  # fmt: skip
LINE_FILLING = Cause(
    id="line-filling", group=GROUP, keys=("discharge.filled",),
    says="The discharge line was drained and is still being filled.",
    size=Size("-", "share of its length that is full, over the one before", 0.05, 1, none=1, usual=0.5),
    edit=e.scaled("discharge.filled"), room=e.factors("discharge.filled", 0.01, 1.0),
    unless=e.first(
        e.needs_line, e.bars_with("second_line.fitted", True, "two lines are full, or none of them")
    ),
    shown_by=("far-vessel", "shift-log"),
)  # fmt: skip
SUMMIT_BROKEN = Cause(
    id="summit-broken", group=GROUP, keys=("summit.primed",),
    says="Air has come to the summit of the line, whose far leg no longer pulls.",
    edit=e.to("summit.primed", False),
    unless=e.first(
        e.needs_line, e.needs("summit.fitted", True, "the line has no summit"),
        e.needs("summit.primed", True, "air stands there already"),
    ),
    shown_by=("summit-vented",),
)  # fmt: skip
SECOND_LINE_SHUT = Cause(
    id="second-line-shut", group=GROUP, keys=("second_line.fitted",),
    says="The second line to the delivery vessel was shut.",
    edit=e.to("second_line.fitted", False),
    unless=e.first(e.needs_line, e.needs("second_line.fitted", True, "there is no second line")),
    shown_by=("hand-valves", "shift-log"),
)  # fmt: skip
USERS_DRAW = Cause(
    id="draw-changed", group=GROUP, keys=("delivery.draw_m3h",),
    says="The draw that a level controller makes up for has changed.",
    size=Size("-", "draw, over the one before", 0, 2, none=1, usual=1.25),
    edit=e.scaled("delivery.draw_m3h"), shown_by=("other-user",),
    unless=lambda plant: (
        None if e.controlled(plant, "valve") and plant.plant.control.of == "delivery-level"
        else "no controller holds the delivery vessel's level with the valve"
    ),
)  # fmt: skip

CAUSES = (
    *VALVE, HAND_VALVE, LINE_SCALED, *USER, *DELIVERY_LEVEL, *BACK_PRESSURE,
    FILTER_FOULED, FILTER_CHANGED, BURST, LINE_FILLING, SUMMIT_BROKEN, SECOND_LINE_SHUT, USERS_DRAW,
    *controller_causes(GROUP, "valve"),
    *beside_the_way.CAUSES,
)  # fmt: skip
