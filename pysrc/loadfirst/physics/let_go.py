"""Where the flows through a station end that is let go at some flows: what history chooses.

Each way's flow changes as the head left over pushes it, dq_i/dt = E_i(q_i) - L(Σ q),
the same column of liquid standing in each. The path is followed in small implicit
steps; where it ends does not depend on their size as long as they are small against
the distance between states.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

import numpy as np

from loadfirst.physics.law import Array
from loadfirst.physics.ways import Way

STEPS = 2000  # at most
FARTHEST = 0.01  # [-] of the flow scale in one step
STILL = 1e-9  # [-] of the flow scale: a step as small as that is an end


class Line:
    """A table read at one flow at a time, with its slope: plain numbers are quicker there than arrays."""

    def __init__(self, way: Way) -> None:
        self.flow, self.head = way.flow.tolist(), way.head.tolist()

    def at(self, flow: float) -> tuple[float, float]:
        """Head and slope. [m³/s] -> [m] [m/(m³/s)]"""
        x, y = self.flow, self.head
        k = min(max(bisect_right(x, flow) - 1, 0), len(x) - 2)
        slope = (y[k + 1] - y[k]) / (x[k + 1] - x[k])
        return y[k] + slope * (flow - x[k]), slope


def let_go(ways: Sequence[Way], load: Way, start: Sequence[float], scale: tuple[float, float]) -> Array:
    """Flows at which two ways come to rest.

    Parameters
    ----------
    ways : two, side by side.
    load : the head asked over the flow of both.
    start : flow through each before. [m³/s]
    scale : usual head and flow. [m] [m³/s]

    Returns
    -------
    flows : (2,), as good as the tables. [m³/s]
    """
    first, second, asked = Line(ways[0]), Line(ways[1]), Line(load)
    a, b = start
    head, flow = scale
    for _ in range(STEPS):
        (e, de), (f, df), (h, dh) = first.at(a), second.at(b), asked.at(a + b)
        inert = max(2 * max(de, df, 0.0), head / flow)  # more than any rise: the steps go downhill
        p, q = inert - de + dh, inert - df + dh
        divisor = p * q - dh * dh
        step = (q * (e - h) - dh * (f - h)) / divisor, (p * (f - h) - dh * (e - h)) / divisor
        size = max(abs(step[0]), abs(step[1])) / flow
        if size < STILL:
            break
        short = min(1.0, FARTHEST / size)
        a, b = a + short * step[0], b + short * step[1]
    return np.array([a, b])


def shared(
    ways: Sequence[Way], together: Sequence[float], start: float, scale: tuple[float, float], nudge: float
) -> list[float]:
    """Flow through the first of two ways while that of both is moved from one value to the next.

    Parameters
    ----------
    together : flows of both, in the order in which they come. [m³/s]
    start : flow through the first before. [m³/s]
    scale : usual head and flow. [m] [m³/s]
    nudge : by which the first is ahead at each value. [m³/s]
    """
    first, second = Line(ways[0]), Line(ways[1])
    head, flow = scale
    found, a = [], start
    for both in together:
        a += nudge
        for _ in range(STEPS):
            (e, de), (f, df) = first.at(a), second.at(both - a)
            rise = de + df
            step = (e - f) / (max(2 * rise, head / flow) - rise)
            if abs(step) < STILL * flow:
                break
            a += min(max(step, -FARTHEST * flow), FARTHEST * flow)
        found.append(a)
    return found
