"""The shape of a network: series elements merged into branches, prepared once.

Elements in series carry the same flow, so a chain of them is one branch with
one unknown flow. Nodes where only two elements meet vanish from the equations;
their heads are rebuilt along the chain afterwards. Without the merging a line
search over a few steep elements in series stalls now and then.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from loadfirst.physics.law import Array, Flags


class Element(NamedTuple):
    """One element of a plant: where it sits, and which law's column it obeys.

    Attributes
    ----------
    name : str
        Its name in the plant: ``suction-line``.
    inlet, outlet : str
        Nodes; flow counts positive from inlet to outlet.
    law : str
        Key of the law among those of the network.
    column : int
        Which of the law's M elements it is.
    """

    name: str
    inlet: str
    outlet: str
    law: str
    column: int


class Topology(NamedTuple):
    """What a network's shape says, as signs.

    C columns of laws, K branches, N junctions, F fixed nodes, I interior nodes.

    Attributes
    ----------
    cuts : which columns each law in use takes, in the order of `chain`'s rows.
    position : row of `chain` that each element has.
    chain : (C, K) +1 or -1 where an element is part of a branch; zero rows are columns not in use.
    size, in_use : its absolute values (C, K), and which rows are not zero (C,).
    junction, fixed : (K, N), (K, F) +1 where a branch leaves the node, -1 where it arrives.
    start_fixed, start_junction, along : (F, I), (N, I), (C, I)
        interior heads = fixed heads @ start_fixed + junction heads @ start_junction - drops @ along.
    spread : (N, K) least flows that carry given supplies at the junctions to the fixed nodes.
    loops : (K, K) projection of any flows on those that break no balance.
    pairs : (K, N²) products of a branch's signs, from which the matrix of the heads is added up.
    tree : the balances alone fix every flow.
    ahead : by name, the branch of each element that points along it.
    """

    cuts: tuple[tuple[str, slice], ...]
    position: dict[str, int]
    fixed_nodes: tuple[str, ...]
    junctions: tuple[str, ...]
    interior: tuple[str, ...]
    chain: Array
    size: Array
    in_use: Flags
    junction: Array
    fixed: Array
    start_fixed: Array
    start_junction: Array
    along: Array
    spread: Array
    loops: Array
    pairs: Array
    tree: bool
    ahead: dict[str, int]


class _Branch(NamedTuple):
    """A chain of elements between two nodes that stay in the equations."""

    inlet: str
    outlet: str
    steps: tuple[tuple[Element, int], ...]
    passed: tuple[str, ...]


@lru_cache(maxsize=64)
def topology(
    elements: tuple[Element, ...],
    kept: tuple[str, ...],
    fixed: tuple[str, ...],
    counts: tuple[tuple[str, int], ...],
) -> Topology:
    """Prepare a shape; the same shape is answered from memory.

    Parameters
    ----------
    elements : the network's elements.
    kept : nodes with a demand, which stay junctions whatever meets there.
    fixed : nodes with a known head.
    counts : how many columns each law has.

    Raises
    ------
    ValueError
        When a node is joined to no fixed head: its head could be anything.
    """
    _refuse_adrift(elements, fixed)
    branches = _branches(elements, {*kept, *fixed})
    ends = {node for branch in branches for node in (branch.inlet, branch.outlet)}
    junctions = tuple(sorted(ends - set(fixed)))
    used = [(law, count) for law, count in counts if any(element.law == law for element in elements)]
    cuts, position, columns = _lay_out(elements, used)
    chain = _chain(branches, position, columns)
    junction, held = _incidence(branches, junctions), _incidence(branches, fixed)
    pinv: Array = np.linalg.pinv(junction).astype(np.float64)
    interior, start_fixed, start_junction, along = _interior(branches, fixed, junctions, position, columns)
    return Topology(
        cuts=cuts,
        position=position,
        fixed_nodes=fixed,
        junctions=junctions,
        interior=interior,
        chain=chain,
        size=np.abs(chain),
        in_use=np.asarray(chain.any(axis=1)),
        junction=junction,
        fixed=held,
        start_fixed=start_fixed,
        start_junction=start_junction,
        along=along,
        spread=pinv,
        loops=np.eye(len(branches)) - junction @ pinv,
        pairs=(junction[:, :, None] * junction[:, None, :]).reshape(len(branches), -1),
        tree=len(branches) == len(junctions),
        ahead={step.name: k for k, branch in enumerate(branches) for step, sign in branch.steps if sign > 0},
    )


def _refuse_adrift(elements: Sequence[Element], fixed: Sequence[str]) -> None:
    reached, before = set(fixed), 0
    while len(reached) > before:
        before = len(reached)
        for element in elements:
            if element.inlet in reached or element.outlet in reached:
                reached |= {element.inlet, element.outlet}
    adrift = {node for element in elements for node in (element.inlet, element.outlet)} - reached
    if adrift:
        raise ValueError(f"no fixed head can be reached from {', '.join(sorted(adrift))}")


def _branches(elements: Sequence[Element], kept: set[str]) -> list[_Branch]:
    meeting: dict[str, list[Element]] = {}
    for element in elements:
        meeting.setdefault(element.inlet, []).append(element)
        meeting.setdefault(element.outlet, []).append(element)
    stays = {node for node, here in meeting.items() if len(here) != 2 or here[0] is here[1]} | kept
    branches, done = [], set()
    for node in sorted(stays & set(meeting)):
        for first in meeting[node]:
            if first.name not in done:
                branches.append(_follow(node, first, meeting, stays))
                done |= {step.name for step, _ in branches[-1].steps}
    return [_forward(branch) for branch in branches]


def _follow(start: str, first: Element, meeting: dict[str, list[Element]], stays: set[str]) -> _Branch:
    steps: list[tuple[Element, int]] = []
    passed: list[str] = []
    node, element = start, first
    while True:
        ahead = element.inlet == node
        steps.append((element, 1 if ahead else -1))
        node = element.outlet if ahead else element.inlet
        if node in stays:
            return _Branch(start, node, tuple(steps), tuple(passed))
        passed.append(node)
        one, other = meeting[node]
        element = other if one is element else one


def _forward(branch: _Branch) -> _Branch:
    """Turn a branch that was walked against its first element."""
    if branch.steps[0][1] > 0:
        return branch
    steps = tuple((element, -sign) for element, sign in reversed(branch.steps))
    return _Branch(branch.outlet, branch.inlet, steps, branch.passed[::-1])


def _lay_out(
    elements: Sequence[Element], used: Sequence[tuple[str, int]]
) -> tuple[tuple[tuple[str, slice], ...], dict[str, int], int]:
    cuts, first, at = [], {}, 0
    for law, count in used:
        cuts.append((law, slice(at, at + count)))
        first[law], at = at, at + count
    return tuple(cuts), {element.name: first[element.law] + element.column for element in elements}, at


def _chain(branches: Sequence[_Branch], position: dict[str, int], columns: int) -> Array:
    chain = np.zeros((columns, len(branches)))
    for k, branch in enumerate(branches):
        for element, sign in branch.steps:
            chain[position[element.name], k] = sign
    return chain


def _incidence(branches: Sequence[_Branch], nodes: Sequence[str]) -> Array:
    signs = np.zeros((len(branches), len(nodes)))
    for k, branch in enumerate(branches):
        for node, sign in ((branch.inlet, 1.0), (branch.outlet, -1.0)):
            if node in nodes:
                signs[k, nodes.index(node)] += sign
    return signs


def _interior(
    branches: Sequence[_Branch],
    fixed: Sequence[str],
    junctions: Sequence[str],
    position: dict[str, int],
    columns: int,
) -> tuple[tuple[str, ...], Array, Array, Array]:
    inside = tuple(node for branch in branches for node in branch.passed)
    at_fixed, at_junction = np.zeros((len(fixed), len(inside))), np.zeros((len(junctions), len(inside)))
    along = np.zeros((columns, len(inside)))
    for branch in branches:
        lost = np.zeros(columns)
        for node, (element, sign) in zip(branch.passed, branch.steps, strict=False):
            lost[position[element.name]] += sign
            i = inside.index(node)
            along[:, i] = lost
            if branch.inlet in fixed:
                at_fixed[fixed.index(branch.inlet), i] = 1.0
            else:
                at_junction[junctions.index(branch.inlet), i] = 1.0
    return inside, at_fixed, at_junction, along
