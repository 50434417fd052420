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

from loadfirst.physics.backward import Backward
from loadfirst.physics.displacement import DisplacementMachines, DisplacementRunning
from loadfirst.physics.law import Array, Flags, Index
from loadfirst.physics.machine import Running
from loadfirst.plant.answer import Duty
from loadfirst.plant.build import Built
from loadfirst.plant.load_curve import load_curve
from loadfirst.plant.npsh_marks import Axis, Marks, boiling, marks
from loadfirst.plant.station_curve import (
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
OVER_LIMIT = 1.25
"""How far the curve of a displacement pump is drawn, of its casing's limit or the duty's head. [-]"""
UNTURNED = 0.1
"""How far forward the curves of pumps that pump backward go, of how far they go backward. [-]"""
MARGIN = 1.1
"""How far the curves go beyond the last point of the pumps, or the duty. [-]"""


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
    top = _top(one, duty)
    flow = _samples(one, points, duty, top)
    most = boiling(one, float(flow[0, -1]))
    flow, foot = _edge(flow, most)
    at = forced(one, flow, flows)
    asked, known = load_curve(one, flow, at)
    even, head = flow.copy(), station_curve(one, flow, at)
    if known.any():
        off = _missed(duty, flow, head) if duty.flow > 0 else 0.0
        flow, asked, known = _through(duty, flow, asked, known, VISIBLE * float(one.head_scale[0]), off)
    if (flow != even).any():
        at = forced(one, flow, flows)
        head = station_curve(one, flow, at)
    head[0, foot] = np.minimum(head[0, foot], min(duty.head, 0.0))
    axes = [
        Axis.of(one, number, tuple(flows) or _flows(one, duty)) for number in range(len(one.layout.pumps))
    ]
    first = _Own.of(axes[0], flow, most, top)
    pump, own, inside = first.running, first.running.head, first.known
    if _back(one):
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
        second=UNSET if one.plants[0].alike or len(axes) == 1 else _second(axes[1], flow, most, top),
    )


def _drawn(one: Built, duty: Duty, heads: Array, top: float) -> Flags:
    """Where heads are not far beyond what casings bear; backward, nor where the liquid drives the pump on."""
    if not _back(one) or not np.isfinite(top):
        return np.asarray(heads <= top)
    most = top if len(_back(one)) < len(one.machines) else OVER_LIMIT * max(duty.head, 0.0)
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
    def of(cls, axis: Axis, flow: Array, most: float, top: float) -> _Own:
        available = axis.available(flow[0])[None]
        counts = axis.built.layout.side_by_side == 1 or not axis.built.droops.any()
        running = pump_curve(axis.built, flow, axis.number, available if counts else None)
        return cls(running, available, (running.head <= top) & (axis.line(flow) <= most))


def _second(axis: Axis, flow: Array, most: float, top: float) -> tuple[float | None, ...]:
    own = _Own.of(axis, flow, most, top)
    return _known(own.running.head, own.known)


def _flows(one: Built, duty: Duty) -> tuple[float, ...]:
    """What each of the pumps gives at the duty. [m³/s]"""
    return tuple([float(each[0, 0]) for each in split(one, np.array([[duty.flow]]))])


def _edge(flow: Array, most: float) -> tuple[Array, Index]:
    """The same points, twice among them the flow at which the suction line boils; and where the second is."""
    beyond = np.flatnonzero(flow[0] > most)
    if not len(beyond) or flow.shape[1] < 3:
        return flow, np.empty(0, dtype=np.intp)
    second = np.maximum(beyond[:1], 1 + (flow[0, 0] < most))  # the first point stays where it is
    flow = flow.copy()
    flow[0, second - 1] = flow[0, second] = most
    return flow, second


def _upright(one: Built) -> list[DisplacementMachines | Backward]:
    """The laws whose curves are nearly upright."""
    return [
        law
        for law in one.machines.values()
        if isinstance(law, DisplacementMachines)
        or (isinstance(law, Backward) and isinstance(law.turned, DisplacementMachines))
    ]


def _back(one: Built) -> list[Backward]:
    """The laws of pumps that pump backward."""
    return [law for law in one.machines.values() if isinstance(law, Backward)]


def _top(one: Built, duty: Duty) -> float:
    """The head up to which the curves of displacement pumps are drawn; without end for others. [m]"""
    most = max((float(law.limit_head.max()) for law in _upright(one)), default=np.inf)
    return OVER_LIMIT * max(most * one.layout.in_line, duty.head)


def _samples(one: Built, points: int, duty: Duty, top: float) -> Array:
    """Flows of the points, (1, F): even; where a curve is nearly upright half of them even along its head.

    No flow is among them where the curves reach back beyond a duty without any.
    """
    ends = _ends(one, duty)
    flow = _spread_out(one, points, top, ends)
    if ends[0] < 0 and duty.flow == 0 and points > 2:
        flow[0, 1 + int(np.argmin(np.abs(flow[0, 1:-1])))] = 0.0
    return flow


def _spread_out(one: Built, points: int, top: float, ends: tuple[float, float]) -> Array:
    upright = _upright(one)
    if not upright:
        return np.linspace(*ends, points)[None]
    levels = np.linspace(0.0, top, points // 2)[:, None] / one.layout.in_line
    flows = [law.flow_at(levels + np.zeros(law.count)) for law in upright]
    along = np.concatenate(flows, axis=1).sum(axis=1) if one.layout.side_by_side > 1 else flows[0][:, 0]
    even = np.linspace(*ends, points - points // 2)
    return np.sort(np.concatenate([even, np.clip(along, *ends)]))[None]


def _ends(one: Built, duty: Duty) -> tuple[float, float]:
    """From where to where the curves go: to the last points of all pumps, and beyond the duty. [m³/s]"""
    lasts, back = [0.0], [0.0]
    for law, column in map(one.pump, range(len(one.layout.pumps))):
        last = float(law.last_flow[0, column])
        if isinstance(law, Backward):
            back.append(-last)
        else:
            lasts.append(last)
    most = sum(lasts) if one.layout.side_by_side > 1 else max(lasts)
    return MARGIN * min(sum(back), duty.flow), MARGIN * max(most, duty.flow, UNTURNED * -sum(back))


def _known(values: Array, known: Flags) -> tuple[float | None, ...]:
    return tuple(value if yes else None for value, yes in zip(values[0].tolist(), known[0], strict=True))


def _through(
    duty: Duty, flow: Array, asked: Array, known: Flags, visible: float, off: float
) -> tuple[Array, Array, Flags]:
    """The same columns, of the same length, and through the duty point where they visibly miss it.

    `off` is by how much the station's curve does, as where it bends for want of NPSH. [m]
    """
    points = flow.shape[1]
    if points < 3 or max(_missed(duty, flow, asked), off) < visible:
        return flow, asked, known
    place = 1 + int(np.argmin(np.abs(flow[0, 1:-1] - duty.flow)))
    if duty.flow == 0:  # something holds: the curve falls straight down from what the first trickle asks
        place = int(np.searchsorted(flow[0], 0.0))
        twice = [*range(place + 1), *range(place, points - 1)]
        flow, asked, known = flow[:, twice], asked[:, twice], known[:, twice]
    flow[0, place], asked[0, place], known[0, place] = duty.flow, duty.head, True
    return flow, asked, known


def _missed(duty: Duty, flow: Array, heads: Array) -> float:
    """How far from the duty's head a drawn curve passes. [m]"""
    return float(abs(np.interp(duty.flow, flow[0], heads[0]) - duty.head))


def _column(values: Array) -> tuple[float, ...]:
    return tuple(values[0].tolist())
