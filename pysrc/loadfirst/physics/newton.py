"""Newton's method on branch flows and junction heads, many plants at once.

Every law rises with its flow, so the answer is the least value of a convex
function of the flows that keep the mass balance. Newton gives the direction,
from the junction heads (the global gradient method of Todini and Pilati,
"A gradient algorithm for the analysis of pipe networks", 1988; from memory);
a line search on the slope of that convex function along the direction, which
rises with the step, says how far to go (`linesearch`).
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from loadfirst.physics.equations import Equations, Point, at
from loadfirst.physics.law import Array, Counts, Flags, Index
from loadfirst.physics.linesearch import step
from loadfirst.physics.topology import Topology

HEAD_TOLERANCE = 1e-9
"""Largest imbalance of head along a branch, of the head scale. [-]"""
MASS_TOLERANCE = 1e-9
"""Largest imbalance of flow at a junction, of the flow scale. [-]"""
FLOOR = 1e-5
"""Least slope in the matrix, of head scale over flow scale; never in a law. [-]"""
REFINEMENTS = 6
"""Most rounds of refinement of one linear solve."""
LIMIT = 60
"""Steps after which a plant counts as stalled; the worst seen took about half."""

PATIENCE, EASING = 15, 0.5
"""Steps after which the least slope of the matrix is halved at each: it shortens them between flat laws."""

STRAIGHT = 1e-6
"""Change of a flow, of itself, along which every law is straight to 1e-12. [-]"""


class Direction(NamedTuple):
    """Where Newton points from a `Point`, and how far off that point is.

    Attributes
    ----------
    head : (B, N) junction heads. [m]
    offered : (B, K) head difference that the nodes offer each branch. [m]
    change : (B, K) of the flows. [m³/s]
    imbalance : (B,) worst of head and mass, each of its tolerance; at most 1 is balanced, NaN is lost. [-]
    """

    head: Array
    offered: Array
    change: Array
    imbalance: Array

    def rows(self, index: Index) -> Direction:
        """The same of some plants only."""
        return Direction(*(part[index] for part in self))


def direction(equations: Equations, point: Point, ease: float = 1.0) -> Direction:
    """Junction heads and change of flow that would balance straight laws, with `ease` of the least slope."""
    shape = equations.shape
    lost = point.loss - equations.ends
    if not shape.junctions:
        conductance = 1.0 / np.maximum(point.slope, equations.floor)
        off = np.abs(lost).max(axis=1) / (HEAD_TOLERANCE * equations.head_scale[:, 0])
        change = _along_parabola(point.flow, -lost * conductance)
        return Direction(np.empty((len(lost), 0)), equations.ends, change, off)
    lack = equations.supply - point.flow @ shape.junction
    if shape.tree:  # the balances fix the flows: heads follow along the branches, whatever the slopes
        head = lost @ shape.spread.T
        change = np.zeros_like(lost)
    else:
        size = np.maximum(np.abs(point.flow), equations.flow_scale)  # far above the scale less is steep
        conductance = 1.0 / np.maximum(point.slope, ease * equations.floor * equations.flow_scale / size)
        small = 0.1 * HEAD_TOLERANCE * equations.head_scale
        head, change = _schur(shape, conductance, lost, lack, small)
    missing = head @ shape.junction.T - lost
    off = np.abs(missing).max(axis=1) / (HEAD_TOLERANCE * equations.head_scale[:, 0])
    short = np.abs(lack).max(axis=1) / (MASS_TOLERANCE * equations.flow_scale[:, 0])
    return Direction(head, missing + point.loss, change, np.maximum(off, short))


def _along_parabola(flow: Array, change: Array) -> Array:
    """Newton's change, corrected for laws that are nearly straight over flow squared.

    Only for branches that share no junction: there nothing else depends on the
    change. From q by Newton's d, the same tangent over q|q| leads to
    q² + 2 |q| d in place of (q + d)². Second-order exact like Newton's, and
    exact where all drops go with the square.
    """
    size = np.abs(flow)
    square = flow * (flow + 2.0 * change)
    return np.where(square > 0.0, change * (2.0 * size / (np.sqrt(np.abs(square)) + size)), change)


def _schur(
    shape: Topology, conductance: Array, lost: Array, lack: Array, small: Array
) -> tuple[Array, Array]:
    """Junction heads (B, N) and change of flow (B, K) that balance straight laws.

    Where two branches in a row conduct very differently (a flat pump on a line
    as thin as a needle), the flow of the one is noise in the heads of the
    other. Refining with the balance that is left puts that right; it ends when
    the heads change by less than `small`, mostly after one round.
    """
    n = len(shape.junctions)
    inverse = _inverse((conductance @ shape.pairs).reshape(-1, n, n))
    head = _times(inverse, lack + (lost * conductance) @ shape.junction)
    change = (head @ shape.junction.T - lost) * conductance
    for _ in range(REFINEMENTS):
        more = _times(inverse, lack - change @ shape.junction)
        head, change = head + more, change + (more @ shape.junction.T) * conductance
        if not (np.abs(more) > small).any():
            break
    return head, change


def _times(matrix: Array, vector: Array) -> Array:
    return np.asarray((matrix * vector[:, None, :]).sum(axis=2))


def _inverse(matrix: Array) -> Array:
    """Inverses of symmetric matrices (B, N, N); NaN for one that has none, which `imbalance` then shows."""
    try:
        return np.asarray(np.linalg.inv(matrix))
    except np.linalg.LinAlgError:  # in the browser the NaN comes by itself
        if len(matrix) == 1:
            return np.full_like(matrix, np.nan)
        return np.concatenate([_inverse(one[None]) for one in matrix])


class Balanced(NamedTuple):
    """What the iteration ended with, (B, …); `imbalance` as in `Direction`, inf where never balanced."""

    flow: Array
    drop: Array
    head: Array
    iterations: Counts
    imbalance: Array

    @property
    def converged(self) -> Flags:
        """Within both tolerances, (B,)."""
        return self.imbalance <= 1.0


def balance(equations: Equations) -> Balanced:
    """Iterate until every plant is balanced, lost, or out of steps.

    After a plant is within tolerance it takes one more full step, so that the
    answers of two machines agree far below the tolerance. A step so short that
    the laws are straight along it needs no look at where it leads. After
    another the better of the two points is kept: next to a corner the last
    may be the worse one.
    """
    shape = equations.shape
    point = at(equations, _start(equations))
    out = _nothing(point, len(shape.junctions))
    rows, within = np.arange(len(point.flow)), np.zeros(len(point.flow), dtype=bool)
    for iteration in range(LIMIT):
        towards = direction(equations, point, EASING ** max(0, iteration - PATIENCE))
        good, ended = towards.imbalance <= 1.0, within | np.isnan(towards.imbalance)
        if good.any() or ended.any():
            last, short = _last_step(shape, point, towards)
            ended |= good & short
            _keep(out, rows, last, towards, iteration, good)
            _mark_lost(out, rows[np.isnan(towards.imbalance)])
            going = np.flatnonzero(~ended)
            if not len(going):
                return out
            if len(going) < len(rows):
                equations, point, towards = equations.rows(going), point.rows(going), towards.rows(going)
                rows, good = rows[going], good[going]
        point, within = step(equations, point, towards.offered, towards.change, good), good
    _give_up(out, rows, point, direction(equations, point))
    return out


def _last_step(shape: Topology, point: Point, towards: Direction) -> tuple[Point, Flags]:
    """The points one straight step on, where it is short enough; and where it is, (B,)."""
    moved = towards.change @ shape.chain.T
    through = point.flow @ shape.chain.T
    short: Flags = np.asarray((np.abs(moved) <= STRAIGHT * np.abs(through)).all(axis=1))
    part = short[:, None]
    flow = np.where(part, point.flow + towards.change, point.flow)
    drop = np.where(part, point.drop + point.steep * moved, point.drop)
    return point._replace(flow=flow, drop=drop), short


def _start(equations: Equations) -> Array:
    """Flows near those to start from that keep every balance, (B, K)."""
    shape = equations.shape
    return equations.about @ shape.loops + equations.supply @ shape.spread


def _nothing(point: Point, junctions: int) -> Balanced:
    rows = len(point.flow)
    return Balanced(
        flow=np.zeros_like(point.flow),
        drop=np.zeros_like(point.drop),
        head=np.zeros((rows, junctions)),
        iterations=np.zeros(rows, dtype=np.int64),
        imbalance=np.full(rows, np.inf),
    )


def _keep(out: Balanced, rows: Index, point: Point, towards: Direction, iteration: int, good: Flags) -> None:
    """Take over each plant's point if it is within tolerance, and balanced no worse than what is kept."""
    news = good & (towards.imbalance <= out.imbalance[rows])
    to = rows[news]
    out.flow[to], out.drop[to], out.head[to] = point.flow[news], point.drop[news], towards.head[news]
    out.imbalance[to], out.iterations[to] = towards.imbalance[news], iteration


def _mark_lost(out: Balanced, rows: Index) -> None:
    """Plants whose equations gave no number; one that was balanced before stays so."""
    out.imbalance[rows] = np.where(out.imbalance[rows] <= 1.0, out.imbalance[rows], np.nan)


def _give_up(out: Balanced, rows: Index, point: Point, towards: Direction) -> None:
    """Out of steps: show where each plant stands, if it stands anywhere."""
    there = np.isfinite(point.drop).all(axis=1) & np.isfinite(towards.head).all(axis=1)
    to = rows[there]
    out.flow[to], out.drop[to], out.head[to] = point.flow[there], point.drop[there], towards.head[there]
    out.iterations[rows] = LIMIT
