"""From a plant's pumps, motors and liquid to the laws of its machines."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from loadfirst.physics.backward import Backward
from loadfirst.physics.belt import Belted, Drives
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
from loadfirst.physics.liquids import Liquid
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.physics.standing import (
    BACKWARD,
    FORWARD,
    TURNS_BACKWARD,
    TURNS_FORWARD,
    StandingPumps,
)
from loadfirst.plant import drives
from loadfirst.plant.plant import Curve, Displacement, Pump
from loadfirst.plant.points import pump_curve, rated_pump
from loadfirst.plant.pumps import AS_DRIVEN, SOUND, Condition, ResolvedPlant, conditions, turns_back
from loadfirst.units import PERCENT, TO_SI, G

CM3, KW, MPAS = TO_SI["cm3"], TO_SI["kw"], TO_SI["mpas"]

MachineLaw = Machines | DisplacementMachines | StandingPumps | Backward
BACK = "-backward"


class Service(NamedTuple):
    """What makes one machine differ from another: itself, its motor, its liquid, its condition.

    `thick` is the kinematic viscosity that the pump's points do not know of; 0 for water. [m²/s]
    `held` is a speed at which the shaft is held, whatever its motor; None: as the motor holds it. [rad/s]
    """

    pump: Pump
    rated_power: float
    poles: int
    gear_ratio: float
    supply_frequency: float
    frequency: float
    relative_voltage: float
    efficiency: float
    belt_ratio: float
    creep: float
    tightness: float
    density: float
    viscosity: float
    thick: float
    gas: float
    condition: Condition
    held: float | None = None


def law_of(pump: Pump, has: Condition) -> str:
    """Name of the law that a pump obeys."""
    if not has.running:
        return "standing"
    law = "pumps" if isinstance(pump, Curve) else "displacement"
    return law + BACK if turns_back(pump, has) else law


def gear_ratio(pump: Pump) -> float:
    """Turns of the motor for one of the pump; a gearbox is taken as without loss."""
    return 1.0 if isinstance(pump, Curve) else pump.gear_ratio


def services(one: ResolvedPlant, liquid: Liquid) -> tuple[Service, ...]:
    """What each pump of a plant is put to, in their order."""
    drive, turning = one.plant.drive, one.turning or (AS_DRIVEN,) * len(one.pumps)
    powers = [(drive.motor_kw or one.curve.motor_kw) * KW]
    if len(one.pumps) > 1:
        powers.append(_second_power(one) or powers[0])
    return tuple(
        _turned(
            Service(
                pump=pump,
                rated_power=power,
                poles=drive.poles,
                gear_ratio=gear_ratio(pump),
                supply_frequency=float(drive.supply_hz),
                frequency=turns.frequency or drives.frequency(drive),
                relative_voltage=drives.relative_voltage(drive),
                efficiency=drives.efficiency(power, drive.poles, drive.efficiency_class, drive.supply_hz),
                belt_ratio=drives.ratio(drive),
                creep=drives.creep(drive),
                tightness=drives.tightness(drive),
                density=liquid.density,
                viscosity=liquid.viscosity,
                thick=0.0 if liquid.name == "water" else liquid.kinematic,
                gas=0.0 if turns_back(pump, has) else one.plant.suction.gas_percent * PERCENT,
                condition=has,
            ),
            turns.held,
        )
        for pump, power, has, turns in zip(one.pumps, powers, conditions(one.plant), turning, strict=False)
    )


def _turned(service: Service, speed: float | None) -> Service:
    """A shaft held at a speed [rad/s] is as one on a motor without slip whose field turns at that speed."""
    if speed is None:
        return service
    frequency = speed * service.poles * service.gear_ratio / (4 * np.pi)
    return service._replace(held=speed, frequency=frequency, belt_ratio=1.0, creep=0.0, tightness=np.inf)


def _second_power(one: ResolvedPlant) -> float | None:
    """Its own motor's, or that which comes with another model. [W]"""
    kw = one.plant.pump.second.motor_kw or (one.second and one.second.motor_kw)
    return kw * KW if kw else None


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


def motors(rows: Sequence[tuple[Service, ...]]) -> Drives:
    """The motors of M machines in B plants, with their belts, as their pumps' shafts know them."""

    def each(name: str) -> Array:
        return np.array([[getattr(service, name) for service in row] for row in rows])

    motor = Motor.rated(
        each("rated_power"),
        poles=each("poles"),
        supply_frequency=each("supply_frequency"),
        frequency=each("frequency"),
        efficiency=each("efficiency"),
        relative_voltage=each("relative_voltage"),
    )
    if any(service.held is not None for row in rows for service in row):
        free = np.array([[service.held is None for service in row] for row in rows])
        motor = motor._replace(rated_slip=np.where(free, motor.rated_slip, 0.0))
    slower = motor._replace(poles=motor.poles * each("gear_ratio"))  # and stronger, as with more poles
    if np.isfinite(each("tightness")).any():
        return Belted.of(slower, each("belt_ratio"), creep=each("creep"), grip=each("tightness"))
    return slower


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
