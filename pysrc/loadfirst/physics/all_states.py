"""Every flow at which a pump's head equals what the load asks, and which of them last.

A falling pump curve meets a load that never falls once. One that droops towards
no flow, or has a saddle, can be met several times; which state is there then
depends on what went before. So none may be lost.

Excess head, pump less load, is looked at on a fine axis. Between two of its
points of opposite sign lies a crossing. Where its size has a least value without
a change of sign, the curves come near each other: the least value is sought, and
either the curves do cross there, twice, or touch, or neither. Then each crossing
is closed in on between its bounds (Chandrupatla's method: inverse quadratic steps
while they are safe, else halving). A pair of crossings is lost only where the
excess has two turns within one step of the axis.

A state lasts (is statically stable) where the load rises more steeply than the
pump: a little more flow finds too little head and falls back, a little less finds
too much. That is where the excess goes from positive to negative. Where the curves
only touch, it comes back from one side and runs away on the other.

Sources
-------
Static stability by the slopes of the two curves: handbooks of pumps and fans, for
instance C. Pfleiderer, "Die Kreiselpumpen" (from memory). T. R. Chandrupatla, "A
new hybrid quadratic/bisection algorithm", Adv. Eng. Software 28 (1997), from
memory; the answers are compared with roots known beforehand.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from loadfirst.physics.interpolate import monotone_slopes
from loadfirst.physics.law import Array, Flags, column
from loadfirst.physics.root import close_in, least

HeadOver = Callable[[Array], Array]
"""Heads (B, K) [m] at flows (B, K) [m³/s]; continuous, finite."""

POINTS = 400  # of the axis
TOUCH = 1e-9  # [-] of the head scale: nearer than this the curves touch


@dataclass(frozen=True, slots=True)
class States:
    """All states of B plants, S the most that one of them has.

    Attributes
    ----------
    flow, head : ndarray (B, S)
        Rising flow; beyond `count` filled up with 0. [m³/s] [m]
    stable : ndarray of bool (B, S)
        Whether it lasts.
    tangent : ndarray of bool (B, S)
        Where the curves touch without crossing; such a state does not last.
    count : ndarray of int (B,)
    held : ndarray of bool (B,)
        At the low end of the axis the load asks more than the pump gives: with
        a check valve there, holding it shut is one more state that lasts.
    """

    flow: Array
    head: Array
    stable: Flags
    tangent: Flags
    count: npt.NDArray[np.intp]
    held: Flags


def all_states(
    pump: HeadOver, load: HeadOver, low: npt.ArrayLike, high: npt.ArrayLike, *, points: int = POINTS
) -> States:
    """Where pump and load agree between two flows.

    Parameters
    ----------
    pump, load : callables
        Head added and head asked, for all plants at once.
    low, high : (B,) or number
        Ends of the search, `low` < `high`; both belong to it. [m³/s]
    points : int
        Of the axis on which crossings are looked for, 3 or more.

    Returns
    -------
    States
        Flows within 1e-10 of the axis' length, where they cross.
    """
    start, end = column(low).reshape(-1, 1), column(high).reshape(-1, 1)
    flow = start + (end - start) * np.linspace(0, 1, points)
    flow, given, asked = np.broadcast_arrays(flow, pump(flow), load(flow))
    scale = np.maximum(np.abs(given).max(axis=1), np.abs(asked).max(axis=1))

    def excess(at: Array) -> Array:
        return pump(at) - load(at)

    flow, gap, touching = _turns(excess, flow, given - asked, TOUCH * scale)
    above = _signs(gap, touching)
    crossing = np.zeros_like(touching)
    crossing[:, 1:] = (above[:, 1:] != above[:, :-1]) & ~touching[:, 1:]
    found, order, count = _packed(crossing | touching)
    before = np.maximum(order - 1, 0)
    pick = np.take_along_axis
    ends = (pick(flow, before, 1), pick(flow, order, 1)), (pick(gap, before, 1), pick(gap, order, 1))
    touches = pick(touching, order, 1) & found
    at = np.where(touches, ends[0][1], close_in(excess, *ends))
    return States(
        flow=np.where(found, at, 0.0),
        head=np.where(found, pump(at), 0.0),
        stable=pick(above, before, 1) & found & ~touches,
        tangent=touches,
        count=count,
        held=~above[:, 0],
    )


def states_of_samples(flow: npt.ArrayLike, pump: npt.ArrayLike, load: npt.ArrayLike) -> States:
    """All states of curves that are known at points only.

    Parameters
    ----------
    flow : (F,) or (B, F)
        Rising, fine enough to follow every bend, three points or more. [m³/s]
    pump, load : (F,) or (B, F)
        Head at those flows. [m]

    Returns
    -------
    States
        Of the smooth curves through the points (`physics.interpolate`).
    """
    x, y, z = np.broadcast_arrays(column(flow), column(pump), column(load))

    def through(heads: Array) -> HeadOver:
        slopes = monotone_slopes(x, heads)
        return lambda at: _cubic(x, heads, slopes, at)

    return all_states(through(y), through(z), x[:, 0], x[:, -1], points=max(POINTS, 2 * x.shape[1] - 1))


def settle(states: States, flow: npt.ArrayLike) -> Array:
    """Where a plant ends that is let go at a flow.

    Parameters
    ----------
    states : States
    flow : (B,) or number
        Where it was before. [m³/s]

    Returns
    -------
    settled : ndarray (B,)
        The state that lasts on this side of the nearest states that do not;
        NaN where nothing does: the flow leaves the axis, or the check valve shuts.

    Notes
    -----
    Passing a touch counts as passing: any disturbance carries it through.
    """
    before = np.broadcast_to(np.asarray(flow, dtype=float), states.count.shape)[:, None]
    real = np.arange(states.flow.shape[1]) < states.count[:, None]
    unstable = real & ~states.stable & ~states.tangent
    bound_low = np.where(unstable & (states.flow <= before), states.flow, -np.inf)
    bound_high = np.where(unstable & (states.flow > before), states.flow, np.inf)
    low, high = bound_low.max(axis=1, initial=-np.inf), bound_high.min(axis=1, initial=np.inf)
    within = states.stable & (states.flow > low[:, None]) & (states.flow < high[:, None])
    settled = np.where(within, states.flow, -np.inf).max(axis=1, initial=-np.inf)
    return np.asarray(np.where(within.any(axis=1), settled, np.nan))


def _turns(excess: HeadOver, flow: Array, gap: Array, near: Array) -> tuple[Array, Array, Flags]:
    """The axis with its points moved to where the curves come nearest, and where they touch there."""
    size = np.abs(gap)
    inner = (size[:, 1:-1] < size[:, :-2]) & (size[:, 1:-1] <= size[:, 2:])
    same = (gap[:, 1:-1] * gap[:, :-2] >= 0) & (gap[:, 1:-1] * gap[:, 2:] >= 0)
    turning = np.zeros_like(gap, dtype=bool)
    turning[:, 1:-1] = inner & same
    found, order, _ = _packed(turning)
    if not found.any():
        return flow, gap, turning
    order = np.where(found, order, 1)
    left, right = np.take_along_axis(flow, order - 1, 1), np.take_along_axis(flow, order + 1, 1)
    side = np.where(np.take_along_axis(gap, order - 1, 1) >= 0, 1.0, -1.0)
    at = least(lambda q: side * excess(q), left, right)
    value = excess(at)
    flow, gap, touching = flow.copy(), gap.copy(), np.zeros_like(turning)
    rows = np.broadcast_to(np.arange(len(flow))[:, None], order.shape)
    where = rows[found], order[found]
    flow[where], gap[where] = at[found], value[found]
    touching[where] = (np.abs(value) <= near[:, None])[found]
    return flow, gap, touching


def _signs(gap: Array, touching: Flags) -> Flags:
    """Where the pump gives more than is asked; a touch takes the side it comes from, a nought counts as more.

    A nought at an end counts against its neighbour, so that it is a crossing.
    """
    above = gap >= 0
    above[:, 1:-1] = np.where(touching[:, 1:-1], above[:, :-2], above[:, 1:-1])
    for end, neighbour in ((0, 1), (-1, -2)):
        above[:, end] = np.where(gap[:, end] == 0, ~above[:, neighbour], above[:, end])
    return above


def _packed(flags: Flags) -> tuple[Flags, npt.NDArray[np.intp], npt.NDArray[np.intp]]:
    """Positions of the flags of each row, packed to the left: which are real, where, how many."""
    count = flags.sum(axis=1)
    most = int(count.max(initial=0))
    order = np.argsort(~flags, axis=1, kind="stable")[:, :most]
    return np.arange(most) < count[:, None], order, count


def _cubic(x: Array, y: Array, slopes: Array, at: Array) -> Array:
    """Values of the cubics through points (B, F) at (B, K) within them."""
    piece = np.stack([np.searchsorted(row, q, side="right") for row, q in zip(x, at, strict=True)])
    k = np.clip(piece - 1, 0, x.shape[1] - 2)

    def pick(values: Array, index: npt.NDArray[np.intp]) -> Array:
        return np.take_along_axis(values, index, 1)

    step = pick(x, k + 1) - pick(x, k)
    t = (at - pick(x, k)) / step
    a, b = pick(y, k), pick(y, k + 1)
    curved = t * (1 - t) ** 2 * pick(slopes, k) - t**2 * (1 - t) * pick(slopes, k + 1)
    return np.asarray(a + (b - a) * t**2 * (3 - 2 * t) + step * curved)
