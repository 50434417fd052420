"""Closing in on the roots of many functions of one variable at once.

Sources
-------
T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the
zero of a nonlinear function without using derivatives", Adv. Eng. Software 28
(1997), from memory. Compared with scipy's `brentq`.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array, Index

if TYPE_CHECKING:  # costs a page that starts more than it says
    from numpy.typing import ArrayLike

WITHIN = 1e-14  # [-] of the bounds' distance, beside the last digits of the numbers themselves
STEPS = 90  # at most; some ten are usual, fifty are halvings only


def rising_root(
    miss: Callable[[Array], Array],
    low: ArrayLike,
    high: ArrayLike,
    *,
    within: ArrayLike = 0.0,
    ends: tuple[Array, Array] | None = None,
) -> tuple[Array, Array]:
    """Where `miss`, which never falls, is nought between `low` and `high`, each row for itself.

    Parameters
    ----------
    miss : callable
        From an array of the common shape to one of the same shape; never
        falling from `low` to `high`. It is asked for all rows at every step.
        Where it leaps over nought the answer is the leap.
    low, high : array_like
        The ends, `low` not above `high`.
    within : array_like
        How far from nought is near enough, in the unit of `miss`.
    ends : two ndarrays
        `miss` at the ends, where it is known already.

    Returns
    -------
    at : ndarray
        The root; `low` where `miss` is above nought everywhere, `high` where
        it is below everywhere.
    left : ndarray
        `miss` there: within `within`, unless it is an end or a leap.
    """
    start, stop, enough = np.broadcast_arrays(*(np.asarray(x, dtype=float) for x in (low, high, within)))
    first, last = (miss(start.copy()), miss(stop.copy())) if ends is None else ends
    before = first >= 0
    behind = ~before & (last <= 0)
    left, right = np.where(behind, stop, start), np.where(before, start, stop)
    values = np.where(before, first, np.where(behind, last, first)), np.where(before, first, last)
    return _closed_in(miss, (left, right), values, enough)


class Remembered:
    """A costly function of many rows, asked again only for the rows whose argument is a new one.

    `rising_root` asks for all rows until the last is found, those found long since at the same place.

    Parameters
    ----------
    function : callable
        From the numbers of some rows and their arguments, both (N,), to its values there.
    rows : int
        How many rows there are altogether.
    """

    def __init__(self, function: Callable[[Index, Array], Array], rows: int) -> None:
        self._function = function
        self._known: list[dict[float, float]] = [{} for _ in range(rows)]

    def keep(self, at: Array, values: Array) -> None:
        """Remember what is known already of all rows, both (rows,)."""
        for known, x, found in zip(self._known, at.tolist(), values.tolist(), strict=True):
            known[x] = found

    def __call__(self, at: Array) -> Array:
        """Values for all rows, `at` (rows,)."""
        asked = at.tolist()
        new = [row for row, x in enumerate(asked) if x not in self._known[row]]
        if new:
            rows = np.array(new)
            for row, found in zip(new, self._function(rows, at[rows]).tolist(), strict=True):
                self._known[row][asked[row]] = found
        return np.array([self._known[row][x] for row, x in enumerate(asked)])


def _closed_in(
    function: Callable[[Array], Array],
    bounds: tuple[Array, Array],
    values: tuple[Array, Array],
    within: Array,
) -> tuple[Array, Array]:
    """The best points found and the function there; bounds that coincide are their own answer."""
    (b, a), (fb, fa) = bounds, values  # b is the older bound
    c, fc = b, fb
    close = WITHIN * np.abs(a - b)
    t = np.full(a.shape, 0.5)
    for _ in range(STEPS):
        nearer = np.abs(fa) < np.abs(fb)
        best, left = np.where(nearer, a, b), np.where(nearer, fa, fb)
        room = (close + 4e-16 * np.abs(best)) / np.maximum(np.abs(b - a), 1e-300)
        done = (room > 0.5) | (np.abs(left) <= within) | (a == b)
        if done.all():
            break
        x = np.where(done, best, a + np.clip(t, np.minimum(room, 0.5), 1 - np.minimum(room, 0.5)) * (b - a))
        fx = function(x)
        same = np.sign(fx) == np.sign(fa)
        c, fc = np.where(same, a, b), np.where(same, fa, fb)
        b, fb = np.where(same, b, a), np.where(same, fb, fa)
        a, fa = x, fx
        t = _step(a, b, c, fa, fb, fc)
    return best, left


def _step(a: Array, b: Array, c: Array, fa: Array, fb: Array, fc: Array) -> Array:
    """Where to look next between a (0) and b (1): inverse quadratic where that is safe, else the middle."""
    with np.errstate(divide="ignore", invalid="ignore"):
        xi, phi = (a - b) / (c - b), (fa - fb) / (fc - fb)
        safe = (phi**2 < xi) & ((1 - phi) ** 2 < 1 - xi)
        quadratic = fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
    return np.where(safe & np.isfinite(quadratic), quadratic, 0.5)
