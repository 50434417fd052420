"""What a gauge misses: the velocity head at its tapping, and the pressure that is left."""

from __future__ import annotations

from loadfirst.physics.pipe import velocity_head
from loadfirst.plant.solved import OnePlant
from loadfirst.units import TO_SI

MM = TO_SI["mm"]


def suction_velocity_head(one: OnePlant) -> float:
    """v²/2g in the suction line. [m]"""
    return float(velocity_head(one.flow("suction-line"), one.plant.suction.bore_mm * MM))


def discharge_velocity_head(one: OnePlant) -> float:
    """v²/2g in the discharge line, or in the bore of the open outlet. [m]"""
    last = "discharge-line" if one.layout.attached else "end"
    return float(velocity_head(one.flow(last), one.plant.discharge.bore_mm * MM))


def static_pressure(one: OnePlant, head: float | None, height: float, velocity: float) -> float | None:
    """Gauge pressure ρg (head - height - v²/2g); None where the head is undefined. [Pa]"""
    return None if head is None else one.weight * (head - height - velocity)
