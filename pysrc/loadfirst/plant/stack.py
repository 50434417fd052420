"""What the load asks for, block by block, and the balance that two gauges would give.

The blocks add up to the pumps' own head, because each is a drop or a difference
along one way through the network. A check valve that holds takes what the pumps
lack upon itself; where the liquid does not get to an open end, that much of the
lift is not reached. Where nothing flows nothing is lost: the trifles that the
leakage of a shut element's steep line would lose elsewhere go to what holds. Two
shut elements in a row share what is left nobody knows how: no number stands there.
"""

from __future__ import annotations

from typing import get_args

from loadfirst.plant.answer import Balance, Block, BlockName, Machine, Station
from loadfirst.plant.elements.check_valve import check_drop
from loadfirst.plant.elements.section import Loss
from loadfirst.plant.heights import far_gas_bar, far_height
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.velocity import discharge_velocity_head, suction_velocity_head
from loadfirst.units import BAR

TRIFLE = 1e-3
"""Of what holds: a loss by leakage alone is far less. [-]"""

ORDER: tuple[BlockName, ...] = get_args(BlockName)
"""In which the blocks are stacked."""


def own_head(one: OnePlant, machines: tuple[Machine, ...]) -> float:
    """What the pumps themselves add: in line together, side by side each, see `OnePlant.shares`. [m]"""
    return sum(share * machine.head for share, machine in zip(one.shares, machines, strict=True))


def static_head(one: OnePlant) -> float:
    """Head that the load asks before anything flows: lift and pressures. [m]"""
    return sum(loss.head for loss in _static(one))


def stack(one: OnePlant, head: float) -> tuple[Block, ...]:
    """Blocks of the load's head, from the supply's surface to the far end.

    Parameters
    ----------
    head : the pumps' own. [m]
    """
    found = [loss for section in one.layout.sections for loss in section.losses(one)]
    losses = tuple(sorted(_together(found), key=lambda loss: ORDER.index(loss.block)))
    holding = [loss.block for loss in losses if loss.shut] if not one.flow("end") else []
    if not one.flow("suction-line") and not any(map(one.flow, one.layout.aside)):
        losses = _at_rest(losses)
    unknown = holding if len(holding) > 1 and any(map(one.trapped, one.layout.way)) else ()
    blocks = (*_static(one), *losses)
    return tuple(Block(loss.block, None if loss.block in unknown else loss.head) for loss in blocks)


def _together(losses: list[Loss]) -> list[Loss]:
    """One block for what two sections lose in the same way: pipe before and beyond a summit."""
    whole: dict[str, Loss] = {}
    for loss in losses:
        before = whole.get(loss.block)
        both = loss if before is None else Loss(loss.block, before.head + loss.head, before.shut or loss.shut)
        whole[loss.block] = both
    return list(whole.values())


def _static(one: OnePlant) -> tuple[Loss, Loss]:
    plant = one.plant
    return (
        Loss("lift", far_height(plant) - plant.supply.surface_m),
        Loss("vessel-pressure", (far_gas_bar(plant) - plant.supply.gas_bar) * BAR / one.weight),
    )


def _at_rest(losses: tuple[Loss, ...]) -> tuple[Loss, ...]:
    """The same, and the same in all, with the trifles given to the greatest."""
    greatest = max(losses, key=lambda loss: abs(loss.head))
    trifles = [loss for loss in losses if abs(loss.head) < TRIFLE * abs(greatest.head)]
    whole = greatest.head + sum(loss.head for loss in trifles)
    return tuple(
        loss._replace(head=whole if loss is greatest else 0.0 if loss in trifles else loss.head)
        for loss in losses
    )


def balance(one: OnePlant, station: Station) -> Balance:
    """The pumps' head from pressures, heights and speeds at the two gauges.

    Both gauges are tapped at the pumps' centre; the bores are those of the lines.
    The check valves of two pumps stand between them.
    """
    slow, fast, centre = suction_velocity_head(one), discharge_velocity_head(one), one.plant.pump.centre_m
    if station.suction_head is None or station.discharge_head is None or one.suction_dry:
        return Balance(None, 0.0, fast - slow, None, station.head)
    before = one.weight * (station.suction_head - centre - slow)
    after = one.weight * (station.discharge_head - centre - fast)
    between = 0.0 if one.layout.check_in_load else check_drop(one)
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
