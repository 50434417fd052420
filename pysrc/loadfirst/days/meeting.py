"""Where load and machine meet on two days, and what each of them did at yesterday's flow.

At one and the same flow the load's curve can only have moved because the load is
another, and the machine's because the machine is: so their changes there say which
of both has changed, whatever the duty point did afterwards.
"""

from __future__ import annotations

from typing import Literal

import numpy as np
from msgspec import UNSET, Struct

from loadfirst.days.groups import group_of
from loadfirst.days.two_days import Days, OneDay
from loadfirst.plant.build import build
from loadfirst.plant.state import State
from loadfirst.plant.station_curve import pump_curve, station_curve

Mover = Literal["load", "machine", "both", "neither"]
INSIDE = ("machine", "drive")
"""Groups of what makes another machine."""

NOTICEABLE = 0.005
"""Least change of head at yesterday's flow that counts, of yesterday's head. [-]"""


class Meeting(Struct, frozen=True):
    """Yesterday's and today's values in pairs.

    Attributes
    ----------
    flow : through the station. [m³/s]
    head : of the pumps together. [m]
    asked : by the load at yesterday's flow; None where none can pass. [m]
    answered : by the pumps at yesterday's flow; None for pumps that give their flow at any
        head, and for those that stand or turn backward. [m]
    mover : which of both curves is another there.
    """

    flow: tuple[float, float]
    head: tuple[float, float]
    asked: tuple[float | None, float | None]
    answered: tuple[float | None, float | None]
    mover: Mover


def meeting(days: Days) -> Meeting:
    """Compare the duty points and both curves."""
    before, after = days.yesterday, days.today
    flow = before.state.duty.flow
    asked = days.load_at_yesterdays_flow
    answered = _answered(before, flow), _answered(after, flow)
    load = _other(asked, days.head_scale)
    if None in answered:
        machine = any(group_of(key) in INSIDE for key in days.differences)
    else:
        machine = _other(answered, days.head_scale)
    mover: Mover = "both" if load and machine else "load" if load else "machine" if machine else "neither"
    return Meeting(
        flow=(flow, after.state.duty.flow),
        head=(before.state.duty.head, after.state.duty.head),
        asked=asked, answered=answered, mover=mover,
    )  # fmt: skip


def _other(heads: tuple[float | None, float | None], scale: float) -> bool:
    before, after = heads
    if before is None or after is None:
        return before is not after
    return abs(after - before) >= NOTICEABLE * scale


def _answered(day: OneDay, flow: float) -> float | None:
    turns = all(not machine.backward and not machine.standing for machine in day.state.machines)
    if not turns or displaces(day.state):
        return None
    return float(station_curve(build([day.settled]), np.array([[flow]]))[0, 0])


def own_change(days: Days) -> float | None:
    """How the head of the one pump that runs has changed at the flow through it yesterday. [m]

    Beside pumps that stand or are driven backward, whose station has no curve of its own. None where
    more than one runs, another one today, or one that displaces.
    """
    both = days.yesterday, days.today
    running = [_runs(day.state) for day in both]
    if len(running[0]) != 1 or running[0] != running[1] or any(displaces(day.state) for day in both):
        return None
    number = running[0][0]
    flow = np.array([[days.yesterday.state.machines[number].flow]])
    found = [pump_curve(build([day.settled]), flow, number) for day in both]
    return float(found[1].head[0, 0] - found[0].head[0, 0])


def _runs(state: State) -> list[int]:
    return [at for at, one in enumerate(state.machines) if one.backward is UNSET and one.standing is UNSET]


def displaces(state: State) -> bool:
    """Whether any of the pumps gives its flow at whatever head is asked."""
    return any(machine.pressure_limit is not UNSET for machine in state.machines)
