"""The ways through a station, as tables and as slopes.

A way is one pump with its check valve, or all of a station but one whose pumps
stand side by side. See `physics.ways` for what is made of it.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from loadfirst.physics.law import SHUT, Array, Law
from loadfirst.physics.machine import Machines
from loadfirst.physics.ways import Way
from loadfirst.plant.build import Built

POINTS = 120  # of the load's axis where the states may be
TAIL = 1e-6, 1e3, 24  # [-] [-] of the last flow: from where to where points lie farther and farther apart


def station_ways(one: Built, span: tuple[float, float]) -> list[Way]:
    """Each way through a station as a table, from far backward to far out; coarse outside `span`."""
    scale = own_scale(one)
    ways: list[Way] = []
    for number in range(one.layout.side_by_side):
        if ways and one.plants[0].alike:
            return [*ways, *ways]
        flow = axis(one, number)

        def heads(flow: Array, number: int = number) -> Array:
            return way_head(one, number, flow)

        ways.append(Way.tabled(heads, flow, span, scale))
    return ways


def own_scale(one: Built) -> float:
    """A large head of the pumps themselves. [m]"""
    peaks = [float(law.peak_head.max()) for law in one.machines.values() if isinstance(law, Machines)]
    return max(peaks)


def axis(one: Built, number: int | None = None) -> Array:
    """Flows of one pump, or of the station: even where it is made for, farther and farther out."""
    pumps = [one.pump(k) for k in range(len(one.layout.pumps))]
    lasts = [float(np.broadcast_to(law.last_flow, (1, law.count))[0, column]) for law, column in pumps]
    last = max(lasts) if one.layout.side_by_side == 1 else sum(lasts) if number is None else lasts[number]
    least, most, count = TAIL
    passes = leaks(one)
    out = last * np.geomspace(1.2, most, count)[1:]
    near = np.geomspace(max(least * last, 2 * passes), 1 / POINTS * last, count)
    back = -np.geomspace(near[0], most * last, 2 * count)[::-1]
    knots = [
        law.curves.knots[0, column][np.isfinite(law.curves.knots[0, column])]
        for k, (law, column) in enumerate(pumps)
        if isinstance(law, Machines) and (number is None or k == number or one.layout.in_line > 1)
    ]
    even = np.linspace(0.0, 1.2 * last, POINTS // 2 if number is None else 4 * POINTS)
    flow = np.unique(np.concatenate([back, [-passes, passes], near, even, out, *knots]))
    return flow[flow != 0] if number is None else flow  # nobody knows what a load that holds asks at no flow


def leaks(one: Built) -> float:
    """More than what leaks through anything shut. [m³/s]"""
    return 4 * float(one.head_scale[0]) / SHUT


def _on_the_way(one: Built, number: int) -> Iterator[tuple[Law, int]]:
    """The law of each element of one way, and which column it takes there."""
    layout = one.layout
    names = layout.station if layout.side_by_side == 1 else (layout.pumps[number], layout.checks[number])
    for element in layout.elements:
        if element.name in names:
            yield one.network.laws[element.law], element.column


def way_head(one: Built, number: int, flow: Array) -> Array:
    """Head of one way at flows (F,), check valves taken off. [m]"""
    total = np.zeros(flow.shape)
    for law, column in _on_the_way(one, number):
        total -= law.head_drop(np.repeat(flow[:, None], law.count, axis=1))[0][:, column]
    return total


def way_rise(one: Built, number: int, flow: Array) -> Array:
    """Slope of the same, whatever its sign; at no flow that of a check valve that holds. [m/(m³/s)]"""
    passes = leaks(one)
    here, held = _slope(one, number, flow), _slope(one, number, flow - 2 * passes)
    return np.asarray(np.where((np.abs(flow) <= passes) & (held < -SHUT / 2), held, here))


def _slope(one: Built, number: int, flow: Array) -> Array:
    total = np.zeros(flow.shape)
    for law, column in _on_the_way(one, number):
        through = np.repeat(flow[:, None], law.count, axis=1)
        slope = law.rise(through) if isinstance(law, Machines) else -law.head_drop(through)[1]
        total += slope[:, column]
    return total


def way_heads(one: Built, flows: Array) -> tuple[Array, Array]:
    """Heads and slopes of the ways at flows through each, (S, ways)."""
    parts = [
        (way_head(one, number, flow), way_rise(one, number, flow)) for number, flow in enumerate(flows.T)
    ]
    return np.stack([head for head, _ in parts], axis=1), np.stack([rise for _, rise in parts], axis=1)
