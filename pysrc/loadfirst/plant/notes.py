"""Typed notes on a state: what a person should know before believing a number.

There is one answer where the head that any element loses rises with its own
flow. A pump whose head would rise with the flow, by the slip of its motor, is
held level (`physics.machine_curve`); in truth it could run in more than one
state, and `held-level` says so. A pump whose own curve rises somewhere may have
several states (`plant.drooping`); `more-than-one-state` says how many.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from msgspec import UNSET

from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import Note
from loadfirst.plant.control_state import control_notes, limit_notes
from loadfirst.plant.machine_notes import machine_notes
from loadfirst.plant.solved import OnePlant
from loadfirst.plant.stack import own_head, static_head
from loadfirst.plant.suction_notes import suction_notes
from loadfirst.plant.told import Told

UNSEEN = ("pipe-end", "after-branch-valve", "branch-pipe-end")
"""Nodes that no gauge is tapped at: a pressure that is undefined there is missed by nobody."""

SLIGHT = 1e-6
"""Round-off of a pressure, of air and vapour pressure. [-]"""


def notes(one: OnePlant, told: Told) -> tuple[Note, ...]:
    """All notes on one plant, the machines' first."""
    return tuple([note for source in SOURCES for note in source(one, told)])


def _undefined(one: OnePlant, told: Told) -> Iterator[Note]:
    """Places without a pressure of their own: dry ones, and those that shut elements cut off."""
    if one.not_reached:
        head = own_head(one, told.machines)
        missing = -one.drop("end") if one.layout.aside else static_head(one) - head
        yield Note("not-reached", one.end, {"head": head, "missing": missing})
        if not one.layout.attached:
            return  # whatever lies between check valves there is dry or drained
    yield from (
        Note("pressure-undefined", node, {})
        for node in one.nodes
        if one.head(node) is None and node not in UNSEEN
    )


def _several(one: OnePlant, told: Told) -> Iterator[Note]:
    """How many states there are, how many of them last, and the least and most flow of those."""
    if len(told.possible) < 2:
        return
    lasting = [possible.flow for possible in told.possible if possible.lasts]
    facts = {"states": float(len(told.possible)), "lasting": float(len(lasting))}
    yield Note(
        "more-than-one-state", "station", facts | {"least_flow": min(lasting), "most_flow": max(lasting)}
    )


def _held_shut(one: OnePlant, told: Told) -> Iterator[Note]:
    """Side by side the stronger pump holds the check valve of the weaker shut."""
    if one.layout.side_by_side == 1 or not any(machine.flow > 0 for machine in told.machines):
        return
    suction, discharge = one.head("suction"), one.head("discharge")
    if suction is None or discharge is None:
        return
    for machine, check in zip(told.machines, one.layout.checks, strict=True):
        idle = machine.flow == 0 and machine.standing is UNSET and machine.backward is UNSET
        if idle and one.shut(check):
            yield Note("held-shut", check, {"head": machine.head, "against": discharge - suction})


def _unprotected(one: OnePlant, told: Told) -> Iterator[Note]:
    """A displacement pump without a relief valve that works: against a shut valve something bursts."""
    relief = one.plant.relief
    if relief.fitted and relief.state != "blocked":
        return
    for machine in told.machines:
        if machine.pressure_limit is not UNSET and machine.backward is UNSET:
            yield Note("no-relief", machine.name, {"limit": machine.pressure_limit})


def _boiling(one: OnePlant, told: Told) -> Iterator[Note]:
    """Places where the absolute pressure is below that at which the liquid boils.

    At the pumps' inlet that is only where a flow comes back through it: forward none passes that
    would (`plant.in_place`), and at rest vapour stands there. Elsewhere the note remains: a vessel's
    surface is as it is given, and the liquid boils in the vessel; in front of the mouth, behind the
    pumps and the valve and at the pipe's end the column parts where it lies high or is pulled, which
    takes more than a limit of flow (the liquid goes on in an open channel), and only at a summit is
    that counted.
    """
    air, vapour = air_pressure(one.plant), one.liquid.vapour_pressure
    for point in told.path:
        if point.pressure is not None and point.pressure + air < vapour - SLIGHT * (air + vapour):
            facts = {"pressure": point.pressure, "vapour_pressure": vapour - air}
            yield Note("below-vapour-pressure", point.place, facts)


def _of_sections(one: OnePlant, told: Told) -> Iterator[Note]:
    """What each section of the way has to say."""
    for section in one.layout.sections:
        yield from section.notes(one)


SOURCES: tuple[Callable[[OnePlant, Told], Iterator[Note]], ...] = (
    machine_notes,
    _several,
    _held_shut,
    _unprotected,
    suction_notes,
    _boiling,
    _undefined,
    _of_sections,
    control_notes,
    limit_notes,
)
"""Everything that has notes, in the order in which they are told."""
