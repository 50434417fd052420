"""What shut elements cut off: nodes whose head nothing defines."""

from __future__ import annotations

from collections.abc import Collection, Iterable

import numpy as np

from loadfirst.physics.equations import Equations
from loadfirst.physics.law import Array, Flags
from loadfirst.physics.topology import Element


def shut_columns(equations: Equations, through: Array) -> Flags:
    """Which columns are on their steep line at the flows `through`, (B, C)."""
    shut = np.zeros(through.shape, dtype=bool)
    for law, (_, cut) in zip(equations.laws, equations.shape.cuts, strict=True):
        shut[:, cut] = law.shut(through[:, cut])
    return shut & equations.shape.in_use


def undefined_nodes(
    elements: Iterable[Element], nodes: Collection[str], fixed: Collection[str], shut: dict[str, Flags]
) -> dict[str, Flags]:
    """Nodes that only shut elements join to a known head, (B,) each: a search through the graph.

    Parameters
    ----------
    elements, nodes, fixed : the network.
    shut : of each element, (B,).
    """
    rows = len(next(iter(shut.values())))
    if not any(closed.any() for closed in shut.values()):
        return dict.fromkeys(nodes, np.zeros(rows, dtype=bool))
    reached = {node: np.full(rows, node in fixed) for node in nodes}
    every = tuple(elements)
    for _ in every:  # a way has at most as many elements as there are
        for element in every:
            open_here = (reached[element.inlet] | reached[element.outlet]) & ~shut[element.name]
            reached[element.inlet] = reached[element.inlet] | open_here
            reached[element.outlet] = reached[element.outlet] | open_here
    return {node: ~seen for node, seen in reached.items()}
