"""What has become of a centrifugal pump, recomputed point by point: for the independent checker.

Plain lists, scipy's cubics; the rules themselves are the documented ones. The
best-efficiency point is looked for on 800 equal steps and one parabola, as the
package says it does.
"""

from __future__ import annotations

from math import log10, pi, sqrt
from typing import NamedTuple

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

G = 9.80665


class Points(NamedTuple):
    """A pump at its test's speed [rad/s] and density: flow [m³/s], head [m], power [W], NPSH required [m]."""

    speed: float
    density: float
    flow: list[float]
    head: list[float]
    power: list[float]
    npsh: list[float]


class Best(NamedTuple):
    """The best-efficiency point. [m³/s] [m]"""

    flow: float
    head: float


def best(pump: Points) -> Best:
    """Where the efficiency is greatest."""
    head, power = PchipInterpolator(pump.flow, pump.head), PchipInterpolator(pump.flow, pump.power)
    q = np.linspace(0.0, pump.flow[-1], 801)
    e = pump.density * G * q * head(q) / power(q)
    k = int(np.argmax(e))
    at = float(q[k])
    if 0 < k < 800:
        bend = float(e[k - 1] - 2 * e[k] + e[k + 1])
        at += (0.5 * float(e[k - 1] - e[k + 1]) / bend if bend < 0 else 0.0) * float(q[1])
    return Best(at, float(head(at)))


def trimmed(pump: Points, diameter: float) -> Points:
    """Flow with the diameter, head with its square, power with its cube."""
    return pump._replace(
        flow=[diameter * q for q in pump.flow],
        head=[diameter**2 * h for h in pump.head],
        power=[diameter**3 * p for p in pump.power],
        npsh=[_same_inlet(pump, diameter * q) for q in pump.flow],
    )


def _same_inlet(pump: Points, flow: float) -> float:
    """Required NPSH of the same inlet at another flow; beyond the last point along a line."""
    npsh = PchipInterpolator(pump.flow, pump.npsh)
    beyond = max(flow - pump.flow[-1], 0.0)
    return float(npsh(flow - beyond)) + max(float(npsh.derivative()(pump.flow[-1])), 0.0) * beyond


def turned_wrong(pump: Points) -> Points:
    """Half the head, seven tenths of the flow, half the efficiency."""
    return pump._replace(
        flow=[0.7 * q for q in pump.flow],
        head=[0.5 * h for h in pump.head],
        power=[0.7 * 0.5 / 0.5 * p for p in pump.power],
    )


def blocked(pump: Points, share: float) -> Points:
    """Fewer passages: less flow at the same head; those stopped up take the power of no flow."""
    if share > 0.9:
        return pump._replace(
            flow=[0.02 * q for q in pump.flow],
            head=[0.1 * h for h in pump.head],
            power=[0.4 * pump.power[0] + 0.002 * p for p in pump.power],
        )
    return pump._replace(
        flow=[(1 - share) * q for q in pump.flow],
        power=[(1 - share) * p + share * pump.power[0] for p in pump.power],
    )


def worn(pump: Points, k: float) -> Points:
    """Through the gaps goes k times the root of the head; the impeller's own flow is the greater."""
    head, power = PchipInterpolator(pump.flow, pump.head), PchipInterpolator(pump.flow, pump.power)
    last = pump.flow[-1]
    if pump.head[-1] > 0:
        k = min(k, 0.9 * last / sqrt(pump.head[-1]))
    if any(b > a for a, b in zip(pump.head, pump.head[1:], strict=False)):
        steps = [last * i / 1024 for i in range(1025)]
        roots = [sqrt(float(head(q))) for q in steps]
        steepest = max((b - a) / (last / 1024) for a, b in zip(roots, roots[1:], strict=False))
        k = min(k, 0.9 / steepest) if steepest > 0 else k
    first = float(brentq(lambda q: q - k * sqrt(float(head(q))), 0.0, last, xtol=1e-18, rtol=1e-15))
    inside = [first + (last - first) * q / last for q in pump.flow[:-1]] + [last]
    heads = [float(head(q)) for q in inside]
    flows = [0.0, *[q - k * sqrt(h) for q, h in zip(inside[1:], heads[1:], strict=True)]]
    npsh = PchipInterpolator(pump.flow, pump.npsh)(inside).tolist()
    return pump._replace(flow=flows, head=heads, power=[float(power(q)) for q in inside], npsh=npsh)


def thickened(pump: Points, viscosity: float, speed: float) -> Points:
    """The correction of ANSI/HI 9.6.7, against that for the water of the test. [m²/s] [rad/s]"""
    at = best(pump)
    x = speed / pump.speed
    flow, head = x * at.flow * 3600, x**2 * at.head

    def b(cst: float) -> float:
        value = 16.5 * sqrt(cst) * head**0.0625 / (flow**0.375 * (speed * 30 / pi) ** 0.25)
        return min(max(value, 1.0), 40.0)

    def cq(b: float) -> float:
        return float(2.71 ** (-0.165 * log10(b) ** 3.15))

    def ce(b: float) -> float:
        return float(b ** (-0.0547 * b**0.69))

    thick, thin = b(min(max(viscosity * 1e6, 1.0), 4000.0)), b(1.0)
    if cq(thick) >= cq(thin):
        return pump
    flow_factor, efficiency_factor = cq(thick) / cq(thin), ce(thick) / ce(thin)
    required = x**2 * float(PchipInterpolator(pump.flow, pump.npsh)(at.flow))
    shape = 27_400 * required / (flow**0.667 * (speed * 30 / pi) ** 1.33)
    more = (1 + (1 / cq(thick) - 1) * shape) / (1 + (1 / cq(thin) - 1) * shape)
    factors = []
    for q in pump.flow:
        part = min(q / at.flow, 1.5) ** 0.75
        factors.append((1 - (1 - cq(thick)) * part) / (1 - (1 - cq(thin)) * part))
    return pump._replace(
        flow=[flow_factor * q for q in pump.flow],
        head=[c * h for c, h in zip(factors, pump.head, strict=True)],
        power=[flow_factor * c / efficiency_factor * p for c, p in zip(factors, pump.power, strict=True)],
        npsh=[more * n for n in pump.npsh],
    )


def gassed(pump: Points, share: float) -> Points:
    """Half the head is gone at 6 % of gas; of the power about a third stays as churning."""
    left = 1 / (1 + (share / 0.06) ** 4)
    return pump._replace(
        flow=[(1 - share) * q for q in pump.flow],
        head=[(1 - share) * left * h for h in pump.head],
        power=[(1 - share) * (0.35 + 0.65 * left) * p for p in pump.power],
    )


class Fate(NamedTuple):
    """Sizes of what has become of a pump: shares, a kinematic viscosity [m²/s], a speed [rad/s]."""

    diameter: float
    wrong: bool
    blocked: float
    wear: float
    viscosity: float
    speed: float
    gas: float


def become(pump: Points, fate: Fate) -> Points:
    """All of it, in the order in which it meets the liquid."""
    if fate.diameter != 1:
        pump = trimmed(pump, fate.diameter)
    whole = best(pump)
    if fate.wrong:
        pump = turned_wrong(pump)
    if fate.blocked > 0:
        pump = blocked(pump, fate.blocked)
    if fate.wear > 0 and fate.blocked <= 0.9:
        pump = worn(pump, fate.wear * whole.flow / sqrt(whole.head))
    if fate.viscosity > 0:
        pump = thickened(pump, fate.viscosity, fate.speed)
    return gassed(pump, fate.gas) if fate.gas > 0 else pump
