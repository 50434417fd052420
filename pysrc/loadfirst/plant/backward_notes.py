"""Notes on a pump whose motor turns the wrong way, and that therefore pumps backward."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import UNSET

from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import Machine, Note
from loadfirst.plant.backward import starved
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.velocity import suction_velocity_head


def backward_notes(one: OnePlant, machine: Machine, place: int) -> Iterator[Note]:
    """That it does, which side has its pressure, and whether anything comes to it.

    The suction side was never meant to bear that pressure, and the relief valve stands on the other.
    """
    yield Note("pumps-backward", machine.name, {"flow": machine.flow})
    suction = one.head("suction")
    if machine.pressure_limit is not UNSET and suction is not None:
        above = suction - one.plant.pump.centre_m - suction_velocity_head(one)
        facts = {"pressure": one.weight * above, "limit": machine.pressure_limit}
        yield Note("relief-behind", machine.name, facts)
    if machine.flow == 0 and machine.pressure_limit is UNSET:
        yield Note("dead-headed", machine.name, {"head": -machine.head, "shaft_power": machine.shaft_power})
    if starved(one.built, place, one.row):
        vapour = one.liquid.vapour_pressure - air_pressure(one.plant)
        yield Note("nothing-comes", machine.name, {"flow": machine.flow, "pressure": vapour})
