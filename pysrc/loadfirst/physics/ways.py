"""Ways through a station, each with its head over its flow, and every state in which they share a load.

A way is one pump with its check valve, or several in line. Its head may rise with
the flow somewhere; so it is cut into stretches on which it only rises or only
falls. All ways end at the same two nodes: they share one head h, and their flows
add up to that of the load, whose head L(Q) never falls. For one stretch of each
way the flow at a head is one number, held at the ends of the stretch; so

    Σ q(L(Q)) - Q = 0

is one equation in one unknown for each choice of stretches. All curves are tables
of straight lines, so its roots follow exactly, each between two bends; those are
kept at which every way really has the head asked. None is lost but pairs that are
closer than the tables can tell.

Stability
---------
With a column of liquid in each way and in the load, the flows change as the heads
left over push them: dq_i/dt ~ E_i(q_i) - L(Σ q). A state lasts where the matrix
diag(E_i') - L' 11ᵀ has only negative eigenvalues: no disturbance then grows. For
one way that is the rule of the slopes, E' < L'. Two like pumps may run on their
rising stretches against a steep load as far as their sum goes, and still one will
take the flow from the other.

Sources
-------
Static stability by the slopes: handbooks of pumps and fans, for instance C.
Pfleiderer, "Die Kreiselpumpen" (from memory). That two pumps with drooping curves
may not share a load: common practice.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import product
from typing import NamedTuple

import numpy as np

from loadfirst.physics.interpolate import monotone_slopes
from loadfirst.physics.law import Array, Flags

PASSES = 10  # of refining a table: each halves a step
WITHIN = 3e-6  # [-] of the head, or of its scale: near enough for straight lines
FINER = 4  # parts of a step of the load's axis
APART = 1e-4  # [-] of the head scale: a way that is farther from the head asked is not there


class Way(NamedTuple):
    """A table of one way, fine enough for straight lines between its points. (F,) [m³/s] [m]"""

    flow: Array
    head: Array

    @classmethod
    def tabled(
        cls, head: Callable[[Array], Array], flow: Array, span: tuple[float, float], scale: float
    ) -> Way:
        """Points put between those given until straight lines are near enough.

        Parameters
        ----------
        head : (F,) [m³/s] -> (F,) [m], continuous.
        flow : (F,) rising, corners among them. [m³/s]
        span : heads that matter, lowest and highest; outside nothing is refined. [m]
        scale : a large head of these pumps. [m]
        """
        heads = head(flow)
        for _ in range(PASSES):
            ends = np.stack([heads[:-1], heads[1:]])
            matters = (ends.max(axis=0) >= span[0]) & (ends.min(axis=0) <= span[1])
            at = np.flatnonzero(matters)
            between = (flow[at] + flow[at + 1]) / 2
            found = head(between)
            bent = np.abs(found - (heads[at] + heads[at + 1]) / 2) > WITHIN * np.maximum(scale, np.abs(found))
            if not bent.any():
                break
            where = at[bent] + 1
            flow, heads = np.insert(flow, where, between[bent]), np.insert(heads, where, found[bent])
        return cls(flow, heads)

    def stretches(self) -> list[Way]:
        """Its parts on which the head only rises or only falls, in the order of flow."""
        up = np.sign(np.diff(self.head))
        turns = np.flatnonzero((up[1:] > 0) != (up[:-1] > 0)) + 1
        ends = [0, *turns.tolist(), len(self.flow) - 1]
        return [Way(self.flow[a : b + 1], self.head[a : b + 1]) for a, b in zip(ends, ends[1:], strict=False)]

    def heads(self, flow: Array) -> Array:
        """Head at flows. [m³/s] -> [m]"""
        return np.interp(flow, self.flow, self.head)

    def flows(self, head: Array) -> Array:
        """Flow at heads, of one stretch, held at its ends. [m] -> [m³/s]"""
        if self.head[0] > self.head[-1]:
            return np.interp(head, self.head[::-1], self.flow[::-1])
        return np.interp(head, self.head, self.flow)


def meetings(ways: Sequence[Way], flow: Array, load: Array, scale: float) -> Array:
    """Flows through each way in every state, stable or not.

    Parameters
    ----------
    ways : one or more.
    flow, load : (F,) rising, and the head asked there, never falling. [m³/s] [m]
    scale : a large head. [m]

    Returns
    -------
    flows : (S, ways) as good as the tables, in the order of the flow together. [m³/s]
    """
    asked = Way(*_finer(flow, load))
    if len(ways) == 1:
        at = np.union1d(asked.flow, ways[0].flow)
        at = at[(at >= flow[0]) & (at <= flow[-1])]
        return np.asarray(_crossings(at, ways[0].heads(at) - asked.heads(at)))[:, None]
    heads = np.concatenate([way.head for way in ways])
    heads = heads[(heads > load[0]) & (heads < load[-1])]
    at = np.union1d(asked.flow, asked.flows(heads))  # between these points everything is a straight line
    given = asked.heads(at)
    found = []
    stretches = [[(part, part.flows(given)) for part in way.stretches()] for way in ways]
    for chosen in product(*stretches):
        together = _crossings(at, sum(flows for _, flows in chosen) - at)
        head = asked.heads(together)
        flows = np.array([part.flows(head) for part, _ in chosen])
        there = [
            np.abs(part.heads(q) - head) < APART * scale for (part, _), q in zip(chosen, flows, strict=True)
        ]
        found.append(flows[:, np.all(there, axis=0)].T)
    all_found = np.concatenate(found)
    return np.asarray(all_found[np.argsort(all_found.sum(axis=1), kind="stable")])


def _crossings(at: Array, left: Array) -> Array:
    """Where straight lines between points pass through nought."""
    above = left >= 0
    k = np.flatnonzero(above[1:] != above[:-1])
    return np.asarray(at[k] + (at[k + 1] - at[k]) * left[k] / (left[k] - left[k + 1]))


def stable(rise: Array, load_rise: Array) -> Flags:
    """Which states last.

    Parameters
    ----------
    rise : (S, ways) slope of each way's head. [m/(m³/s)]
    load_rise : (S,) slope of the load's head. [m/(m³/s)]
    """
    matrix = np.eye(rise.shape[1]) * rise[:, :, None] - load_rise[:, None, None]
    return np.asarray(np.linalg.eigvalsh(matrix).max(axis=1) < 0)


def _finer(flow: Array, load: Array) -> tuple[Array, Array]:
    """The load's table with points between, on smooth curves that rise as it does."""
    slopes, step = monotone_slopes(flow, load), np.diff(flow)
    t = np.arange(FINER) / FINER
    a, b, s = load[:-1, None], load[1:, None], step[:, None]
    curved = t * (1 - t) ** 2 * slopes[:-1, None] - t**2 * (1 - t) * slopes[1:, None]
    between = a + (b - a) * t**2 * (3 - 2 * t) + s * curved
    flows = flow[:-1, None] + s * t
    return np.append(flows, flow[-1]), np.maximum.accumulate(np.append(between, load[-1]))
