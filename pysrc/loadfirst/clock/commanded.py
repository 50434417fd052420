"""What a plant sets by itself while time runs: a controller's output, a drive at its current limit.

At each run they are sent to where the plant would settle with the levels of that moment
(`plant.automatic`), and get there at the pace of stem and ramp. A controller that swings, or
lags, is not followed.
"""

from __future__ import annotations

from msgspec.structs import replace

from loadfirst.clock.moment import Moment
from loadfirst.clock.vessel import surface
from loadfirst.plant.automatic import settled
from loadfirst.plant.pumps import ResolvedPlant


def commanded(resolved: ResolvedPlant, moment: Moment | None = None) -> ResolvedPlant:
    """The plant with valve and drive sent where it sends them by itself; most are given back as they are."""
    plant = resolved.plant
    here = plant
    if moment is not None:
        supply = replace(plant.supply, surface_m=surface(plant.supply, moment.supply.volume[0]))
        delivery = replace(plant.delivery, surface_m=surface(plant.delivery, moment.delivery.volume[0]))
        here = replace(plant, supply=supply, delivery=delivery)
    one = resolved._replace(plant=here)
    sent = settled([one])[0]
    if sent is one:
        return resolved
    valve = replace(plant.valve, opening=sent.plant.valve.opening)
    drive = replace(plant.drive, frequency_hz=sent.plant.drive.frequency_hz)
    return resolved._replace(plant=replace(plant, valve=valve, drive=drive), found=sent.found)
