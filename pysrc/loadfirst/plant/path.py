"""Head and pressure along the liquid's way, from surface to surface.

The pipe runs level at the pump's centre from suction flange to control valve.
It leaves the supply vessel at its bottom, and ends at `delivery.outlet_m`, or
at the delivery vessel's bottom. In front of the supply's outlet and at both
surfaces the liquid is at rest; everywhere else the pressure is the static one.
"""

from __future__ import annotations

from loadfirst.plant.answer import Node, PathPoint
from loadfirst.plant.build import pipe_end_height
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.velocity import discharge_velocity_head, static_pressure, suction_velocity_head
from loadfirst.units import BAR


def nodes(one: OnePlant) -> dict[str, Node]:
    """Where the gauges are tapped: both flanges, and after the control valve."""
    height = one.plant.pump.centre_m
    found = {"suction": _node(one, "suction", height, suction_velocity_head(one))}
    for name in ("discharge", "after-valve") if one.layout.attached else ("discharge",):
        found[name] = _node(one, name, height, discharge_velocity_head(one))
    return found


def _node(one: OnePlant, name: str, height: float, velocity: float) -> Node:
    head = one.head(name)
    return Node(head, static_pressure(one, head, height, velocity), height)


def path(one: OnePlant) -> tuple[PathPoint, ...]:
    """The places along the way, in order; with the line off they end at the discharge."""
    plant, gone = one.plant, one.plant.suction.length_m
    supply, slow, fast = one.plant.supply, suction_velocity_head(one), discharge_velocity_head(one)
    head = one.head("supply")

    def place(name: str, distance: float, height: float, head: float | None, velocity: float) -> PathPoint:
        return PathPoint(name, distance, height, head, static_pressure(one, head, height, velocity))

    along = [
        PathPoint("supply-surface", 0.0, supply.surface_m, head, supply.gas_bar * BAR),
        place("supply-outlet", 0.0, supply.bottom_m, head, 0.0),
        place("suction", gone, plant.pump.centre_m, one.head("suction"), slow),
        place("discharge", gone, plant.pump.centre_m, one.head("discharge"), fast),
    ]
    if one.layout.check_in_load and plant.check.fitted:
        along.append(place("after-check", gone, plant.pump.centre_m, one.head("after-check"), fast))
    if one.layout.attached:
        along.append(place("after-valve", gone, plant.pump.centre_m, one.head("after-valve"), fast))
        far = gone + plant.discharge.length_m
        along.append(place("pipe-end", far, pipe_end_height(plant), _head_before_exit(one, fast), fast))
        along.append(_delivery_surface(one, far))
    return tuple(along)


def _head_before_exit(one: OnePlant, velocity: float) -> float | None:
    """Head just inside the end: the exit's loss, one velocity head of `fittings_k`, is still to come."""
    head = one.head("pipe-end")
    if head is None or one.exact_flow("discharge-line") <= 0:
        return head
    return head + min(1.0, one.plant.discharge.fittings_k) * velocity


def _delivery_surface(one: OnePlant, distance: float) -> PathPoint:
    delivery = one.plant.delivery
    gas = delivery.gas_bar * BAR
    return PathPoint(
        "delivery-surface", distance, delivery.surface_m, delivery.surface_m + gas / one.weight, gas
    )
