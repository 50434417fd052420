"""How two pumps share a forced flow where a curve droops: followed from the flows that they have."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from loadfirst.physics.law import Array
from loadfirst.physics.let_go import shared
from loadfirst.plant.build import Built
from loadfirst.plant.station_tables import own_scale, station_ways, way_head, way_rise

SPAN = 5.0  # [-] of the pumps' own head, either way: what curves show
NUDGE = 1e-4  # [-] of the flow scale: the first is a little ahead, so that no balance stands on its tip


def share_out(one: Built, flow: Array, start: Sequence[float] = ()) -> tuple[Array, Array]:
    """Flow through each of two pumps side by side at flows through both, (F,) each. [m³/s]

    Parameters
    ----------
    one : built alone.
    flow : (F,) [m³/s]
    start : what each has in the state that is there; left out, both have half of the most. [m³/s]
    """
    scale, usual = own_scale(one), float(one.flow_scale[0])
    ways = station_ways(one, (-SPAN * scale, SPAN * scale))
    first, both = (start[0], sum(start)) if start else (float(flow.max()) / 2, float(flow.max()))
    order = np.argsort(flow, kind="stable")
    up, down = order[flow[order] >= both], order[flow[order] < both][::-1]
    found = np.empty(flow.shape)
    for part in (up, down):
        found[part] = shared(ways, flow[part].tolist(), first, (scale, usual), NUDGE * usual)
    gap = way_head(one, 0, found) - way_head(one, 1, flow - found)
    with np.errstate(divide="ignore", invalid="ignore"):
        step = -gap / (way_rise(one, 0, found) + way_rise(one, 1, flow - found))
    found = found + np.where(np.abs(step) < NUDGE * usual, step, 0.0)
    return found, flow - found
