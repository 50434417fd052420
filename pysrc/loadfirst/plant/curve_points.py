"""At which flows the curves of a plant are drawn: from where to where, how dense, and through the duty."""

from __future__ import annotations

import numpy as np

from loadfirst.physics.backward import Backward
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.law import Array, Flags, Index
from loadfirst.plant.answer import Duty
from loadfirst.plant.build import Built

OVER_LIMIT = 1.25
"""How far the curve of a displacement pump is drawn, of its casing's limit or the duty's head. [-]"""
UNTURNED = 0.1
"""How far forward the curves of pumps that pump backward go, of how far they go backward. [-]"""
MARGIN = 1.1
"""How far the curves go beyond the last point of the pumps, or the duty. [-]"""


def samples(one: Built, points: int, duty: Duty, top: float) -> Array:
    """Flows of the points, (1, F): even; where a curve is nearly upright half of them even along its head.

    No flow is among them where the curves reach back beyond a duty without any.
    """
    ends = _ends(one, duty)
    flow = _spread_out(one, points, top, ends)
    if ends[0] < 0 and duty.flow == 0 and points > 2:
        flow[0, 1 + int(np.argmin(np.abs(flow[0, 1:-1])))] = 0.0
    return flow


def edge(flow: Array, most: float) -> tuple[Array, Index]:
    """The same points, twice among them the flow at which the suction line boils; and where the second is."""
    beyond = np.flatnonzero(flow[0] > most)
    if not len(beyond) or flow.shape[1] < 3:
        return flow, np.empty(0, dtype=np.intp)
    second = np.maximum(beyond[:1], 1 + (flow[0, 0] < most))  # the first point stays where it is
    flow = flow.copy()
    flow[0, second - 1] = flow[0, second] = most
    return flow, second


def highest(one: Built, duty: Duty) -> float:
    """The head up to which the curves of displacement pumps are drawn; without end for others. [m]"""
    most = max((float(law.limit_head.max()) for law in _upright(one)), default=np.inf)
    return OVER_LIMIT * max(most * one.layout.in_line, duty.head)


def _upright(one: Built) -> list[DisplacementMachines | Backward]:
    """The laws whose curves are nearly upright."""
    return [
        law
        for law in one.machines.values()
        if isinstance(law, DisplacementMachines)
        or (isinstance(law, Backward) and isinstance(law.turned, DisplacementMachines))
    ]


def backward_laws(one: Built) -> list[Backward]:
    """The laws of pumps that pump backward."""
    return [law for law in one.machines.values() if isinstance(law, Backward)]


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


def through(
    duty: Duty, flow: Array, asked: Array, known: Flags, visible: float, off: float
) -> tuple[Array, Array, Flags]:
    """The same columns, of the same length, and through the duty point where they visibly miss it.

    `off` is by how much the station's curve does, as where it bends for want of NPSH. [m]
    """
    points = flow.shape[1]
    if points < 3 or max(missed(duty, flow, asked), off) < visible:
        return flow, asked, known
    place = 1 + int(np.argmin(np.abs(flow[0, 1:-1] - duty.flow)))
    if duty.flow == 0:  # something holds: the curve falls straight down from what the first trickle asks
        place = int(np.searchsorted(flow[0], 0.0))
        twice = [*range(place + 1), *range(place, points - 1)]
        flow, asked, known = flow[:, twice], asked[:, twice], known[:, twice]
    flow[0, place], asked[0, place], known[0, place] = duty.flow, duty.head, True
    return flow, asked, known


def missed(duty: Duty, flow: Array, heads: Array) -> float:
    """How far from the duty's head a drawn curve passes. [m]"""
    return float(abs(np.interp(duty.flow, flow[0], heads[0]) - duty.head))
