"""What the load asks for, block by block, and the balance that two gauges would give.

The blocks add up to the station's head, because each is a drop or a difference
along one way through the network. A check valve that holds, or a pipe's end
that nothing leaves, takes the rest of the head upon itself; it stands among
the fittings.
"""

from __future__ import annotations

import numpy as np

from loadfirst.plant.answer import Balance, Block
from loadfirst.plant.build import pipe_end_height, pours_freely
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.velocity import discharge_velocity_head, suction_velocity_head
from loadfirst.units import BAR


def stack(one: OnePlant) -> tuple[Block, ...]:
    """Blocks of the load's head, from the supply's surface to the far end. [m]"""
    plant = one.plant
    if one.layout.attached:
        far, gas = plant.delivery.surface_m, plant.delivery.gas_bar
        far = pipe_end_height(plant) if pours_freely(plant) else far
    else:
        far, gas = plant.pump.centre_m, 0.0
    return (
        Block("lift", far - plant.supply.surface_m),
        Block("vessel-pressure", (gas - plant.supply.gas_bar) * BAR / one.weight),
        Block("suction-line", one.drop("suction-line")),
        *(_discharge(one) if one.layout.attached else (Block("jet", one.drop("end")),)),
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
