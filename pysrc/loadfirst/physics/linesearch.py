"""How far to go along Newton's direction: the zero of a slope that rises with the step.

Along q + t dq the convex function behind the network has the derivative
Σ (loss(q + t dq) - offered) dq. It is negative at t = 0 and rises with t, so
its zero can be bracketed; no merit function and no step-size rule is needed.
Corners of the laws (a check valve's seat) are tried before false position,
because the zero often lies exactly there.
"""

from __future__ import annotations

import numpy as np

from loadfirst.physics.equations import Equations, Point, at
from loadfirst.physics.law import Array, Flags

CLOSE_ENOUGH = 0.5
"""Share of the first derivative that may be left. [-]"""
TRIALS = 30


def step(equations: Equations, point: Point, offered: Array, change: Array, full: Flags) -> Point:
    """The next point.

    Parameters
    ----------
    equations : the network.
    point : where it stands.
    offered : (B, K) head difference that Newton's nodes offer each branch. [m]
    change : (B, K) Newton's change of the flows. [m³/s]
    full : (B,) plants that take the whole step unseen: they are balanced already.

    Returns
    -------
    Point, evaluated.
    """
    tried = at(equations, point.flow + change)
    if full.all():
        return tried
    first = _slope(point, offered, change)
    slope = _slope(tried, offered, change)
    search = (slope > -CLOSE_ENOUGH * first) & (first < 0.0) & ~full
    if not search.any():
        return tried
    if search.all():
        return _search(equations, point, offered, change, slope)
    some = np.flatnonzero(search)
    found = _search(equations.rows(some), point.rows(some), offered[some], change[some], slope[some])
    for whole, piece in zip(tried, found, strict=True):
        whole[some] = piece
    return tried


def _slope(point: Point, offered: Array, change: Array) -> Array:
    """The derivative along the direction, (B,)."""
    return np.asarray(((point.loss - offered) * change).sum(axis=1))


def _search(equations: Equations, point: Point, offered: Array, change: Array, at_full: Array) -> Point:
    """Bracket the zero in plants where the full step goes too far; `at_full` is the slope there, above 0."""
    low, high = np.zeros(len(at_full)), np.ones(len(at_full))
    at_low, at_high = _slope(point, offered, change), at_full
    enough, corners = -CLOSE_ENOUGH * at_low, equations.corners(point.flow, change)
    t, search = high, np.ones(len(at_full), dtype=bool)
    for _ in range(TRIALS):
        t = np.where(search, _next(corners, low, high, at_low, at_high), t)
        tried = at(equations, point.flow + t[:, None] * change)
        slope = _slope(tried, offered, change)
        search = search & (np.abs(slope) > enough)
        if not search.any():
            break
        over = slope > 0.0  # Illinois: the end that stays is halved
        at_high, at_low = np.where(over, slope, at_high / 2), np.where(over, at_low / 2, slope)
        high, low = np.where(over, t, high), np.where(over, low, t)
    return tried


def _next(corners: Array, low: Array, high: Array, at_low: Array, at_high: Array) -> Array:
    """The first corner inside the bracket; where there is none, false position."""
    inside = np.where((corners > low[:, None]) & (corners < high[:, None]), corners, np.inf).min(axis=1)
    rise = np.where(at_high > at_low, at_high - at_low, 1.0)
    return np.where(np.isfinite(inside), inside, low - at_low * (high - low) / rise)
