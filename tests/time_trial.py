"""What is asked of any plant whatever while time runs, with anything of the catalogue happening to it.

`python3 pysrc/loadfirst_dev trial --clock` runs as many as one likes;
`tests/clock/test_random_plants.py` asks the same of some dozens. Every plant starts in its
balance, then a hand switches it and one cause of the catalogue happens, twice; an hour goes by.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite
from typing import Any

import msgspec
from tests.any_key import Data
from tests.clocks import ACCOUNTS, everything
from tests.strategies import Chooser, Dice, any_data, legal
from tests.trial import as_file

from loadfirst.causes.catalogue import CAUSES
from loadfirst.clock.begin import begin
from loadfirst.clock.look import look, now
from loadfirst.clock.moment import Moment
from loadfirst.clock.run import Run, run
from loadfirst.errors import InputError
from loadfirst.instruments.panel import readings
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.pumps import ResolvedPlant

HOUR = 3600.0
LAST_DIGITS = 1e-13
"""Of all that has moved: what the balance may be off. [-]"""
BRIM = 1e-12
"""Of a vessel's room: what it may hold more, by round-off. [-]"""


def timed(choose: Chooser, data: Data) -> Data:
    """The plant with keys of time anywhere in a wide range, the ends of some included."""
    return apply_edits(
        data,
        {
            "supply.area_m2": 10 ** choose.number(-1, 3),
            "supply.inflow_m3h": choose.pick((0.0, 10 ** choose.number(-2, 3))),
            "delivery.area_m2": 10 ** choose.number(-1, 3),
            "delivery.draw_m3h": choose.pick((0.0, 10 ** choose.number(-2, 3))),
            "valve.stroke_s": 10 ** choose.number(0, 3),
            "drive.start": choose.pick(("direct", "ramp")),
            "drive.ramp_s": 10 ** choose.number(-1, 2),
            "drive.inertia_kgm2": choose.pick((None, None, 10 ** choose.number(-2, 2))),
            "gauges.discharge.fault.damping_s": choose.pick((0.0, 10 ** choose.number(-1, 2))),
        },
    )


def switched(choose: Chooser) -> dict[str, Any]:
    """What a hand does: pump, valve or drive."""
    return choose.pick(
        (
            {"pump.running": choose.pick((True, False))},
            {"valve.opening": choose.pick((0.0, 1.0, choose.number(0, 1)))},
            {"drive.frequency_hz": choose.number(20, 50)},
            {},
        )
    )


def happened(choose: Chooser, data: Data) -> tuple[str, Data]:
    """One cause of the catalogue at any size that the plant has room for, and its id."""
    one, plant = choose.pick(CAUSES), legal(data)
    if one.applies(plant) is not None:
        return "", data
    low, high = one.sizes(plant)
    after = apply_edits(data, one.edits(plant, choose.number(low, high) if one.size else 1.0))
    try:
        legal(after)
    except InputError:
        return "", data
    return one.id, after


def course(choose: Chooser, data: Data) -> Iterator[tuple[str, Data, float]]:
    """What happens, the plant from then on, and for how long it runs. [s]"""
    span = 10 ** choose.number(-2, 2)
    yield "as it is", data, span
    left = HOUR - span
    for last in (False, True):
        try:
            after = apply_edits(data, switched(choose))
            legal(after)
        except InputError:
            after = data
        name, data = happened(choose, after)
        span = left if last else min(left, 10 ** choose.number(-2, 3))
        yield name or "a hand", data, span
        left -= span


def wrong(one: ResolvedPlant, before: Moment, ran: Run) -> Iterator[str]:
    """Everything that is wrong with a run; nothing is, unless there is a mistake somewhere."""
    moment, plant = ran.moment, one.plant
    moved = max(abs(getattr(moment, name)[0]) for name in ACCOUNTS)
    most = max(moved, moment.supply.volume[0], moment.delivery.volume[0], 1.0)
    off = abs(everything(moment) - everything(before))
    if not off <= LAST_DIGITS * most:
        yield f"{off:.3g} m³ are lost or made"
    for name, vessel, stock in (
        ("supply", plant.supply, moment.supply),
        ("delivery", plant.delivery, moment.delivery),
    ):
        room = vessel.area_m2 * (vessel.top_m - vessel.bottom_m)
        if not 0 <= stock.volume[0] <= room * (1 + BRIM):
            yield f"{name} holds {stock.volume[0]} of {room} m³"
    numbers = {**moment.flows, **moment.pointers, "time": moment.time[0], "stem": moment.stem}
    numbers |= {f"shaft {k + 1}": shaft.speed for k, shaft in enumerate(moment.shafts)}
    yield from (f"{name} is {value}" for name, value in numbers.items() if not isfinite(value))
    state = look(ran)
    if not state.converged:
        yield f"no balance was found: {state.why}"
    readings(state, now(ran).plant, pointers=moment.pointers)
    if msgspec.json.decode(msgspec.json.encode(moment), type=Moment) != moment:
        yield "the moment does not come back from its message"


def troubles(seed: int) -> list[str]:
    """A random plant's hour: what goes wrong, with the plant as a file; the same for the same seed."""
    choose = Dice(seed)
    data = timed(choose, any_data(choose))
    moment: Moment | None = None
    told: list[str] = []
    for name, rig, span in course(choose, data):
        told.append(f"{name}, {span:g} s")
        try:
            one = legal(rig)
            moment = begin(one) if moment is None else moment
            ran = run(one, moment, span)
            why = list(wrong(one, moment, ran))
        except Exception as trouble:  # whatever it is, it is what was looked for
            why = [f"{type(trouble).__name__}: {trouble}"]
        if why:
            return [as_file(rig, [f"clock, seed {seed}: {'; '.join(told)}", *why])]
        moment = ran.moment
    return []
