"""From a plant's pumps, motors and liquid to the laws of its machines."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.displacement_pump import DisplacementPump
from loadfirst.physics.law import Array
from loadfirst.physics.liquids import Liquid
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.plant.plant import Curve, Displacement, Pump
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.units import BAR, HOUR, PERCENT, RPM, TO_SI

CM3, KW, MPAS = TO_SI["cm3"], TO_SI["kw"], TO_SI["mpas"]

MachineLaw = Machines | DisplacementMachines


class Service(NamedTuple):
    """What makes one machine differ from another."""

    pump: Pump
    rated_power: float
    poles: int
    gear_ratio: float
    supply_frequency: float
    frequency: float
    density: float
    viscosity: float


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
        )
        for pump, power in zip(one.pumps, powers, strict=True)
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
    pumps = [[service.pump for service in row] for row in rows]
    if law_of(pumps[0][0]) == "pumps":
        curves = [[pump_curve(pump) for pump in row if isinstance(pump, Curve)] for row in pumps]
        return Machines.build(curves, geared, each("density"))
    rated = [[rated_pump(pump) for pump in row if isinstance(pump, Displacement)] for row in pumps]
    return DisplacementMachines.build(rated, geared, each("density"), each("viscosity"))


@lru_cache(maxsize=64)
def pump_curve(curve: Curve) -> PumpCurve:
    """A centrifugal pump's points in SI."""

    def numbers(values: tuple[float, ...] | None, factor: float) -> Array | None:
        return None if values is None else np.array(values) * factor

    return PumpCurve.from_points(
        curve.speed_rpm * RPM,
        np.array(curve.flow_m3h) / HOUR,
        np.array(curve.head_m),
        np.array(curve.npshr_m),
        efficiency=numbers(curve.efficiency_percent, PERCENT),
        power=numbers(curve.power_kw, KW),
        density=curve.density_kgm3,
    )


@lru_cache(maxsize=64)
def rated_pump(pump: Displacement) -> DisplacementPump:
    """A displacement pump's rated point in SI."""
    return DisplacementPump(
        kind=pump.kind,
        displacement=pump.displacement_cm3 * CM3,
        speed=pump.speed_rpm * RPM,
        pressure=pump.pressure_bar * BAR,
        viscosity=pump.viscosity_mpas * MPAS,
        density=pump.density_kgm3,
        volumetric_efficiency=pump.volumetric_percent * PERCENT,
        mechanical_efficiency=pump.mechanical_percent * PERCENT,
        npsh_required=pump.npshr_m,
        pressure_limit=(pump.limit_bar or pump.pressure_bar) * BAR,
    )
