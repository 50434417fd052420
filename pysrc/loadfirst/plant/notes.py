"""Typed notes on a state: what a person should know before believing a number.

There is one answer where the head that any element loses rises with its own
flow. A pump whose head would rise with the flow, by the slip of its motor, is
held level (`physics.machine_curve`); in truth it could run in more than one
state, and `held-level` says so. A pump whose own curve rises somewhere may have
several states (`plant.drooping`); `more-than-one-state` says how many.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import UNSET

from loadfirst.physics.backward import Backward
from loadfirst.physics.changes.outside import Outside
from loadfirst.physics.changes.viscosity import CENTISTOKE
from loadfirst.physics.machine import Machines
from loadfirst.physics.standing import StandingPumps
from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import Machine, Note, PathPoint
from loadfirst.plant.backward_notes import backward_notes
from loadfirst.plant.drive_notes import drive_notes
from loadfirst.plant.machines import changed
from loadfirst.plant.possible import possible_states
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.stack import own_head, static_head
from loadfirst.plant.suction_notes import suction_notes
from loadfirst.units import HOUR, RPM

UNSEEN = ("pipe-end", "after-branch-valve", "branch-pipe-end")
"""Nodes that no gauge is tapped at: a pressure that is undefined there is missed by nobody."""

LIMIT_UNITS = {"cSt": CENTISTOKE, "m³/h": 1 / HOUR}
"""Of the limits that rules have, in SI; others are in it already."""

SLIGHT = 1e-6
"""Round-off of a pressure, of air and vapour pressure. [-]"""

FARTHEST = (0.5, 1.3)
"""Of the speed at which a pump was measured: the affinity laws hold less and less well outside.

Common practice. A drive that slows a 50 Hz pump down to half stays inside, and so does a 60 Hz supply;
a wrong number of poles does not, upward.
"""


def notes(one: OnePlant, machines: tuple[Machine, ...], path: tuple[PathPoint, ...]) -> tuple[Note, ...]:
    """All notes on one plant, the machines' first."""
    found = [note for column, machine in enumerate(machines) for note in _machine_notes(one, machine, column)]
    found += _several(one)
    found += _held_shut(one, machines)
    found += _unprotected(one, machines)
    found += suction_notes(one, machines)
    found += _boiling(one, path)
    found += _undefined(one, machines)
    found += [note for section in one.layout.sections for note in section.notes(one)]
    return tuple(found)


def _undefined(one: OnePlant, machines: tuple[Machine, ...]) -> Iterator[Note]:
    """Places without a pressure of their own: dry ones, and those that shut elements cut off."""
    if one.not_reached:
        head = own_head(one, machines)
        missing = -one.drop("end") if one.layout.aside else static_head(one) - head
        yield Note("not-reached", one.end, {"head": head, "missing": missing})
        if not one.layout.attached:
            return  # whatever lies between check valves there is dry or drained
    yield from (
        Note("pressure-undefined", node, {})
        for node in one.nodes
        if one.head(node) is None and node not in UNSEEN
    )


def _machine_notes(one: OnePlant, machine: Machine, place: int) -> Iterator[Note]:
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


def _several(one: OnePlant) -> Iterator[Note]:
    """How many states there are, how many of them last, and the least and most flow of those."""
    states = one.states
    if states is None or len(states.flows) < 2:
        return
    lasting = [possible.flow for possible in possible_states(one) if possible.lasts]
    facts = {"states": float(len(states.flows)), "lasting": float(len(lasting))}
    yield Note(
        "more-than-one-state", "station", facts | {"least_flow": min(lasting), "most_flow": max(lasting)}
    )


def _standing(machine: Machine) -> Note:
    """A pump whose motor is off; one that turns backward must not be started."""
    facts = {"flow": machine.flow, "head": machine.head, "speed": machine.speed}
    backward = machine.flow < 0 and machine.speed < 0
    return Note("turning-backward" if backward else "standing", machine.name, facts)


def _held_shut(one: OnePlant, machines: tuple[Machine, ...]) -> Iterator[Note]:
    """Side by side the stronger pump holds the check valve of the weaker shut."""
    if one.layout.side_by_side == 1 or not any(machine.flow > 0 for machine in machines):
        return
    suction, discharge = one.head("suction"), one.head("discharge")
    if suction is None or discharge is None:
        return
    for machine, check in zip(machines, one.layout.checks, strict=True):
        idle = machine.flow == 0 and machine.standing is UNSET and machine.backward is UNSET
        if idle and one.shut(check):
            yield Note("held-shut", check, {"head": machine.head, "against": discharge - suction})


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


def _unprotected(one: OnePlant, machines: tuple[Machine, ...]) -> Iterator[Note]:
    """A displacement pump without a relief valve that works: against a shut valve something bursts."""
    relief = one.plant.relief
    if relief.fitted and relief.state != "blocked":
        return
    for machine in machines:
        if machine.pressure_limit is not UNSET and machine.backward is UNSET:
            yield Note("no-relief", machine.name, {"limit": machine.pressure_limit})


def _other_speed(measured: float, machine: Machine) -> Iterator[Note]:
    """A speed so far from that of the measured points that they tell little of it.

    Of a slow pump only where it delivers: without flow, that is what matters.
    """
    least, most = FARTHEST
    slow = machine.speed < least * measured and machine.flow > 0
    if slow or machine.speed > most * measured:
        yield Note("other-speed", machine.name, {"speed": machine.speed, "measured_speed": measured})


def _boiling(one: OnePlant, path: tuple[PathPoint, ...]) -> Iterator[Note]:
    """Places where the absolute pressure is below that at which the liquid boils.

    At the pumps' inlet that is only where a flow comes back through it: forward none passes that
    would (`plant.in_place`), and at rest vapour stands there. Elsewhere the note remains: a vessel's
    surface is as it is given, and the liquid boils in the vessel; in front of the mouth, behind the
    pumps and the valve and at the pipe's end the column parts where it lies high or is pulled, which
    takes more than a limit of flow (the liquid goes on in an open channel), and only at a summit is
    that counted.
    """
    air, vapour = air_pressure(one.plant), one.liquid.vapour_pressure
    for point in path:
        if point.pressure is not None and point.pressure + air < vapour - SLIGHT * (air + vapour):
            facts = {"pressure": point.pressure, "vapour_pressure": vapour - air}
            yield Note("below-vapour-pressure", point.place, facts)
