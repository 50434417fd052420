"""A centrifugal pump as its maker measured it: head, power and required NPSH over flow at one speed.

Between the points the curves are monotone cubics (`physics.interpolate`).
What a pump does at another speed, with another liquid and on a motor, is the
business of `physics.machine`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.errors import InputError
from loadfirst.physics.interpolate import Pieces, monotone_slopes, pieces, value
from loadfirst.physics.law import Array
from loadfirst.units import G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

GRID = 800  # steps in the search for the best efficiency, then one parabola


@dataclass(frozen=True, slots=True, eq=False)
class PumpCurve:
    """Points of one pump. Make it with `PumpCurve.from_points`.

    Attributes
    ----------
    speed : float
        Speed of the test. [rad/s]
    density : float
        Density of the liquid of the test. [kg/m³]
    flow, head, power, npsh_required : ndarray (K,)
        The points. [m³/s] [m] [W] [m]
    slopes : ndarray (3, K)
        d/d(flow) of head, power and required NPSH.
    best_efficiency_flow, best_efficiency, best_efficiency_head : float
        The best-efficiency point. [m³/s] [-] [m]
    """

    speed: float
    density: float
    flow: Array
    head: Array
    power: Array
    npsh_required: Array
    slopes: Array = field(init=False)
    _curves: Pieces = field(init=False, repr=False)
    best_efficiency_flow: float = field(init=False)
    best_efficiency: float = field(init=False)
    best_efficiency_head: float = field(init=False)

    @classmethod
    def from_points(
        cls,
        speed: float,
        flow: ArrayLike,
        head: ArrayLike,
        npsh_required: ArrayLike,
        *,
        efficiency: ArrayLike | None = None,
        power: ArrayLike | None = None,
        density: float = 998.2,
    ) -> PumpCurve:
        """A pump from at least three points; give either `efficiency` or `power`.

        Parameters
        ----------
        speed : float
            Above 0. [rad/s]
        flow : K numbers
            From 0, rising. [m³/s]
        head : K numbers
            Above 0 at no flow, never below 0; see `one_rise`. [m]
        npsh_required : K numbers
            NPSH at which 3 % of the head is lost, not negative. [m]
        efficiency : K numbers
            From 0 to 1; 0 where it is not known (at no flow). [-]
        power : K numbers
            Shaft power, above 0, at least the hydraulic power. [W]
        density : float
            Of the liquid of the test. [kg/m³]

        Raises
        ------
        InputError
            With rule ``points`` when the points are no such curve.
        """
        q, h, n = (np.array(points, dtype=float) for points in (flow, head, npsh_required))
        if (power is None) == (efficiency is None):
            raise InputError("power", None, "given, or else the efficiency, not both", rule="together")
        same = len(q) == len(h) == len(n)
        rising = len(q) >= 3 and q[0] == 0 and (np.diff(q) > 0).all()
        falling = same and h[0] > 0 and (h >= 0).all() and one_rise(h)
        _check("flow", q, rising, "three or more, from 0 upward")
        _check("head", h, falling, "falling in the end and rising but once, one per flow")
        _check("npsh_required", n, same and (n >= 0).all(), "not negative, one per flow")
        if efficiency is not None:
            e = np.array(efficiency, dtype=float)
            good = len(e) == len(q) and (e >= 0).all() and (e <= 1).all()
            _check("efficiency", e, good, "from 0 to 1, one per flow")
            p = power_from_efficiency(q, h, e, density)
        else:
            p = np.array(power, dtype=float)
            _check("power", p, len(p) == len(q) and (p > 0).all(), "above 0, one per flow")
        given = density * G * q * h
        _check("power", p, (p >= given * (1 - 1e-9)).all(), "at least what the liquid is given")
        return cls(speed, density, q, h, p, n)

    def __post_init__(self) -> None:
        made = np.stack([monotone_slopes(self.flow, y) for y in (self.head, self.power, self.npsh_required)])
        object.__setattr__(self, "slopes", made)
        object.__setattr__(self, "_curves", self._pieces())
        for name, found in zip(("flow", "", "head"), self._best(), strict=True):
            object.__setattr__(self, "best_efficiency" + ("_" + name if name else ""), found)

    def at(self, flow: ArrayLike) -> tuple[Array, Array, Array]:
        """Head [m], shaft power [W] and required NPSH [m] at flows within the points, at the test's speed."""
        q = np.clip(np.asarray(flow, dtype=float), 0.0, self.last_flow).reshape(-1, 1)
        row, into = self._curves.find(q)
        head, power, npsh = (value(row, into, k).reshape(np.shape(flow)) for k in range(3))
        return head, power, npsh

    def _pieces(self) -> Pieces:
        values = np.stack([self.head, self.power, self.npsh_required])[:, None, None]
        last, ends = np.array([[len(self.flow) - 1]]), np.zeros((3, 1, 1, 2))
        return pieces(self.flow[None, None], last, values, self.slopes[:, None, None], ends, ends)

    def _best(self) -> tuple[float, float, float]:
        """Flow, efficiency and head of the best-efficiency point."""
        q = np.linspace(0.0, self.last_flow, GRID + 1)
        head, power, _ = self.at(q)
        e = self.density * G * q * head / power
        k = int(np.argmax(e))
        if 0 < k < GRID:
            bend = e[k - 1] - 2 * e[k] + e[k + 1]
            shift = 0.5 * (e[k - 1] - e[k + 1]) / bend if bend < 0 else 0.0
            q[k] += shift * (q[1] - q[0])
        best_head, best_power, _ = (float(y[0]) for y in self.at(q[k : k + 1]))
        return float(q[k]), self.density * G * float(q[k]) * best_head / best_power, best_head

    @property
    def shut_off_head(self) -> float:
        """Head at no flow. [m]"""
        return float(self.head[0])

    @property
    def last_flow(self) -> float:
        """Flow of the last point. [m³/s]"""
        return float(self.flow[-1])

    @property
    def specific_speed(self) -> float:
        """Specific speed nq at the best-efficiency point. [1/min, m³/s, m]"""
        return specific_speed(self.speed, self.best_efficiency_flow, self.best_efficiency_head)


