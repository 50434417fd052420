"""What must not be done, and what does harm as it is: read from the true state, never declared."""

from __future__ import annotations

from typing import Literal

from loadfirst.cases.case import Check
from loadfirst.days.two_days import OneDay
from loadfirst.plant.pump_kind import pump_kind

Refusal = Literal[
    "shut-displacement", "shut-propeller", "over-pressure", "opens-under-pressure", "starts-backward"
]
"""Why a check is not done: a displacement pump against a shut line; an axial or mixed-flow pump against one,
where flow breaks away in it and many overload their motors; more pressure than casing and line are made for;
a line opened under pressure; a pump started while liquid turns it backward."""

DISMANTLES = frozenset({"impeller-seen", "gaps-measured"})
"""Observations for which the pump is taken apart."""

OPENS = DISMANTLES | {"strainer-basket", "piece-of-pipe"}
"""Observations for which something that stands under pressure is opened."""

MAY_BE_SHUT = frozenset({"radial"})
"""Kinds of pump that bear a shut valve for the half minute of a test, where their maker permits it."""

SHUT_IN = frozenset({"dead-headed", "relief-lifted"})
"""Notes on a pump that runs and cannot deliver: nothing passes, or its relief valve is the only way left."""

PRESSURE = frozenset({"pressure-limit", "relief-behind"})
HARMFUL = frozenset({
    "npsh-short", "suction-dry", "suction-boils", "nothing-comes", "vortex", "dead-headed", "overload",
    "trips", "current-over-limit", "stalled", "pumps-backward", "turning-backward", *PRESSURE,
})  # fmt: skip
"""Notes on a state that harms its pump, its motor or people, if it is left as it is."""


def harmful(today: OneDay) -> bool:
    """Whether the plant comes to harm as it runs."""
    return any(note.kind in HARMFUL for note in today.state.notes)


def refusal(check: Check, tested: OneDay | None, today: OneDay | None = None) -> Refusal | None:
    """Why nobody should do this; None where it can be done with the usual care.

    Parameters
    ----------
    check : as it is offered.
    tested : today while its test is on; None for a check without a test.
    today : as it stands without the test.

    Sources
    -------
    Common practice: a displacement pump is never run against a shut line, relief valve or not;
    a shut-in test is for radial pumps, and only where the maker permits it (axial and mixed-flow
    ones shake there, whether or not their power exceeds the motor's); a motor switched on while its shaft
    turns backward takes many times its torque, and shaft or coupling may shear.
    """
    if check.observes in OPENS and not check.isolated:
        return "opens-under-pressure"
    if tested is None:
        return None
    if today is not None and _backward(today) & _running(tested):
        return "starts-backward"
    notes = {note.kind for note in tested.state.notes}
    kinds = {pump_kind(pump) for pump in tested.settled.pumps}
    if notes & SHUT_IN and not kinds <= MAY_BE_SHUT:
        return "shut-propeller" if kinds & {"axial", "mixed"} else "shut-displacement"
    return "over-pressure" if notes & PRESSURE else None


def _backward(day: OneDay) -> set[str]:
    """Pumps that liquid turns backward, their motors off."""
    return {note.where for note in day.state.notes if note.kind == "turning-backward"}


def _running(day: OneDay) -> set[str]:
    """Pumps whose motors are on."""
    return {machine.name for machine in day.state.machines if not machine.standing}
