"""Head and pressure along the liquid's way, from surface to surface.

The pipe runs level at the pump's centre from suction flange to control valve.
It leaves the supply vessel at `suction.mouth_m`, or at its bottom, and ends at `delivery.outlet_m`, or
at the delivery vessel's bottom. In front of the supply's outlet and at both
surfaces the liquid is at rest; everywhere else the pressure is the static one.
"""

from __future__ import annotations

from loadfirst.plant.answer import Node, PathPoint
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.velocity import (
    discharge_velocity_head,
    line_velocity_head,
    not_below_vapour,
    static_pressure,
    suction_velocity_head,
)


def nodes(one: OnePlant) -> dict[str, Node]:
    """Where the gauges are tapped: both flanges, and after the control valve."""
    found = {
        "suction": _node(one, "suction", suction_velocity_head(one)),
        "discharge": _node(one, "discharge", discharge_velocity_head(one)),
    }
    if one.layout.attached:
        found["after-valve"] = _node(one, "after-valve", line_velocity_head(one))
    return found


def _node(one: OnePlant, name: str, velocity: float) -> Node:
    head, height = one.head(name), one.plant.pump.centre_m
    return Node(head, not_below_vapour(one, name, static_pressure(one, head, height, velocity)), height)


def path(one: OnePlant) -> tuple[PathPoint, ...]:
    """The places along the way, in order; with the line off they end at the discharge."""
    along: list[PathPoint] = []
    for section in one.layout.sections:
        along += section.places(one, along[-1].distance if along else 0.0)
    return tuple(along)
