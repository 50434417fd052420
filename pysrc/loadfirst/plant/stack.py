"""What the load asks for, block by block, and the balance that two gauges would give.

The blocks add up to the pumps' own head, because each is a drop or a difference
along one way through the network. A check valve that holds takes what the pumps
lack upon itself; where the liquid does not get to an open end, that much of the
lift is not reached. Where nothing flows nothing is lost: the trifles that the
leakage of a shut element's steep line would lose elsewhere go to what holds. Two
shut elements in a row share what is left nobody knows how: no number stands there.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from loadfirst.plant.answer import Balance, Block, BlockName, Machine, Station
from loadfirst.plant.build import pipe_end_height, pours_freely
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.velocity import discharge_velocity_head, suction_velocity_head
from loadfirst.units import BAR

TRIFLE = 1e-3
"""Of what holds: a loss by leakage alone is far less. [-]"""

Loss = tuple[BlockName, float]


def own_head(one: OnePlant, machines: tuple[Machine, ...]) -> float:
    """What the pumps themselves add: in line together, side by side each. [m]"""
    return sum(machine.head for machine in machines) / one.layout.side_by_side


def static_head(one: OnePlant) -> float:
    """Head that the load asks before anything flows: lift and pressures. [m]"""
    return sum(head for _, head in _static(one))


def stack(one: OnePlant, head: float) -> tuple[Block, ...]:
    """Blocks of the load's head, from the supply's surface to the far end.

    Parameters
    ----------
    head : the pumps' own. [m]
    """
    losses = tuple(_losses(one))
    if not one.flow("suction-line"):
        losses = _at_rest(losses)
    holding = _holding(one)
    unknown = holding if len(holding) > 1 else ()
    return tuple(Block(name, None if name in unknown else lost) for name, lost in (*_static(one), *losses))


def _static(one: OnePlant) -> tuple[Loss, Loss]:
    plant = one.plant
    if one.layout.attached:
        far, gas = plant.delivery.surface_m, plant.delivery.gas_bar
        far = pipe_end_height(plant) if pours_freely(plant) else far
    else:
        far, gas = plant.pump.centre_m, 0.0
    return (
        ("lift", far - plant.supply.surface_m),
        ("vessel-pressure", (gas - plant.supply.gas_bar) * BAR / one.weight),
    )


def _losses(one: OnePlant) -> Iterator[Loss]:
    yield "suction-line", one.drop("suction-line")
    check, end = _check_drop(one), one.drop("end")
    if not one.layout.attached and one.not_reached:  # no liquid is there that a check valve could hold
        check, end = 0.0, end + check
    if one.plant.check.fitted and one.layout.checks:
        yield "check-valve", check
    if one.layout.attached:
        through = np.array([[one.exact_flow("suction-line"), one.exact_flow("discharge-line")]])
        row = one.built.pipes.rows(np.array([one.row]))
        friction, fittings = (float(part[0, 1]) for part in row.breakdown(through))
        yield "pipe", friction
        yield "fittings", fittings
        yield "valve", one.drop("valve")
    else:
        yield "jet", 0.0 if one.shut("end") else end
    if one.shut("end"):
        yield "not-reached", end


def _check_drop(one: OnePlant) -> float:
    """Head lost in the check valves on one way through the plant. [m]"""
    return sum(one.drop(check) for check in one.layout.checks) / one.layout.side_by_side


def _holding(one: OnePlant) -> tuple[BlockName, ...]:
    """Blocks whose element is shut, along the way."""
    found: list[BlockName] = []
    dry = one.not_reached and not one.layout.attached
    if not dry and any(one.shut(check) for check in one.layout.checks):
        found.append("check-valve")
    if one.layout.attached and one.shut("valve"):
        found.append("valve")
    if one.shut("end"):
        found.append("not-reached")
    return tuple(found) if not one.flow("suction-line") else ()


def _at_rest(losses: tuple[Loss, ...]) -> tuple[Loss, ...]:
    """The same, and the same in all, with the trifles given to the greatest."""
    greatest = max(losses, key=lambda loss: abs(loss[1]))
    trifles = [loss for loss in losses if abs(loss[1]) < TRIFLE * abs(greatest[1])]
    whole = greatest[1] + sum(head for _, head in trifles)
    return tuple(
        (loss[0], whole if loss is greatest else 0.0 if loss in trifles else loss[1]) for loss in losses
    )


def balance(one: OnePlant, station: Station) -> Balance:
    """The pumps' head from pressures, heights and speeds at the two gauges.

    Both gauges are tapped at the pumps' centre; the bores are those of the lines.
    The check valves of two pumps stand between them.
    """
    slow, fast, centre = suction_velocity_head(one), discharge_velocity_head(one), one.plant.pump.centre_m
    if station.suction_head is None or station.discharge_head is None:
        return Balance(None, 0.0, fast - slow, None, station.head)
    before = one.weight * (station.suction_head - centre - slow)
    after = one.weight * (station.discharge_head - centre - fast)
    between = 0.0 if one.layout.check_in_load else _check_drop(one)
    return total_head(after - before, 0.0, fast - slow, one.weight, between)


def total_head(
    pressure_rise: float, height: float, velocity_head: float, weight: float, check_valve: float = 0.0
) -> Balance:
    """Total head between two flanges, in its parts.

    Parameters
    ----------
    pressure_rise : from suction to discharge. [Pa]
    height : of the discharge's tapping above the suction's. [m]
    velocity_head : v²/2g at the discharge less that at the suction. [m]
    weight : ρg of the liquid. [N/m³]
    check_valve : lost between the two tappings other than in a pump. [m]

    Source: ISO 9906, H = Δp/(ρg) + Δz + Δ(v²)/2g.
    """
    pressure_head = pressure_rise / weight
    answer = pressure_head + height + velocity_head + check_valve
    return Balance(pressure_head, height, velocity_head, check_valve, answer)
