"""Plants whose pumps are short of NPSH: the flow of the suction line that agrees with itself.

The network is solved with laws that depend on their own flow only. What a pump
has of NPSH depends on the flow Q of the whole suction line: so Q is guessed, the
pumps get the NPSH that goes with it (`plant.npsh`), the network answers with a
flow Q'(Q), and the Q is looked for that is answered with itself. Of a single
centrifugal pump Q is its own flow, of two equal ones side by side twice that, and
their law says it all (`starved.SoleMachines`).

Why there is one, and only one
------------------------------
The NPSH of every pump never rises with Q, so no pump's head at any flow of its
own rises with Q (`physics.cavitation.head_factor` never falls with the NPSH). A
station of pumps that give less draws less: heads in line add up, flows side by
side do, and the load rises with the flow. So Q'(Q) never rises, Q - Q'(Q) rises,
with a slope of at least 1. At the flow Q of the solution with plenty of NPSH,
Q'(Q) is at most Q; at Q'(Q) it is at least that. Between the two is the root.

The suction line passes no more than a flow at which the liquid boils at a pump's
flange. Where even that is answered with more, the plant is two: `plant.boiling`.

A pump whose own curve droops may leave several such flows. One pump, or two in line: all are
known (`plant.drooping`), and the bracket is put around the one that is there; at each guess the
pumps get stand-in laws that never rise and are true at it, so the same root is looked for, and it
is the only one in its bracket. Two side by side: want of NPSH is told by a note and not counted.

A pump that has more than twice its NPSH3 loses nothing, exactly. Only plants
with another one among them are solved again: the usual one pays a comparison.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import NamedTuple

import numpy as np

from loadfirst.physics.cavitation import ENOUGH
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.law import SHUT, Array, Flags, Index
from loadfirst.physics.machine import Machines
from loadfirst.physics.network import STALLED, Solution
from loadfirst.physics.pipe import velocity_head
from loadfirst.physics.root import rising_root
from loadfirst.physics.starved import PLENTY, SoleMachines, StarvedMachines
from loadfirst.plant.boiling import boiling_flow, held_by_vapour
from loadfirst.plant.build import Built
from loadfirst.plant.choked import settle
from loadfirst.plant.drooping import States, settle_all
from loadfirst.plant.machines import MachineLaw
from loadfirst.plant.merged import put_rows
from loadfirst.plant.npsh import dry_heads, equipped, in_place, with_npsh
from loadfirst.plant.polish import leant

NEAR = 1e-13  # [-] between the guess and its answer, of what leaks through one shut element
AGREED = 1e-8  # [-] likewise, where it counts as found
LEAKS = 10.0  # [-] of the head scale on one shut element: what may leak through all that is shut
LINE = "suction-line"


class Settled(NamedTuple):
    """B plants balanced, their pumps in their place.

    Attributes
    ----------
    solution : flows, drops and heads.
    laws : of the machines as they are there.
    lost : head that each pump lacks, beside what its law says, where the liquid boils before it, (B, P). [m]
    most : the flow of the suction line at which the liquid boils; infinite where nobody asked, (B,). [m³/s]
    states : all of those, by row, that a plant may have whose pumps' curves droop.
    """

    solution: Solution
    laws: Mapping[str, MachineLaw]
    lost: Array
    most: Array
    states: dict[int, States]


def settle_in_place(built: Built) -> Settled:
    """Balance plants, choked valves and pumps short of NPSH included."""
    free, states = settle_all(built)
    count = len(built), len(built.layout.pumps)
    rows = _short(built, free, states)
    if not len(rows):
        return Settled(free, built.machines, np.zeros(count), np.full(len(built), np.inf), states)
    part = _found(built.rows(rows), free.flow[LINE][rows], _around(states, rows))
    for row, flow in zip(rows.tolist(), part.solution.flow[LINE], strict=True):
        if row in states:
            states[row].flows[states[row].chosen] = flow
    available, lost = np.full(count, PLENTY), np.zeros(count)
    available[rows], lost[rows] = part.available, part.lost
    most = np.full(len(built), np.inf)
    most[rows] = part.most
    laws = with_npsh(built, available, np.zeros(len(built), dtype=bool))
    return Settled(put_rows(free, rows, part.solution), laws, lost, most, states)


def _answer(built: Built) -> Solution:
    return settle(built, built.network, built.head_scale, built.flow_scale)


def _around(states: Mapping[int, States], rows: Index) -> Array:
    """Flows between which the state is that is there, where several are known; else NaN. (2, B) [m³/s]"""
    unknown = (np.nan, np.nan)
    found = [states[row].around or unknown if row in states else unknown for row in rows.tolist()]
    return np.array(found).T


def _short(built: Built, free: Solution, states: Mapping[int, States]) -> Index:
    """Plants where a pump loses head to vapour, or the liquid boils in front of one."""
    suction, flow = built.suction, free.flow[LINE]
    place = in_place(built, flow)
    boils = (flow > 0)[:, None] & (place.available < velocity_head(flow[:, None], suction.bore))
    short = np.asarray(boils.any(axis=1))
    if any(isinstance(law, DisplacementMachines) for law in built.machines.values()):
        short |= suction.at_rest[:, 0] <= 0
    for number, pump in enumerate(built.layout.pumps):
        name, column = built.layout.machines[number]
        law = place.laws[name]
        if isinstance(law, StarvedMachines):
            through = np.repeat(free.flow[pump][:, None], law.count, axis=1)
            gives = built.machines[name].head_drop(through)[0][:, column] < 0
            least = law.required(through)[:, column]
            short = np.asarray(short | (gives & (place.available[:, number] < ENOUGH * least)))
    several = [row in states and states[row].around is not None for row in range(len(built))]
    return np.flatnonzero(short & free.converged & ~built.droops | several)


class _Found(NamedTuple):
    """`Settled`, with the NPSH in place of the laws."""

    solution: Solution
    available: Array
    lost: Array
    most: Array


def _found(some: Built, free: Array, around: Array) -> _Found:
    """Plants that are all short; `free` is what the suction line would pass with plenty of NPSH, (B,)."""
    most = boiling_flow(some)
    near = NEAR * some.head_scale / SHUT
    if _is_alone(some):
        at, left, solution = _sole(some, most)
    else:
        at, left, solution = _searched(some, free, most, around)
    lost = dry_heads(some)
    boils = np.flatnonzero((left < -near) & (at >= most))
    if len(boils):
        held = held_by_vapour(some.rows(boils), most[boils])
        solution = put_rows(solution, boils, held.solution)
        lost[boils] += held.lost
        left[boils] = 0.0
    solution = _judged(solution, np.abs(left) <= AGREED * some.flow_scale)
    return _Found(solution, in_place(some, at).available, lost, most)


def _is_alone(some: Built) -> bool:
    """Whether all there is is one centrifugal pump, or two that are equal, side by side, and none droops."""
    single = len(some.layout.pumps) == 1
    alike = some.layout.side_by_side > 1 and all(one.alike for one in some.plants)
    centrifugal = all(isinstance(law, Machines) for law in some.machines.values())
    return (single or alike) and centrifugal and not some.droops.any()


def _sole(some: Built, most: Array) -> tuple[Array, Array, Solution]:
    """The same as `_searched`, of pumps whose flow tells that of the line, so that their law says it all."""
    laws = {
        name: SoleMachines.sole(law, some.suction, some.layout.side_by_side)
        for name, law in some.machines.items()
        if isinstance(law, Machines)
    }
    solution = _answer(equipped(some, laws))
    at = np.minimum(solution.flow[LINE], most)
    return at, at - solution.flow[LINE], solution


def _searched(some: Built, free: Array, most: Array, around: Array) -> tuple[Array, Array, Solution]:
    """The flow that is answered with itself, by how much it is missed, and the answer.

    Parameters
    ----------
    free : what the suction line would pass with plenty of NPSH, (B,). [m³/s]
    most : at which the liquid boils, (B,); the flow found where even that is answered with more. [m³/s]
    around : flows to look between where they are known, else NaN, (2, B). [m³/s]
    """
    high = np.minimum(np.maximum(free, 0.0) + LEAKS * some.head_scale / SHUT, most)

    def miss(flow: Array) -> Array:
        return np.asarray(flow - _placed(some, flow).flow[LINE])

    several = np.isfinite(around[0])
    high = np.where(several, np.minimum(around[1], most), high)
    last = miss(high)
    low = np.where(several, around[0], np.minimum(high - last, high))
    near = NEAR * some.head_scale / SHUT
    at, left = rising_root(miss, low, high, within=near, ends=(miss(low), last))
    return at, left, _placed(some, at)


def _placed(some: Built, flow: Array) -> Solution:
    """What the network answers to pumps with the NPSH that goes with a flow."""
    placed = equipped(some, in_place(some, flow).laws)
    if some.droops.any():  # all of one way
        about = np.repeat(flow[:, None], len(some.layout.pumps), axis=1)
        placed = replace(placed, network=leant(placed, about))
    return _answer(placed)


def _judged(solution: Solution, agreed: Flags) -> Solution:
    """Not balanced where no flow was found that is answered with itself."""
    reasons = [
        reason or (None if fine else STALLED)
        for reason, fine in zip(solution.reason, agreed.tolist(), strict=True)
    ]
    return solution._replace(converged=solution.converged & agreed, reason=tuple(reasons))
