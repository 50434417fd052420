"""Newton's method on branch flows and junction heads, many plants at once.

Every law rises with its flow, so the answer is the least value of a convex
function of the flows that keep the mass balance. Newton gives the direction,
from the junction heads (the global gradient method of Todini and Pilati,
"A gradient algorithm for the analysis of pipe networks", 1988; from memory);
a line search on the slope of that convex function along the direction, which
rises with the step, says how far to go (`linesearch`).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeVar, cast

import numpy as np
import numpy.typing as npt

from loadfirst.physics.equations import Equations, Point, at
from loadfirst.physics.law import Array, Flags
from loadfirst.physics.linesearch import step
from loadfirst.physics.topology import Topology

HEAD_TOLERANCE = 1e-9
"""Largest imbalance of head along a branch, of the head scale. [-]"""
MASS_TOLERANCE = 1e-9
"""Largest imbalance of flow at a junction, of the flow scale. [-]"""
LIMIT = 60
"""Steps after which a plant counts as stalled; the worst seen took about half."""

T = TypeVar("T", Point, "Direction")


@dataclass(frozen=True, eq=False)
class Direction:
    """Where Newton points from a `Point`, and how far off that point is.

    Attributes
    ----------
    head : (B, N) junction heads. [m]
    offered : (B, K) head difference that the nodes offer each branch. [m]
    missing : (B, K) offered less lost. [m]
    change : (B, K) of the flows. [m³/s]
    imbalance : (B,) worst of head and mass, each of its tolerance; at most 1 is balanced, NaN is lost. [-]
    """

    head: Array
    offered: Array
    missing: Array
    change: Array
    imbalance: Array


def direction(equations: Equations, point: Point) -> Direction:
    """Junction heads and change of flow that would balance straight laws."""
    shape = equations.shape
    conductance = 1.0 / np.maximum(point.slope, equations.floor)
    lost = point.loss - equations.ends
    lack = equations.supply - point.flow @ shape.junction
    head = _junction_heads(shape, conductance, lost, lack)
    missing = head @ shape.junction.T - lost
    off = np.abs(missing).max(axis=1, initial=0.0) / (HEAD_TOLERANCE * equations.head_scale[:, 0])
    short = np.abs(lack).max(axis=1, initial=0.0) / (MASS_TOLERANCE * equations.flow_scale[:, 0])
    return Direction(head, missing + point.loss, missing, missing * conductance, np.maximum(off, short))


def _junction_heads(shape: Topology, conductance: Array, lost: Array, lack: Array) -> Array:
    n = len(shape.junctions)
    if n == 0:
        return lack
    if shape.tree:  # flows are known: heads follow along the branches, whatever the slopes
        return lost @ shape.spread.T
    matrix, right = conductance @ shape.pairs, lack + (lost * conductance) @ shape.junction
    if n == 1:
        return right / matrix
    # a singular matrix gives NaN rather than an error in the browser; `imbalance` then is NaN
    solved = np.linalg.solve(matrix.reshape(-1, n, n), right[:, :, None])
    return cast(Array, solved[:, :, 0])


@dataclass(frozen=True, eq=False)
class Balanced:
    """What the iteration ended with, (B, …)."""

    flow: Array
    drop: Array
    head: Array
    iterations: npt.NDArray[np.int64]
    imbalance: Array

    @property
    def converged(self) -> Flags:
        """Within both tolerances, (B,)."""
        return self.imbalance <= 1.0


def balance(equations: Equations) -> Balanced:
    """Iterate until every plant is balanced, lost, or out of steps.

    After a plant is within tolerance it takes one more full step, so that the
    answers of two machines agree far below the tolerance. The better of the
    two points is kept: next to a corner the last step may be the worse one.
    """
    shape = equations.shape
    point = at(equations, _start(equations))
    rows = len(point.flow)
    out = Balanced(
        np.zeros_like(point.flow),
        np.zeros_like(point.drop),
        np.zeros((rows, len(shape.junctions))),
        np.zeros(rows, dtype=np.int64),
        np.full(rows, np.inf),
    )
    open_rows, polished = np.arange(rows), np.zeros(rows, dtype=bool)
    for iteration in range(LIMIT):
        towards = direction(equations, point)
        _keep(out, open_rows, point, towards, iteration)
        good = towards.imbalance <= 1.0
        done = good & polished if not shape.tree else good
        going = ~(done | np.isnan(towards.imbalance))
        polished = polished | good
        if not going.any():
            break
        if not going.all():
            where = np.flatnonzero(going)
            equations, open_rows, polished, good = (
                equations.rows(where),
                open_rows[where],
                polished[where],
                good[where],
            )
            point, towards = _rows(point, where), _rows(towards, where)
        point = step(equations, point, towards.offered, towards.change, good)
    return out


def _start(equations: Equations) -> Array:
    """Flows of about the usual size that keep every balance, (B, K)."""
    shape = equations.shape
    usual = np.repeat(equations.flow_scale, shape.chain.shape[1], axis=1)
    return usual @ shape.loops + equations.supply @ shape.spread


def _keep(
    out: Balanced, rows: npt.NDArray[np.intp], point: Point, towards: Direction, iteration: int
) -> None:
    """Take over each plant's point if it is balanced better than what is kept.

    On the way there the newest is kept, so that a plant that stalls shows its last point.
    """
    news = np.isfinite(towards.imbalance) & (
        (towards.imbalance <= out.imbalance[rows]) | (out.imbalance[rows] > 1.0)
    )
    to = rows[news]
    out.flow[to], out.drop[to], out.head[to] = point.flow[news], point.drop[news], towards.head[news]
    out.imbalance[to] = towards.imbalance[news]
    out.iterations[rows] = iteration


def _rows(values: T, index: npt.NDArray[np.intp]) -> T:
    return type(values)(*(part[index] for part in vars(values).values()))
