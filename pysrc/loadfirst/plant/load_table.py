"""What all outside a station asks, as a table over flow and at single flows, with its slope."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from loadfirst.physics.law import Array
from loadfirst.physics.ways import Way
from loadfirst.plant.build import Built
from loadfirst.plant.outside import forced, outside
from loadfirst.plant.station_tables import POINTS, axis

VERY = 1e3  # [-] of the head scale: more than any pump gives
BESIDE = 1e-7  # [-] of the flow: for the slope of the load


def load_table(one: Built) -> Way:
    """Head that all outside the station asks, from far backward to far out."""
    flow = axis(one)
    return Way(flow, _asked(one, flow))


def _asked(one: Built, flow: Array) -> Array:
    """Head asked outside the station, never falling; where a forced flow finds no balance, very much."""
    found, very = forced(one, flow[None]), VERY * float(one.head_scale[0])
    head = found.head["discharge"] - found.head["suction"]
    head = np.where(found.converged, np.clip(head, -very, very), np.sign(flow) * very)
    return np.maximum.accumulate(head)


def reached(ways: Sequence[Way], load: Way) -> Way:
    """The part of the load's table outside which no state can be, and a point on either side."""
    stretches = [way.stretches() for way in ways]
    least = sum(each[0].flows(load.head) for each in stretches)
    most = sum(each[-1].flows(load.head) for each in stretches)
    first = max(int(np.flatnonzero(least >= load.flow).max(initial=0)) - 1, 0)
    beyond = np.flatnonzero(most <= load.flow)
    last = int(beyond.min()) + 1 if len(beyond) else len(load.flow)
    part = slice(first, max(last, first + 2) + 1)
    return Way(load.flow[part], load.head[part])


def closer(one: Built, load: Way) -> Way:
    """The same part of the load's table with points as dense as its ends are near."""
    more = np.linspace(load.flow[0], load.flow[-1], POINTS)
    flow, first = np.unique(np.concatenate([load.flow, more]), return_index=True)
    heads = np.concatenate([load.head, _asked(one, more)])[first]
    return Way(flow, np.maximum.accumulate(heads))


def load_at(one: Built, flow: Array, usual: float) -> tuple[Array, Array]:
    """Head asked at flows (S,) and its slope away from no flow, from two balances. [m] [m/(m³/s)]"""
    beside = np.where(flow < 0, -BESIDE, BESIDE) * np.maximum(np.abs(flow), usual)
    head = outside(one, np.concatenate([flow, flow + beside])[None])[0].reshape(2, -1)
    return head[0], np.maximum((head[1] - head[0]) / beside, 0.0)
