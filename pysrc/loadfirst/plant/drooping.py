"""Plants with a pump whose head rises with the flow somewhere: all their states, and the one that is there.

A falling curve meets a load once. One that droops towards no flow, or has a
saddle, may be met several times, and two such pumps side by side may share the
flow in several ways. All these states are searched for (`physics.ways`), each is
polished by Newton's method on the laws themselves, and what the pumps did before
chooses among those that last (`physics.let_go`). The pumps then get stand-in laws
that never rise and are true at the chosen flows (`Machines.leant`), so that the
network is balanced as ever, and its answer is that state.

Where the pumps of one way are short of NPSH, its states are those with the head that
is left (`plant.way_in_place`), and the one that is there is balanced in its place
(`plant.in_place`). Two side by side are searched and balanced as with plenty of NPSH:
want of it is told by a note there, and not counted.

A plant without such a pump pays one comparison.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from loadfirst.physics.law import Array, Flags
from loadfirst.physics.let_go import let_go
from loadfirst.physics.network import STALLED, Solution
from loadfirst.physics.starved import PLENTY
from loadfirst.physics.ways import Way, meetings, stable
from loadfirst.plant.build import Built
from loadfirst.plant.choked import settle
from loadfirst.plant.load_table import closer, load_at, load_table, reached
from loadfirst.plant.polish import CLOSE, balanced, polished
from loadfirst.plant.station_curve import Forced, station_curve
from loadfirst.plant.station_tables import own_scale, station_ways, way_heads
from loadfirst.plant.way_in_place import crossings, is_short
from loadfirst.units import HOUR

RESTS = 1e-5  # [-] of the flow scale: what leaks through what is shut
NEAR = 1e-2  # [-] of the head scale: a curve goes on from there without a leap
LATER = 1e-3  # [-] of the flow scale: two like pumps never do quite the same, the second lags


class States(NamedTuple):
    """All states of one plant.

    Attributes
    ----------
    flows : (S, pumps) rising together. [m³/s]
    heads : (S,) own head of the station. [m]
    stable : (S,) whether it lasts.
    chosen : which of them is there.
    around : flows of the station on either side of that, with no other state between, where want of
        NPSH counts; None where there is plenty. [m³/s]
    """

    flows: Array
    heads: Array
    stable: Flags
    chosen: int
    around: tuple[float, float] | None = None


def settle_all(built: Built) -> tuple[Solution, dict[int, States]]:
    """Balance plants, and find all states of those that may have several.

    Returns
    -------
    solution : of the state that is there.
    states : by row, of the plants with a pump that droops; what is short of NPSH is yet to be balanced.
    """
    if not built.droops.any():
        return settle(built, built.network, built.head_scale, built.flow_scale), {}
    rows = np.flatnonzero(built.droops)
    states = {int(row): all_states(built.rows(np.array([row]))) for row in rows}
    about = np.zeros((len(built), len(built.layout.pumps)))
    for row, found in states.items():
        about[row] = found.flows[found.chosen]
    plenty = np.array([row not in states or states[row].around is None for row in range(len(built))])
    solution, flows, off = balanced(built, about, plenty)
    for row, found in states.items():
        if plenty[row]:
            found.flows[found.chosen] = flows[row]
    wanting = plenty & (off > CLOSE * built.head_scale)
    return solution._replace(
        converged=solution.converged & ~wanting,
        reason=tuple(STALLED if no else why for why, no in zip(solution.reason, wanting, strict=True)),
    ), states


def all_states(one: Built) -> States:
    """Every state of one plant, built alone."""
    scale = float(one.head_scale[0]), float(one.flow_scale[0])
    whole = load_table(one)
    ways = station_ways(one, (float(whole.head[0]), float(whole.head[-1])))
    load = closer(one, reached(ways, whole))
    if len(ways) == 1 and is_short(one, load.flow):
        return _in_place(one, whole, scale)
    found = meetings(ways, load.flow, load.head, own_scale(one))
    flows = polished(one, found if len(found) else np.zeros((1, len(ways))), scale)
    together = flows.sum(axis=1)
    lasts = _lasts(one, flows, load_at(one, together, scale[1])[1], scale[1])
    chosen = _chosen(one, ways, load, flows, lasts, scale)
    each = flows if len(ways) > 1 else np.repeat(flows, len(one.layout.pumps), axis=1)
    plenty = np.full((1, len(together)), PLENTY)
    at = Forced(one, together[None], tuple(each.T[:, None]), (plenty,) * len(one.layout.pumps))
    heads = station_curve(one, together[None], at)[0]
    return States(each, heads, lasts, chosen)


def _lasts(one: Built, flows: Array, slope: Array, flow_scale: float) -> Flags:
    """Which states last. Two pumps at rest stand at a corner of their curves: they must bear it, too, if one
    of them begins to push liquid back through the other."""
    lasts = stable(way_heads(one, flows)[1], slope)
    at = way_heads(one, flows)[0]
    at_rest = np.abs(flows).max(axis=1) <= RESTS * flow_scale
    if flows.shape[1] == 2 and at_rest.any():
        for way in (1.0, -1.0):
            aside = np.where(at_rest, 2 * RESTS * flow_scale * way, 0.0)
            heads, rise = way_heads(one, flows + np.stack([aside, -aside], axis=1))
            held = (np.abs(heads - at) > NEAR * one.head_scale[0]).any(axis=1)  # by a check valve
            lasts &= held | stable(rise, slope)
    return lasts


def _in_place(one: Built, load: Way, scale: tuple[float, float]) -> States:
    """Every state of one way that is short of NPSH."""
    found = crossings(one, load)
    flows = found.flow[:, None]
    chosen = _chosen(one, [load], load, flows, found.lasts, scale)
    each = np.repeat(flows, len(one.layout.pumps), axis=1)
    around = float(found.low[chosen]), float(found.high[chosen])
    return States(each, found.head, found.lasts, chosen, around)


def _chosen(
    one: Built, ways: Sequence[Way], load: Way, flows: Array, lasts: Flags, scale: tuple[float, float]
) -> int:
    """Which state is there: that which the flows before lead to."""
    lasting = np.flatnonzero(lasts)
    if len(lasting) < 2:
        return int(lasting[0]) if len(lasting) else int(np.argmin(flows.sum(axis=1)))
    pump = one.plants[0].plant.pump
    before = [pump.history_m3h, pump.second.history_m3h]
    if len(ways) == 1:
        if before[0] is None:
            return int(lasting[-1])
        start = before[0] / HOUR
        bounds = flows[~lasts, 0]
        low, high = (bounds[bounds <= start].max(initial=-np.inf), bounds[bounds > start].min(initial=np.inf))
        within = [k for k in lasting if low < flows[k, 0] < high]
        return int(within[-1] if within else lasting[np.argmin(np.abs(flows[lasting, 0] - start))])
    starts = [
        load.flow[-1] / len(ways) if given is None else given / HOUR
        for way, given in zip(ways, before, strict=False)
    ]
    starts[1] -= LATER * scale[1]
    rest = let_go(ways, load, starts, scale)
    return int(lasting[np.argmin(np.abs(flows[lasting] - rest).max(axis=1))])
