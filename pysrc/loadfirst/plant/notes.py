"""Typed notes on a state: what a person should know before believing a number.

There is one answer, because the head that any element loses rises with its own
flow. A pump whose head would rise with the flow, by the slip of its motor, is
held level (`physics.machine_curve`); in truth it could run in more than one
state, and `more-than-one-state` says so.
"""

from __future__ import annotations

from collections.abc import Iterator

from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import Machine, Note, PathPoint
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.stack import own_head, static_head

UNSEEN = ("pipe-end", "after-branch-valve", "branch-pipe-end")
"""Nodes that no gauge is tapped at: a pressure that is undefined there is missed by nobody."""


def notes(one: OnePlant, machines: tuple[Machine, ...], path: tuple[PathPoint, ...]) -> tuple[Note, ...]:
    """All notes on one plant, the machines' first."""
    found = [note for column, machine in enumerate(machines) for note in _machine_notes(one, machine, column)]
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


def _machine_notes(one: OnePlant, machine: Machine, column: int) -> Iterator[Note]:
    running, where = one.solved.running, machine.name
    if machine.flow == 0:
        yield Note("dead-headed", where, {"head": machine.head, "shaft_power": machine.shaft_power})
    if machine.flow < 0:
        yield Note("reverse-flow", where, {"flow": machine.flow})
    if running.beyond[one.row, column]:
        last = float(one.per_machine(one.built.machines.last_flow)[column])
        yield Note("beyond-curve", where, {"flow": machine.flow, "last_flow": last})
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


def _boiling(one: OnePlant, path: tuple[PathPoint, ...]) -> Iterator[Note]:
    """Places where the absolute pressure is below that at which the liquid boils."""
    air = air_pressure(one.plant)
    for point in path:
        if point.pressure is not None and point.pressure + air < one.liquid.vapour_pressure:
            facts = {"pressure": point.pressure, "vapour_pressure": one.liquid.vapour_pressure - air}
            yield Note("below-vapour-pressure", point.place, facts)