def one_rise(head: ArrayLike) -> bool:
    """Whether heads over flow are those of one pump: falling, but for one stretch before the last.

    Rising from no flow the curve droops towards shut-off; rising after a fall it has a saddle.
    """
    rises = np.diff(np.asarray(head, dtype=float)) > 0
    starts = np.diff(rises.astype(int), prepend=0) > 0
    return bool(starts.sum() <= 1 and not rises[-1])


def levelled(curve: PumpCurve) -> PumpCurve:
    """The same pump with its head held level where it would rise with the flow."""
    if (np.diff(curve.head) <= 0).all():
        return curve
    return replace(curve, head=np.minimum.accumulate(curve.head))


def specific_speed(speed: float, flow: float, head: float) -> float:
    """Specific speed nq = n √Q / H^0.75 of a stage; with NPSH for the head, suction specific speed.

    Parameters
    ----------
    speed : float
        [rad/s]
    flow, head : float
        At the best-efficiency point, head above 0. [m³/s] [m]

    Returns
    -------
    nq : float
        In the usual mixed units. [1/min, m³/s, m]

    Sources
    -------
    ISO 9906, type number K = 2π n √Q / (g H)^0.75; nq drops 2π and g.
    """
    return speed * 30 / math.pi * math.sqrt(flow) / math.pow(head, 0.75)


def power_from_efficiency(flow: Array, head: Array, efficiency: Array, density: float) -> Array:
    """Shaft power P = ρ g Q H / η, also where that is nought by nought.

    At no flow, and at an end where head or efficiency is 0, the power goes on
    in a straight line from the two nearest points that have one; it stays
    between a quarter and four times the nearest (common practice, no source).

    Parameters
    ----------
    flow, head, efficiency : ndarray (K,)
        [m³/s] [m] [-]
    density : float
        [kg/m³]

    Returns
    -------
    power : ndarray (K,), above 0 [W]

    Raises
    ------
    InputError
        When fewer than two points have a power.
    """
    known = flow * head * efficiency > 0
    if known.sum() < 2:
        raise InputError("efficiency", efficiency.tolist(), "above 0 at two flows or more", rule="points")
    q = flow[known]
    p = density * G * q * head[known] / efficiency[known]
    out = np.interp(flow, q, p)
    for side, (near, next_) in ((flow < q[0], (0, 1)), (flow > q[-1], (-1, -2))):
        line = p[near] + (p[near] - p[next_]) / (q[near] - q[next_]) * (flow - q[near])
        out = np.where(side, np.clip(line, p[near] / 4, p[near] * 4), out)
    return out


def _check(where: str, got: Array, good: bool | np.bool_, allowed: str) -> None:
    """Refuse points that are no pump's, and anything not a number."""
    if not (good and np.isfinite(got).all()):
        raise InputError(where, got.tolist(), allowed, rule="points")
