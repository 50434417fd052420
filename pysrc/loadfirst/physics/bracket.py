"""Where a rising answer crosses nought, for many plants at once.

False position with the Illinois rule (the end that stays put is given half its
weight), and every third step a bisection, so that a flat piece or a leap
cannot hold it up. An answer that leaps over nought ends at the leap.

Sources
-------
M. Dowell and P. Jarratt, "A modified regula falsi method for computing the root
of an equation", BIT 11 (1971); from memory. Compared with scipy's `brentq`.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import Array

STEPS = 120  # a third of them bisections: more than the bracket has digits
NARROW = 1e-14  # [-] of the first bracket


def rising_root(
    miss: Callable[[Array], Array],
    low: npt.ArrayLike,
    high: npt.ArrayLike,
    *,
    within: npt.ArrayLike = 0.0,
    ends: tuple[Array, Array] | None = None,
) -> tuple[Array, Array]:
    """Where `miss` is nought between `low` and `high`, each row for itself.

    Parameters
    ----------
    miss : callable
        From an array of the common shape to one of the same shape; never
        falling from `low` to `high`. It is asked for all rows at every step.
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
    start, stop, within = np.broadcast_arrays(*(np.asarray(x, dtype=float) for x in (low, high, within)))
    left, right = start.copy(), stop.copy()
    miss_left, miss_right = (miss(left), miss(right)) if ends is None else (ends[0].copy(), ends[1].copy())
    before = miss_left >= 0
    at, found = np.where(before, left, right), np.where(before, miss_left, miss_right)
    done = before | (miss_right <= 0)
    last = np.zeros(at.shape)  # the side that moved last
    for step in range(STEPS):
        if done.all():
            break
        at = np.where(done, at, _between(left, right, miss_left, miss_right, step))
        here = miss(at)
        found = np.where(done, found, here)
        under, over = ~done & (here < 0), ~done & ~(here < 0)
        miss_right = np.where(over, here, np.where(under & (last < 0), miss_right / 2, miss_right))
        miss_left = np.where(under, here, np.where(over & (last > 0), miss_left / 2, miss_left))
        left, right = np.where(under, at, left), np.where(over, at, right)
        last = np.where(under, -1.0, np.where(over, 1.0, last))
        done = done | (np.abs(here) <= within) | (right - left <= NARROW * (stop - start))
    return at, found


def _between(left: Array, right: Array, miss_left: Array, miss_right: Array, step: int) -> Array:
    """The next point to try: on the chord, or the middle at every third step."""
    rise = miss_right - miss_left
    share = np.where(rise > 0, -miss_left / np.where(rise > 0, rise, 1.0), 0.5)
    if step % 3 == 2:
        share = np.full(left.shape, 0.5)
    return left + np.clip(share, 0.0, 1.0) * (right - left)
