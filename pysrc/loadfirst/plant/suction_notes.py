"""What a person should know of a suction side: bubbles, too little NPSH, boiling, no liquid at all, a vortex.

Between what is required and twice that the pump makes bubbles, and no gauge shows it. Below, head
goes and the readings hunt. Each note carries the numbers that say whether less flow would cure it.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

import numpy as np
from msgspec import UNSET

from loadfirst.physics.cavitation import ENOUGH
from loadfirst.physics.machine import Machines
from loadfirst.physics.root import rising_root
from loadfirst.physics.vortex import required_submergence
from loadfirst.plant.answer import Machine, Note
from loadfirst.plant.npsh import in_place, own_head
from loadfirst.plant.npsh_marks import Axis, marks
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.told import Told
from loadfirst.units import TO_SI

MM = TO_SI["mm"]


def suction_notes(one: OnePlant, told: Told) -> Iterator[Note]:
    """All notes on the way from the supply's surface to the pumps' eyes."""
    yield from _vortex(one)
    if one.suction_dry:
        yield Note("suction-dry", "suction", {"missing": -one.npsh_at_rest})
        return
    most, flow = float(one.solved.most[one.row]), one.flow("suction-line")
    if isfinite(most) and 0 < most <= flow:
        yield Note("suction-boils", "suction", {"flow": flow})
    for number, machine in enumerate(told.machines):
        yield from _pump(one, told.machines, machine, number)
    yield from _not_counted(one)


def _pump(one: OnePlant, machines: tuple[Machine, ...], machine: Machine, number: int) -> Iterator[Note]:
    """What want of NPSH does to one pump."""
    available, required = machine.npsh_available, machine.npsh_required
    drawn = machine.flow if machine.backward is UNSET else -machine.flow
    law, _, column = one.running(number)
    if drawn < 0 or available is None or (drawn == 0 and not isinstance(law, Machines)):
        return
    if available < required:
        enough = _enough(one, machines, number, required)
        facts = {"available": available, "required": required, "enough": enough}
        if isinstance(law, Machines):
            plenty = -law.head_drop(one.solved.through(number))[0][one.row, column]
            facts["lost"] = float(plenty) - machine.head
        yield Note("npsh-short", machine.name, facts)
    elif drawn > 0 and isinstance(law, Machines) and available < ENOUGH * required:
        yield Note("bubbles", machine.name, {"available": available, "required": required})


def _enough(one: OnePlant, machines: tuple[Machine, ...], number: int, required: float) -> float:
    """The flow below which a pump would have enough; of the suction line where it gives none. [m³/s]"""
    alone, own = one.built.rows(np.array([one.row])), abs(machines[number].flow)
    if own > 0:
        axis = Axis.of(alone, number, tuple([each.flow for each in machines]))
        return marks(axis, own, np.inf).begins or 0.0
    axis, most = Axis(alone, number, (1.0, 0.0)), np.maximum([one.flow("suction-line")], 0.0)
    return float(rising_root(lambda flow: required - axis.available(flow), 0 * most, most)[0][0])


def _not_counted(one: OnePlant) -> Iterator[Note]:
    """Two pumps side by side that droop are answered with plenty of NPSH: how much head that is too much."""
    flow = one.flow("suction-line")
    if one.states is None or one.layout.side_by_side == 1 or flow <= 0:
        return
    alone = one.built.rows(np.array([one.row]))
    place = in_place(alone, np.array([flow]))
    lost = [0.0]
    for number, pump in enumerate(one.layout.pumps):
        at = np.array([one.exact_flow(pump)])
        left, plenty = (own_head(alone, laws, number, at)[0] for laws in (place.laws, alone.machines))
        lost.append(float(plenty - left))
    if max(lost) > 0:
        yield Note("npsh-not-counted", "station", {"lost": max(lost)})


def _vortex(one: OnePlant) -> Iterator[Note]:
    """Too little liquid above the mouth of the suction line: common practice, see `physics.vortex`."""
    plant, flow = one.plant, one.flow("suction-line")
    above = plant.supply.surface_m - one.mouth
    needed = float(required_submergence(flow, plant.suction.bore_mm * MM))
    if flow > 0 and above < needed:
        yield Note("vortex", "supply-outlet", {"above": above, "needed": needed})
