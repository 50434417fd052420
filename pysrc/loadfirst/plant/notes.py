"""Typed notes on a state: what a person should know before believing a number.

There is one answer, because the head that any element loses rises with its own
flow. A pump whose head would rise with the flow, by the slip of its motor, is
held level (`physics.machine_curve`); in truth it could run in more than one
state, and `more-than-one-state` says so.
"""

from __future__ import annotations

from collections.abc import Iterator

from loadfirst.plant.answer import Machine, Note, PathPoint
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.stack import own_head, static_head
from loadfirst.units import BAR, RPM

FARTHEST = (0.5, 1.3)
"""Of the speed at which a pump was measured: the affinity laws hold less and less well outside.

Common practice. A drive that slows a 50 Hz pump down to half stays inside, and so does a 60 Hz supply;
a wrong number of poles does not, upward.
"""


def notes(one: OnePlant, machines: tuple[Machine, ...], path: tuple[PathPoint, ...]) -> tuple[Note, ...]:
    """All notes on one plant, the machines' first."""
    found = [note for column, machine in enumerate(machines) for note in _machine_notes(one, machine, column)]
    found += _boiling(one, path)
    found += _undefined(one, machines)
    if not one.layout.attached:
        found.append(Note("line-off", "discharge", {}))
    return tuple(found)


def _undefined(one: OnePlant, machines: tuple[Machine, ...]) -> Iterator[Note]:
    """Places without a pressure of their own: dry ones, and those that shut elements cut off."""
    if one.not_reached:
        head = own_head(one, machines)
        yield Note("not-reached", one.end, {"head": head, "missing": static_head(one) - head})
        if not one.layout.attached:
            return  # whatever lies between check valves there is dry or drained
    yield from (
        Note("pressure-undefined", node, {})
        for node in one.nodes
        if one.head(node) is None and node != "pipe-end"
    )


def _machine_notes(one: OnePlant, machine: Machine, column: int) -> Iterator[Note]:
    running, where = one.solved.running, machine.name
    if machine.flow == 0:
        yield Note("dead-headed", where, {"head": machine.head, "shaft_power": machine.shaft_power})
    if machine.flow < 0:
        yield Note("reverse-flow", where, {"flow": machine.flow})
    if running.beyond[one.row, column]:
        last = float(one.per_machine(one.built.machines.last_flow)[column])
        yield Note("beyond-curve", where, {"flow": machine.flow, "last_flow": last})
    yield from _other_speed(one, machine)
    if one.per_machine(one.built.machines.limited)[column]:
        yield Note("more-than-one-state", where, {})
    if machine.load > 1:
        rated = machine.shaft_power / machine.load
        yield Note(
            "overload",
            where,
            {"shaft_power": machine.shaft_power, "rated_power": rated, "load": machine.load},
        )
    available = machine.npsh_available
    if machine.flow > 0 and available is not None and available < machine.npsh_required:
        yield Note("npsh-short", where, {"available": available, "required": machine.npsh_required})


def _other_speed(one: OnePlant, machine: Machine) -> Iterator[Note]:
    """A speed so far from that of the measured points that they tell little of it.

    Of a slow pump only where it delivers: without flow, that is what matters.
    """
    measured = one.built.plants[one.row].curve.speed_rpm * RPM
    least, most = FARTHEST
    slow = machine.speed < least * measured and machine.flow > 0
    if slow or machine.speed > most * measured:
        yield Note("other-speed", machine.name, {"speed": machine.speed, "measured_speed": measured})


def _boiling(one: OnePlant, path: tuple[PathPoint, ...]) -> Iterator[Note]:
    """Places where the absolute pressure is below that at which the liquid boils."""
    air = one.plant.site.barometer_bar * BAR
    for point in path:
        if point.pressure is not None and point.pressure + air < one.liquid.vapour_pressure:
            facts = {"pressure": point.pressure, "vapour_pressure": one.liquid.vapour_pressure - air}
            yield Note("below-vapour-pressure", point.place, facts)
