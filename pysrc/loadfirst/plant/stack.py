"""What the load asks for, block by block, and the balance that two gauges would give.

The blocks add up to the station's head, because each is a drop or a difference
along one way through the network. A check valve that holds, or a pipe's end
that nothing leaves, takes the rest of the head upon itself; it stands among
the fittings. Where nothing flows nothing is lost: the trifles that the leakage
of a shut element's steep line would lose elsewhere go to what holds.
"""

from __future__ import annotations

import numpy as np

from loadfirst.plant.answer import Balance, Block
from loadfirst.plant.build import pipe_end_height, pours_freely
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.velocity import discharge_velocity_head, suction_velocity_head
from loadfirst.units import BAR

TRIFLE = 1e-3
"""Of what holds: a loss by leakage alone is far less. [-]"""


def stack(one: OnePlant) -> tuple[Block, ...]:
    """Blocks of the load's head, from the supply's surface to the far end. [m]"""
    plant = one.plant
    if one.layout.attached:
        far, gas = plant.delivery.surface_m, plant.delivery.gas_bar
        far = pipe_end_height(plant) if pours_freely(plant) else far
    else:
        far, gas = plant.pump.centre_m, 0.0
    losses = (
        Block("suction-line", one.drop("suction-line")),
        *(_discharge(one) if one.layout.attached else (Block("jet", one.drop("end")),)),
    )
    return (
        Block("lift", far - plant.supply.surface_m),
        Block("vessel-pressure", (gas - plant.supply.gas_bar) * BAR / one.weight),
        *(losses if one.flow("suction-line") else _at_rest(losses)),
    )


def _at_rest(losses: tuple[Block, ...]) -> tuple[Block, ...]:
    """The same, and the same in all, with the trifles given to the greatest."""
    greatest = max(losses, key=lambda block: abs(block.head))
    trifles = [block for block in losses if abs(block.head) < TRIFLE * abs(greatest.head)]
    whole = greatest.head + sum(block.head for block in trifles)
    return tuple(
        Block(block.block, whole if block is greatest else 0.0 if block in trifles else block.head)
        for block in losses
    )


def _discharge(one: OnePlant) -> tuple[Block, ...]:
    through = np.array([[one.exact_flow("suction-line"), one.exact_flow("discharge-line")]])
    row = one.built.pipes.rows(np.array([one.row]))
    friction, fittings = (float(part[0, 1]) for part in row.breakdown(through))
    check = one.drop("check-1") if one.layout.check_in_load else 0.0
    return (
        Block("pipe", friction),
        Block("fittings", fittings + check + one.drop("end")),
        Block("valve", one.drop("valve")),
    )


def balance(one: OnePlant) -> Balance:
    """The station's head from pressures, heights and speeds at its two flanges.

    Both flanges are at the pump's centre; their bores are those of the lines.
    Where the discharge's pressure is undefined, the solver's guess stands here.
    """
    slow, fast, centre = suction_velocity_head(one), discharge_velocity_head(one), one.plant.pump.centre_m
    before = one.weight * (one.exact_head("suction") - centre - slow)
    after = one.weight * (one.exact_head("discharge") - centre - fast)
    return total_head(after - before, 0.0, fast - slow, one.weight)


def total_head(pressure_rise: float, height: float, velocity_head: float, weight: float) -> Balance:
    """Total head between two flanges, in its three parts.

    Parameters
    ----------
    pressure_rise : from suction to discharge. [Pa]
    height : of the discharge's tapping above the suction's. [m]
    velocity_head : v²/2g at the discharge less that at the suction. [m]
    weight : ρg of the liquid. [N/m³]

    Source: ISO 9906, H = Δp/(ρg) + Δz + Δ(v²)/2g.
    """
    pressure_head = pressure_rise / weight
    return Balance(pressure_head, height, velocity_head, pressure_head + height + velocity_head)
