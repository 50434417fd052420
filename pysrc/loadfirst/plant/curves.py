"""Curves over flow: what the load asks, what a pump and the whole station answer.

The load's curve is found by taking the station out, forcing a flow through the
gap and reading the head across it; so it holds for any network. What two pumps'
check valves lose is added: they belong to the load. The duty point lies on both
curves, also where the plant runs backward; where something holds at no flow the
load's curve falls straight down to it. Each pump has the NPSH that goes with the
flow; where the suction line boils, the station's curve falls straight down and ends.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from msgspec import UNSET, Struct, UnsetType

from loadfirst.physics.displacement import DisplacementRunning
from loadfirst.physics.law import Array, Flags
from loadfirst.physics.machine import Running
from loadfirst.plant.answer import Duty
from loadfirst.plant.build import Built
from loadfirst.plant.curve_points import OVER_LIMIT, backward_laws, edge, highest, missed, samples, through
from loadfirst.plant.load_curve import load_curve
from loadfirst.plant.npsh_marks import Axis, Marks, boiling, marks
from loadfirst.plant.station_curve import (
    Forced,
    forced,
    pump_curve,
    split,
    station_curve,
)

__all__ = ["Curves", "curves", "load_curve", "pump_curve", "station_curve"]

POINTS = 60
"""How many a curve has where nobody says otherwise."""
VISIBLE = 1e-3
"""How far a drawn curve may pass from the duty point, of the plant's head scale. [-]"""


class Curves(Struct, frozen=True):
    """Columns of equal length.

    Attributes
    ----------
    flow : through the station, from 0, or from below the duty's flow where that is
        negative; 0 twice where the load's curve is upright there, and the flow at which the
        suction line boils twice, where the station's is. [m³/s]
    load : head that the load asks; None where no flow can pass. [m]
    machine, npsh_required, npsh_available, power : of the first pump at that flow. [m] [m] [m] [W]
    station : own head of the pumps together. [m]
    second : head of the second pump, where it is another. [m]
    npsh : where along the first pump's flow it gets short.

    What the station gives is None beyond the flow at which the suction line boils. The heads
    and the power of displacement pumps are None where the head is far beyond what their
    casings bear: they would go on to where the motor stalls.
    """

    flow: tuple[float, ...]
    load: tuple[float | None, ...]
    machine: tuple[float | None, ...]
    station: tuple[float | None, ...]
    npsh_required: tuple[float, ...]
    npsh_available: tuple[float | None, ...]
    power: tuple[float | None, ...]
    npsh: Marks
    second: tuple[float | None, ...] | UnsetType = UNSET


def curves(one: Built, duty: Duty, points: int = POINTS, flows: Sequence[float] = ()) -> Curves:
    """All curves of one plant.

    Parameters
    ----------
    one : the plant, built alone.
    duty : the curves pass through it, from 3 points on, and go beyond.
    points : how many, at least 2.
    flows : through each pump at the duty: where a curve droops the pumps may share it in several ways.
    """
    top = highest(one, duty)
    flow = samples(one, points, duty, top)
    most = boiling(one, float(flow[0, -1]))
    flow, foot = edge(flow, most)
    at = forced(one, flow, flows)
    asked, known = load_curve(one, flow, at)
    even, head = flow.copy(), station_curve(one, flow, at)
    if known.any():
        off = missed(duty, flow, head) if duty.flow > 0 else 0.0
        flow, asked, known = through(duty, flow, asked, known, VISIBLE * float(one.head_scale[0]), off)
    if (flow != even).any():
        at = forced(one, flow, flows)
        head = station_curve(one, flow, at)
    head[0, foot] = np.minimum(head[0, foot], min(duty.head, 0.0))
    axes = [
        Axis.of(one, number, tuple(flows) or _flows(one, duty)) for number in range(len(one.layout.pumps))
    ]
    first = _Own.of(axes[0], at, most, top)
    pump, own, inside = first.running, first.running.head, first.known
    if backward_laws(one):
        own, head = _to_duty(one, duty, flow, own, head)
        inside = _drawn(one, duty, own, top)
    within = _drawn(one, duty, head, top) & (flow <= most)
    return Curves(
        flow=_column(flow),
        load=_known(asked, known),
        machine=_known(own, inside),
        station=_known(head, within),
        npsh_required=_column(pump.npsh_required),
        npsh_available=_known(first.available, first.available >= 0),
        power=_known(pump.shaft_power, inside),
        npsh=marks(axes[0], float(flow[0, -1]), most),
        second=UNSET if one.plants[0].alike or len(axes) == 1 else _second(axes[1], at, most, top),
    )


def _drawn(one: Built, duty: Duty, heads: Array, top: float) -> Flags:
    """Where heads are not far beyond what casings bear; backward, nor where the liquid drives the pump on."""
    if not backward_laws(one) or not np.isfinite(top):
        return np.asarray(heads <= top)
    most = top if len(backward_laws(one)) < len(one.machines) else OVER_LIMIT * max(duty.head, 0.0)
    return np.asarray((heads >= -top) & (heads <= most))


def _to_duty(one: Built, duty: Duty, flow: Array, own: Array, head: Array) -> tuple[Array, Array]:
    """Curves of pumps that pump backward, brought down to the duty where too little comes to them.

    There they fall straight from what the pumps would do to what is left for want of liquid.
    """
    place = int(np.argmin(np.abs(flow[0] - duty.flow)))
    missed = abs(float(station_curve(one, np.array([[duty.flow]]))[0, 0]) - duty.head)
    if missed < VISIBLE * float(one.head_scale[0]):
        return own, head
    flow[0, place], head[0, place] = duty.flow, duty.head
    if one.plants[0].alike or len(one.layout.pumps) == 1:
        own[0, place] = duty.head
    return own, head


class _Own(NamedTuple):
    """One of the pumps over its own flow: what it does, its NPSH [m], and where that is worth drawing."""

    running: Running | DisplacementRunning
    available: Array
    known: Flags

    @classmethod
    def of(cls, axis: Axis, at: Forced, most: float, top: float) -> _Own:
        flow, one_way = at.flow, axis.built.layout.side_by_side == 1
        available = at.available[axis.number] if one_way else axis.available(flow[0])[None]
        counts = one_way or not axis.built.droops.any()
        running = pump_curve(axis.built, flow, axis.number, available if counts else None)
        return cls(running, available, (running.head <= top) & (axis.line(flow) <= most))


def _second(axis: Axis, at: Forced, most: float, top: float) -> tuple[float | None, ...]:
    own = _Own.of(axis, at, most, top)
    return _known(own.running.head, own.known)


def _flows(one: Built, duty: Duty) -> tuple[float, ...]:
    """What each of the pumps gives at the duty. [m³/s]"""
    return tuple([float(each[0, 0]) for each in split(one, np.array([[duty.flow]]))])


def _known(values: Array, known: Flags) -> tuple[float | None, ...]:
    return tuple(value if yes else None for value, yes in zip(values[0].tolist(), known[0], strict=True))


def _column(values: Array) -> tuple[float, ...]:
    return tuple(values[0].tolist())
