"""Random plants run for an hour of plant time, and are switched on the way.

`LOADFIRST_PLANTS=20000` runs as many as a two-hundredth of that.
"""

from __future__ import annotations

import os
from math import isfinite

import msgspec
import pytest
from tests.clocks import ACCOUNTS, everything
from tests.strategies import Chooser, Dice, ResolvedPlant, random_plants

from loadfirst.clock.begin import begin
from loadfirst.clock.look import look
from loadfirst.clock.moment import Moment
from loadfirst.clock.run import Run, run

COUNT = max(int(os.environ.get("LOADFIRST_PLANTS", "3000")) // 200, 10)
HOUR = 3600.0
LAST_DIGITS = 1e-13
"""Of all that has moved: what the balance may be off. [-]"""


def timed(choose: Chooser, one: ResolvedPlant) -> ResolvedPlant:
    """The plant with keys of time anywhere in a wide range, the ends of some included."""
    plant = one.plant
    supply = msgspec.structs.replace(
        plant.supply,
        area_m2=10 ** choose.number(-1, 3),
        inflow_m3h=choose.pick((0.0, 10 ** choose.number(-2, 3))),
    )
    delivery = msgspec.structs.replace(
        plant.delivery,
        area_m2=10 ** choose.number(-1, 3),
        draw_m3h=choose.pick((0.0, 10 ** choose.number(-2, 3))),
    )
    valve = msgspec.structs.replace(plant.valve, stroke_s=10 ** choose.number(0, 3))
    drive = msgspec.structs.replace(
        plant.drive,
        start=choose.pick(("direct", "ramp")),
        ramp_s=10 ** choose.number(-1, 2),
        inertia_kgm2=choose.pick((None, None, 10 ** choose.number(-2, 2))),
    )
    changed = msgspec.structs.replace(plant, supply=supply, delivery=delivery, valve=valve, drive=drive)
    return one._replace(plant=changed)


def switched(choose: Chooser, one: ResolvedPlant) -> ResolvedPlant:
    """The plant after a hand has been there: pump, valve or drive."""
    plant = one.plant
    pump = msgspec.structs.replace(plant.pump, running=choose.pick((True, False)))
    valve = msgspec.structs.replace(plant.valve, opening=choose.pick((0.0, 1.0, choose.number(0, 1))))
    drive = msgspec.structs.replace(plant.drive, frequency_hz=choose.number(20, 50))
    return one._replace(plant=msgspec.structs.replace(plant, pump=pump, valve=valve, drive=drive))


def check(one: ResolvedPlant, before: Moment, ran: Run) -> None:
    """Finite, balanced, and no vessel with less than nothing or more than it holds."""
    moment, plant = ran.moment, one.plant
    moved = max(abs(getattr(moment, name)[0]) for name in ACCOUNTS)
    most = max(moved, moment.supply.volume[0], moment.delivery.volume[0], 1.0)
    assert abs(everything(moment) - everything(before)) <= LAST_DIGITS * most
    for vessel, stock in ((plant.supply, moment.supply), (plant.delivery, moment.delivery)):
        room = vessel.area_m2 * (vessel.top_m - vessel.bottom_m)
        assert 0 <= stock.volume[0] <= room * (1 + 1e-12)
    numbers = [*moment.flows.values(), *(shaft.speed for shaft in moment.shafts), *moment.time, moment.stem]
    assert all(isfinite(number) for number in numbers)
    state = look(ran)
    assert state.converged
    told = msgspec.json.decode(msgspec.json.encode(moment), type=Moment)
    assert told == moment


@pytest.mark.native
def test_plants_run_for_an_hour() -> None:
    """As the file has them, at one ask."""
    choose = Dice(31)
    for one in random_plants(41, COUNT):
        plant = timed(choose, one)
        moment = begin(plant)
        check(plant, moment, run(plant, moment, HOUR))


@pytest.mark.native
def test_plants_are_switched_while_time_runs() -> None:
    """In steps of any size, from a frame to minutes."""
    choose = Dice(32)
    for one in random_plants(42, COUNT):
        plant = timed(choose, one)
        moment = begin(plant)
        for _ in range(3):
            plant = switched(choose, plant)
            ran = run(plant, moment, 10 ** choose.number(-2, 2))
            check(plant, moment, ran)
            moment = ran.moment
