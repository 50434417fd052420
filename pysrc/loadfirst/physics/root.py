"""Closing in on roots and least values of many functions of one variable at once.

Sources
-------
T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the
zero of a nonlinear function without using derivatives", Adv. Eng. Software 28
(1997); golden section: J. Kiefer, Proc. AMS 4 (1953). Both from memory.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np

from loadfirst.physics.law import Array

WITHIN = 1e-12  # [-] of the bounds' distance, and of the numbers themselves
STEPS = 90  # at most; some ten are usual, fifty are halvings only
GOLDEN = (math.sqrt(5) - 1) / 2
SECTIONS = 40  # a bracket shrinks to 4e-9; the turn itself is flat to 1e-8


def close_in(
    function: Callable[[Array], Array], bounds: tuple[Array, Array], values: tuple[Array, Array]
) -> Array:
    """A root between each pair of bounds.

    Parameters
    ----------
    function : callable
        Same shape in and out; continuous.
    bounds : two ndarrays
        Left and right.
    values : two ndarrays
        The function there, of opposite signs or nought; where they are not,
        the answer is some number between the bounds.

    Returns
    -------
    root : ndarray
        Within 1e-12 of the distance of its bounds.
    """
    (a, b), (fa, fb) = bounds, values
    a, fa, b, fb = (x.copy() for x in (b, fb, a, fa))  # b is the older bound
    c, fc = b, fb
    close = WITHIN * np.abs(bounds[1] - bounds[0])
    t = np.full(a.shape, 0.5)
    for _ in range(STEPS):
        x = a + t * (b - a)
        fx = function(x)
        same = np.sign(fx) == np.sign(fa)
        c, fc = np.where(same, a, b), np.where(same, fa, fb)
        b, fb = np.where(same, b, a), np.where(same, fb, fa)
        a, fa = x, fx
        best = np.where(np.abs(fa) < np.abs(fb), a, b)
        room = (close + 4e-16 * np.abs(best)) / np.maximum(np.abs(b - a), 1e-300)
        if ((room > 0.5) | (fa == 0) | (fb == 0)).all():
            break
        t = np.clip(_step(a, b, c, fa, fb, fc), np.minimum(room, 0.5), 1 - np.minimum(room, 0.5))
    return np.where(fa == 0, a, np.where(fb == 0, b, best))


def _step(a: Array, b: Array, c: Array, fa: Array, fb: Array, fc: Array) -> Array:
    """Where to look next between a (0) and b (1): inverse quadratic where that is safe, else the middle."""
    with np.errstate(divide="ignore", invalid="ignore"):
        xi, phi = (a - b) / (c - b), (fa - fb) / (fc - fb)
        safe = (phi**2 < xi) & ((1 - phi) ** 2 < 1 - xi)
        quadratic = fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
    return np.where(safe & np.isfinite(quadratic), quadratic, 0.5)


def least(function: Callable[[Array], Array], left: Array, right: Array) -> Array:
    """Where a function with one turn between two bounds is least, to the root of the rounding there."""
    for _ in range(SECTIONS):
        width = GOLDEN * (right - left)
        inner_left, inner_right = right - width, left + width
        lower = function(inner_left) <= function(inner_right)
        left, right = np.where(lower, left, inner_left), np.where(lower, inner_right, right)
    return np.asarray((left + right) / 2)
