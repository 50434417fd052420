"""The shaft of a pump: how fast its motor's field would turn it, and what resists a change of its speed."""

from __future__ import annotations

from math import pi

from loadfirst.physics.inertia import motor_inertia, pump_inertia
from loadfirst.plant.drives import ratio
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.services import gear_ratio


def field_speed(resolved: ResolvedPlant, number: int) -> float:
    """Speed of a pump's shaft without slip, on the supply's frequency. [rad/s]"""
    drive = resolved.plant.drive
    return 4 * pi * drive.supply_hz / drive.poles / gear_ratio(resolved.pumps[number]) * ratio(drive)


def inertia(resolved: ResolvedPlant, number: int, power: float) -> float:
    """Of pump and motor at the pump's shaft: the plant's, or typical of the motor's power. [W] -> [kg·m²]"""
    given = resolved.plant.drive.inertia_kgm2
    if given is not None:
        return given
    speed = field_speed(resolved, number)
    faster = gear_ratio(resolved.pumps[number]) / ratio(resolved.plant.drive)
    return float(pump_inertia(power, speed) + motor_inertia(power, speed * faster) * faster**2)
