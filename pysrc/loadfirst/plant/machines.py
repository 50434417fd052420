"""From what pumps are put to (`plant.services`) to the laws that they obey."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from loadfirst.physics.backward import Backward
from loadfirst.physics.centrifugal import PumpCurve, levelled
from loadfirst.physics.changes.apply import Changes, apply
from loadfirst.physics.changes.blocked import MOST as MOST_BLOCKED
from loadfirst.physics.changes.outside import Outside
from loadfirst.physics.changes.rotation import USUAL
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.displacement_curve import curves, stack
from loadfirst.physics.displacement_pump import worn_clearance
from loadfirst.physics.drive import synchronous_speed
from loadfirst.physics.law import Array
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.physics.standing import (
    BACKWARD,
    FORWARD,
    TURNS_BACKWARD,
    TURNS_FORWARD,
    StandingPumps,
)
from loadfirst.plant.plant import Curve, Displacement
from loadfirst.plant.points import pump_curve, rated_pump
from loadfirst.plant.pumps import SOUND, Condition
from loadfirst.plant.services import BACK, Service, law_of, motors
from loadfirst.units import PERCENT, G

MachineLaw = Machines | DisplacementMachines | StandingPumps | Backward


def machines(rows: Sequence[tuple[Service, ...]]) -> MachineLaw:
    """The law of M machines of one kind in B plants; a single row where all plants have the same."""
    rows = tuple(rows)
    return _machines(rows[:1] if len(set(rows)) == 1 else rows)


@lru_cache(maxsize=16)
def _machines(rows: tuple[tuple[Service, ...], ...]) -> MachineLaw:
    """The same pumps are asked for again and again while a valve is being turned."""

    def each(name: str) -> Array:
        return np.array([[getattr(service, name) for service in row] for row in rows])

    geared = motors(rows)
    law = law_of(rows[0][0].pump, rows[0][0].condition)
    if law == "standing":
        numbers = np.array([[_at_rest(one) for one in row] for row in rows])
        return StandingPumps(geared, *np.moveaxis(numbers, -1, 0))
    back = law.endswith(BACK)
    if law.startswith("pumps"):
        pumps = [[changed(one)[0] for one in row] for row in rows]
        if back:
            pumps = [[levelled(pump) for pump in row] for row in pumps]
        running = Machines.build(pumps, geared, each("density"))
        return Backward(running) if back else running
    displacing = DisplacementMachines.build(
        [[rated_pump(one.pump) for one in row if isinstance(one.pump, Displacement)] for row in rows],
        geared,
        each("density"),
        each("viscosity"),
        clearance=np.array([[_clearance(one) for one in row] for row in rows]),
        gas=each("gas"),
    )
    return Backward(displacing) if back else displacing


class AtRest(NamedTuple):
    """Numbers of `StandingPumps` for one pump, in their order."""

    straight: float
    forward: float
    backward: float
    turns_forward: float
    turns_backward: float
    head: float
    last: float
    usual: float


@lru_cache(maxsize=64)
def _at_rest(service: Service) -> AtRest:
    """A pump that stands: as its maker measured it, or as tight as its gaps are by now."""
    if isinstance(service.pump, Curve):
        pump = pump_curve(service.pump)
        best, head = pump.best_efficiency_flow, pump.best_efficiency_head
        turns = pump.speed / best
        return AtRest(
            0.0,
            FORWARD * head / best**2,
            BACKWARD * head / best**2,
            TURNS_FORWARD * turns,
            TURNS_BACKWARD * turns,
            pump.shut_off_head,
            pump.last_flow,
            best,
        )
    rated, motor = stack([[rated_pump(service.pump)]]), Motor.rated(service.rated_power)
    numbers = (service.density, service.viscosity, _clearance(service), 0.0)
    gaps = curves(rated, motor, *(np.full((1, 1), number) for number in numbers))
    laminar, bent = gaps.table[int(gaps.start[0, 0]), 4:6].tolist()
    head = float(rated.pressure_limit[0, 0]) / (service.density * G)
    flow = float(rated.rated_flow[0, 0])
    return AtRest(laminar, bent, bent, 0.0, 0.0, head, flow, flow)


def changed(service: Service) -> tuple[PumpCurve, tuple[Outside, ...]]:
    """A centrifugal pump as it has become, and where the rules for that do not reach."""
    assert isinstance(service.pump, Curve)
    if service.condition == SOUND and not service.thick and not service.gas:
        return pump_curve(service.pump), ()
    speed = float(synchronous_speed(service.frequency, service.poles)) * service.belt_ratio
    return _changed(service.pump, service.condition, service.thick, speed, service.gas)


@lru_cache(maxsize=256)
def _changed(
    pump: Curve, has: Condition, thick: float, speed: float, gas: float
) -> tuple[PumpCurve, tuple[Outside, ...]]:
    """The speed is the field's: slip would change the parameter of viscosity by a hundredth (our choice)."""
    blocked = has.blocked_percent * PERCENT
    changes = Changes(
        diameter=has.trim_percent * PERCENT,
        blocked=blocked if blocked <= MOST_BLOCKED else 1.0,
        wear=has.wear_percent * PERCENT,
        wrong_rotation=None if has.rotation == "right" else USUAL,
        viscosity=thick,
        speed=speed,
        gas=gas,
    )
    return apply(pump_curve(pump), changes)


def _clearance(service: Service) -> float:
    """Height of a displacement pump's gaps over that when new. [-]"""
    assert isinstance(service.pump, Displacement)
    return worn_clearance(rated_pump(service.pump), service.condition.wear_percent * PERCENT)
