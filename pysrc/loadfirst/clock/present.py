"""The plant as it stands at a moment: levels, stem, frequencies and speeds in place of the file's."""

from __future__ import annotations

from collections.abc import Sequence
from math import pi

from msgspec.structs import replace

from loadfirst.clock.moment import Moment, Shaft
from loadfirst.clock.vessel import surface
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant, Turning
from loadfirst.plant.shaft import field_speed
from loadfirst.plant.solved import OnePlant
from loadfirst.units import HOUR, TO_SI

LEAST_SPEED = 0.02
"""Speed below which a shaft that is not driven counts as standing, of the field's on the supply. [-]"""


def present(
    resolved: ResolvedPlant,
    moment: Moment,
    volumes: tuple[float, float],
    stem: float,
    shafts: Sequence[Shaft],
) -> ResolvedPlant:
    """The plant with what the moment says in place of what its file says.

    Parameters
    ----------
    volumes : of supply and delivery. [m³]
    stem : of the control valve. [-]
    shafts : of its pumps; `moment`'s own where nothing has changed.
    """
    plant = resolved.plant
    supply = replace(plant.supply, surface_m=surface(plant.supply, volumes[0]))
    delivery = replace(plant.delivery, surface_m=surface(plant.delivery, volumes[1]))
    drives = [moment.primed and driven(resolved, number, shaft) for number, shaft in enumerate(shafts)]
    fed = shafts[0].frequency if shafts[0].regime != "standing" else plant.drive.frequency_hz
    before = [max(flow, 0.0) * HOUR for flow in moment.through]
    first, second = plant.pump, plant.pump.second
    if before:
        first, second = replace(first, history_m3h=before[0]), replace(second, history_m3h=before[-1])
    if len(drives) > 1:
        second = replace(second, running=drives[1])
    changed = replace(
        plant,
        supply=supply,
        delivery=delivery,
        pump=replace(first, running=drives[0], second=second),
        drive=replace(plant.drive, frequency_hz=fed),
        valve=replace(plant.valve, opening=stem),
        discharge=replace(plant.discharge, filled=min(filled(plant, moment.line[0]), 1.0)),
    )
    turning = tuple(
        Turning(shaft.frequency, shaft.speed if shaft.regime == "turning" else None) for shaft in shafts
    )
    return resolved._replace(plant=changed, turning=turning)


def through(one: OnePlant) -> tuple[float, ...]:
    """Flows through the pumps, where the curve of one droops. [m³/s]"""
    return tuple(map(one.exact_flow, one.layout.pumps)) if one.built.droops[one.row] else ()


def driven(resolved: ResolvedPlant, number: int, shaft: Shaft) -> bool:
    """Whether a pump works as a pump: its motor has it, or it turns by its inertia."""
    if shaft.regime == "turning":
        return shaft.speed > LEAST_SPEED * field_speed(resolved, number)
    return shaft.regime == "running"


def filled(plant: Plant, volume: float) -> float:
    """Share of the line that is full once that volume more has gone into it; 1 and more: all. [m³] -> [-]"""
    line = plant.discharge
    if line.filled >= 1:
        return 1.0
    whole = line.length_m * pi / 4 * (line.bore_mm * TO_SI["mm"]) ** 2
    return line.filled + volume / whole
