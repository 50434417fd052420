"""From a plant's pumps, motors and liquid to the laws of its machines."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes.apply import Changes, apply
from loadfirst.physics.changes.blocked import MOST as MOST_BLOCKED
from loadfirst.physics.changes.outside import Outside
from loadfirst.physics.changes.rotation import USUAL
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.displacement_pump import worn_clearance
from loadfirst.physics.drive import synchronous_speed
from loadfirst.physics.law import Array
from loadfirst.physics.liquids import Liquid
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.plant.plant import Curve, Displacement, Pump
from loadfirst.plant.points import pump_curve, rated_pump
from loadfirst.plant.pumps import SOUND, Condition, ResolvedPlant, conditions
from loadfirst.units import PERCENT, TO_SI

CM3, KW, MPAS = TO_SI["cm3"], TO_SI["kw"], TO_SI["mpas"]

MachineLaw = Machines | DisplacementMachines


class Service(NamedTuple):
    """What makes one machine differ from another: itself, its motor, its liquid, its condition.

    `thick` is the kinematic viscosity that the pump's points do not know of; 0 for water. [m²/s]
    """

    pump: Pump
    rated_power: float
    poles: int
    gear_ratio: float
    supply_frequency: float
    frequency: float
    density: float
    viscosity: float
    thick: float
    gas: float
    condition: Condition


def law_of(pump: Pump) -> str:
    """Name of the law that a pump obeys."""
    return "pumps" if isinstance(pump, Curve) else "displacement"


def gear_ratio(pump: Pump) -> float:
    """Turns of the motor for one of the pump; a gearbox is taken as without loss."""
    return 1.0 if isinstance(pump, Curve) else pump.gear_ratio


def services(one: ResolvedPlant, liquid: Liquid) -> tuple[Service, ...]:
    """What each pump of a plant is put to, in their order."""
    drive = one.plant.drive
    powers = [(drive.motor_kw or one.curve.motor_kw) * KW]
    if len(one.pumps) > 1:
        powers.append(_second_power(one) or powers[0])
    return tuple(
        Service(
            pump=pump,
            rated_power=power,
            poles=drive.poles,
            gear_ratio=gear_ratio(pump),
            supply_frequency=float(drive.supply_hz),
            frequency=drive.frequency_hz or float(drive.supply_hz),
            density=liquid.density,
            viscosity=liquid.viscosity,
            thick=0.0 if liquid.name == "water" else liquid.kinematic,
            gas=one.plant.suction.gas_percent * PERCENT,
            condition=has,
        )
        for pump, power, has in zip(one.pumps, powers, conditions(one.plant), strict=False)
    )


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

    motor = Motor.rated(
        each("rated_power"),
        poles=each("poles"),
        supply_frequency=each("supply_frequency"),
        frequency=each("frequency"),
    )
    geared = motor._replace(poles=motor.poles * each("gear_ratio"))  # slower and stronger, as with more poles
    if law_of(rows[0][0].pump) == "pumps":
        return Machines.build([[changed(one)[0] for one in row] for row in rows], geared, each("density"))
    return DisplacementMachines.build(
        [[rated_pump(one.pump) for one in row if isinstance(one.pump, Displacement)] for row in rows],
        geared,
        each("density"),
        each("viscosity"),
        clearance=np.array([[_clearance(one) for one in row] for row in rows]),
        gas=each("gas"),
    )


def changed(service: Service) -> tuple[PumpCurve, tuple[Outside, ...]]:
    """A centrifugal pump as it has become, and where the rules for that do not reach."""
    assert isinstance(service.pump, Curve)
    if service.condition == SOUND and not service.thick and not service.gas:
        return pump_curve(service.pump), ()
    speed = float(synchronous_speed(service.frequency, service.poles))
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
