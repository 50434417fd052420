"""What each pump of a plant is put to: its motor, its liquid, its condition."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from loadfirst.physics.belt import Belted, Drives
from loadfirst.physics.law import Array
from loadfirst.physics.liquids import Liquid
from loadfirst.physics.motor import Motor
from loadfirst.plant import drives
from loadfirst.plant.plant import Curve, Pump
from loadfirst.plant.pumps import AS_DRIVEN, Condition, ResolvedPlant, conditions, turns_back
from loadfirst.units import PERCENT, TO_SI

KW = TO_SI["kw"]
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
    phases: int
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
                phases=drives.phases(drive),
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
        phases=each("phases"),
    )
    if any(service.held is not None for row in rows for service in row):
        free = np.array([[service.held is None for service in row] for row in rows])
        slip, phases = np.where(free, motor.rated_slip, 0.0), np.where(free, motor.phases, 3.0)
        motor = motor._replace(rated_slip=slip, phases=phases)
    slower = motor._replace(poles=motor.poles * each("gear_ratio"))  # and stronger, as with more poles
    if np.isfinite(each("tightness")).any():
        return Belted.of(slower, each("belt_ratio"), creep=each("creep"), grip=each("tightness"))
    return slower
