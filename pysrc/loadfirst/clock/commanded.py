"""What a plant sets by itself while time runs, apart from its controller: a drive at its current limit.

At each run the drive is sent to the frequency that the limit would leave at rest with the levels of that
moment (`plant.automatic`), and gets there at the pace of its ramp. Controllers: `clock.controller`.
"""

from __future__ import annotations

from msgspec.structs import replace

from loadfirst.clock.controller import loop_of
from loadfirst.clock.moment import Moment
from loadfirst.clock.vessel import surface
from loadfirst.plant.automatic import acts, frequency_of, output_hz, settled
from loadfirst.plant.found import Found
from loadfirst.plant.pumps import ResolvedPlant


def limited(resolved: ResolvedPlant, moment: Moment) -> tuple[ResolvedPlant, float | None]:
    """The plant with the frequency that its current limit leaves; that frequency where it cuts one. [Hz]

    A controller on the drive is left as it is: it may go up to there.
    """
    plant = resolved.plant
    if plant.drive.current_limit_percent is None:
        return resolved, None
    steers = acts(plant) and plant.control.on == "drive"
    asked = output_hz(plant, loop_of(plant).high) if steers else frequency_of(plant)
    supply = replace(plant.supply, surface_m=surface(plant.supply, moment.supply.volume[0]))
    delivery = replace(plant.delivery, surface_m=surface(plant.delivery, moment.delivery.volume[0]))
    here = replace(
        plant,
        supply=supply,
        delivery=delivery,
        control=replace(plant.control, mode="manual"),
        drive=replace(plant.drive, frequency_hz=asked),
        valve=replace(plant.valve, opening=moment.stem),
    )
    found = settled([resolved._replace(plant=here, found=None)])[0]
    left = frequency_of(found.plant)
    if found.found is None or not left < asked:
        return resolved, None
    if steers:
        return resolved, left
    drive = replace(plant.drive, frequency_hz=left)
    cut = Found(found.found.moved, asked=found.found.asked, overloaded=found.found.overloaded)
    return resolved._replace(plant=replace(plant, drive=drive), found=cut), left
