"""Notes on each machine: what it does that its maker's curve, its motor or its casing was not made for."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import UNSET

from loadfirst.physics.backward import Backward
from loadfirst.physics.changes.outside import Outside
from loadfirst.physics.changes.viscosity import CENTISTOKE
from loadfirst.physics.machine import Machines
from loadfirst.physics.standing import StandingPumps
from loadfirst.plant.answer import Machine, Note
from loadfirst.plant.backward_notes import backward_notes
from loadfirst.plant.drive_notes import drive_notes
from loadfirst.plant.machines import changed
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.told import Told
from loadfirst.units import HOUR, RPM

LIMIT_UNITS = {"cSt": CENTISTOKE, "m³/h": 1 / HOUR}
"""Of the limits that rules have, in SI; others are in it already."""

FARTHEST = (0.5, 1.3)
"""Of the speed at which a pump was measured: the affinity laws hold less and less well outside.

Common practice. A drive that slows a 50 Hz pump down to half stays inside, and so does a 60 Hz supply;
a wrong number of poles does not, upward.
"""


def machine_notes(one: OnePlant, told: Told) -> Iterator[Note]:
    """All notes on all machines, in their order."""
    for place, machine in enumerate(told.machines):
        yield from _of_one(one, machine, place)


def _of_one(one: OnePlant, machine: Machine, place: int) -> Iterator[Note]:
    law, running, column = one.running(place)
    where = machine.name
    if isinstance(law, StandingPumps):
        yield _standing(machine)
        return
    service = one.built.services[one.row][place]
    if isinstance(law, Backward):
        yield from backward_notes(one, machine, place)
        law = law.turned
    if machine.flow == 0 and not isinstance(one.running(place)[0], Backward):
        yield Note("dead-headed", where, {"head": machine.head, "shaft_power": machine.shaft_power})
    if machine.flow < 0 and machine.backward is UNSET:
        yield Note("reverse-flow", where, {"flow": machine.flow})
    if isinstance(law, Machines):
        if running.beyond[one.row, column]:
            last = float(one.per_machine(law.last_flow)[column])
            yield Note("beyond-curve", where, {"flow": abs(machine.flow), "last_flow": last})
        yield from _other_speed(service.pump.speed_rpm * RPM, machine)
        if one.per_machine(law.limited)[column]:
            yield Note("held-level", where, {})
        yield from (_outside(where, limit) for limit in changed(service)[1])
    else:
        yield from _displacement_notes(machine)
    if machine.load > 1:
        facts = {"shaft_power": machine.shaft_power, "rated_power": machine.rated_power, "load": machine.load}
        yield Note("overload", where, facts)
    yield from drive_notes(one, machine, place)


def _standing(machine: Machine) -> Note:
    """A pump whose motor is off; one that turns backward must not be started."""
    facts = {"flow": machine.flow, "head": machine.head, "speed": machine.speed}
    backward = machine.flow < 0 and machine.speed < 0
    return Note("turning-backward" if backward else "standing", machine.name, facts)


def _outside(where: str, limit: Outside) -> Note:
    """A rule that is used outside what it was made for; `held` at the end of its range, or carried on."""
    unit = LIMIT_UNITS.get(limit.range.unit, 1.0)
    low, high = limit.range.low * unit, limit.range.high * unit
    facts = {"got": limit.got * unit, "low": low, "high": high, "held": float(limit.range.held)}
    return Note("outside-rule", where, facts, f"{limit.rule}.{limit.limit}")


def _displacement_notes(machine: Machine) -> Iterator[Note]:
    """What stops a displacement pump: only its motor, and that may be long after its casing."""
    assert machine.pressure is not UNSET and machine.pressure_limit is not UNSET
    if machine.stalled:
        yield Note("stalled", machine.name, {"torque": machine.torque, "speed": machine.speed})
    pressure = machine.pressure if machine.backward is UNSET else -machine.pressure
    if pressure > machine.pressure_limit:
        facts = {"pressure": pressure, "limit": machine.pressure_limit}
        yield Note("pressure-limit", machine.name, facts)


def _other_speed(measured: float, machine: Machine) -> Iterator[Note]:
    """A speed so far from that of the measured points that they tell little of it.

    Of a slow pump only where it delivers: without flow, that is what matters.
    """
    least, most = FARTHEST
    slow = machine.speed < least * measured and machine.flow > 0
    if slow or machine.speed > most * measured:
        yield Note("other-speed", machine.name, {"speed": machine.speed, "measured_speed": measured})
