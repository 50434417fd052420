"""States of a station that is one way, where its pumps are short of NPSH.

The flow of one way, a single pump or two in line, is that of the suction line. So
the head that is left at a flow is one number, whatever the curve does: each pump
has the NPSH that goes with that flow (`plant.npsh`). From the flow on at which the
liquid boils at a flange the curve is a cliff: the station gives there whatever the
load asks, and no more passes. A load that rises meets this curve as it does any
other, and its states are the crossings; those on which the head left over falls
with the flow last, and one on the cliff always does.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

import numpy as np

from loadfirst.physics.law import Array, Flags
from loadfirst.physics.pipe import velocity_head
from loadfirst.physics.root import rising_root
from loadfirst.physics.ways import Way, meetings
from loadfirst.plant.boiling import boiling_flow
from loadfirst.plant.build import Built
from loadfirst.plant.load_table import VERY, closer, load_at, reached
from loadfirst.plant.npsh import equipped, in_place, own_head
from loadfirst.plant.polish import STRAY
from loadfirst.plant.station_curve import station_curve
from loadfirst.plant.station_tables import axis, leaks, own_scale, way_head

CLIFF = 1e-9  # [-] of the flow scale: how far out its foot stands in a table


class Crossings(NamedTuple):
    """All states of one way, in the order of the flow.

    Attributes
    ----------
    flow : (S,) [m³/s]
    head : (S,) own head of the station. [m]
    lasts : (S,)
    low, high : (S,) flows on either side with no other state between. [m³/s]
    """

    flow: Array
    head: Array
    lasts: Flags
    low: Array
    high: Array


def is_short(one: Built, flow: Array) -> bool:
    """Whether a pump loses head, or the liquid boils in front of one, at any of these flows, (F,). [m³/s]"""
    place = in_place(one, flow)
    boils = (flow > 0)[:, None] & (place.available < velocity_head(flow[:, None], one.suction.bore))
    return bool(boils.any()) or any(
        (own_head(one, place.laws, number, flow) < own_head(one, one.machines, number, flow)).any()
        for number in range(len(one.layout.pumps))
    )


def crossings(one: Built, load: Way) -> Crossings:
    """Every state of one plant, built alone, whose pumps are all passed by one flow.

    Parameters
    ----------
    load : all of the load's table: short of NPSH, a plant may be anywhere below its flow with plenty.
    """
    scale, usual = own_scale(one), float(one.flow_scale[0])
    most = float(boiling_flow(one)[0])

    def head(flow: Array) -> Array:
        return _left(one, flow)

    at = axis(one, 0)
    at = np.unique(np.append(at[at < most], most))
    way = Way.tabled(head, at, (float(load.head[0]), float(load.head[-1])), scale)
    foot = most + CLIFF * usual
    way = Way(np.append(way.flow, foot), np.append(way.head, -VERY * float(one.head_scale[0])))
    load = closer(one, reached([way], load))
    found = meetings([way], load.flow, load.head, scale)[:, 0]
    if not len(found):  # where nothing but leakage flows, a table may not see it
        found = np.zeros(1)
    held = found >= most
    found = np.minimum(found, most)
    ends = min(float(load.flow[0]), float(found.min(initial=0.0))), min(float(load.flow[-1]), most)
    middle = (found[1:] + found[:-1]) / 2
    low, high = np.concatenate([ends[:1], middle]), np.concatenate([middle, ends[1:]])

    def over(flow: Array) -> Array:
        return head(flow) - load_at(one, flow, usual)[0]

    flow = _polished(over, found, (low, high), (usual, leaks(one)), held)
    heads = station_curve(one, flow[None])[0]
    if held.any():
        heads[held] -= over(flow[held])
    lasts = _falling(way, load, len(found)) | (len(found) == 1)
    return Crossings(flow, heads, lasts, low, high)


def _left(one: Built, flow: Array) -> Array:
    """Head of the way at flows (F,), with the NPSH that goes with each. [m]"""
    return way_head(equipped(one, in_place(one, flow).laws), 0, flow)


def _falling(way: Way, load: Way, count: int) -> Flags:
    """Which of so many crossings last: every other one, as the head left over changes its sign."""
    above = way.heads(load.flow[:1])[0] >= load.head[0]
    return np.asarray((np.arange(count) % 2 == 0) == above)


def _polished(
    over: Callable[[Array], Array],
    found: Array,
    room: tuple[Array, Array],
    scale: tuple[float, float],
    held: Flags,
) -> Array:
    """The same states by the laws themselves: those on the cliff are so already; what leaks is no flow."""
    usual, passes = scale
    flow = np.where(held | (np.abs(found) > passes), found, 0.0)
    loose = np.flatnonzero(~held & (np.abs(found) > passes))
    if not len(loose):
        return flow
    at, side = found[loose], np.sign(found[loose]) * passes
    low = np.maximum(np.maximum(room[0][loose], at - STRAY * usual), np.where(side > 0, side, -np.inf))
    high = np.minimum(np.minimum(room[1][loose], at + STRAY * usual), np.where(side < 0, side, np.inf))
    first, last = np.split(over(np.concatenate([low, high])), 2)
    between = np.sign(first) * np.sign(last) <= 0
    way = np.where(first > 0, -1.0, 1.0)
    exact, _ = rising_root(lambda q: way * over(q), low, high, ends=(way * first, way * last))
    flow[loose] = np.where(between, exact, at)
    return flow
