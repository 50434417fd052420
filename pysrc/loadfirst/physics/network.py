"""A network of elements between nodes, and the flows and heads that balance it.

Heads are energy heads, z + p/(ρg) + v²/2g. Every law rises with its own flow,
so there is one answer; where nothing but shut elements leads to a node its
head is the solver's guess, and the node is marked undefined.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from loadfirst.physics.cutoff import shut_columns, undefined_nodes
from loadfirst.physics.equations import Equations
from loadfirst.physics.law import Array, Counts, Flags, Index, Law, pick
from loadfirst.physics.newton import FLOOR, HEAD_TOLERANCE, Balanced, balance
from loadfirst.physics.topology import Element, Topology, topology

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

__all__ = ["Element", "Network", "Solution", "solve"]

STALLED, LOST = "stalled", "not-a-number"


@dataclass(frozen=True, eq=False)
class Network:
    """B plants of one shape.

    Attributes
    ----------
    elements : every element; each takes one column of one of the laws.
    laws : law of each kind. A column that no element takes carries no flow.
    fixed : head of the nodes where it is known, (B,) or (1,). [m]
    demand : flow taken out at a node, (B,) or (1,); negative puts in. [m³/s]
    about : flows of some elements to start the iteration from, (B,) or (1,); the answer is the same. [m³/s]
    """

    elements: tuple[Element, ...]
    laws: Mapping[str, Law]
    fixed: Mapping[str, Array]
    demand: Mapping[str, Array] = field(default_factory=dict)
    about: Mapping[str, Array] = field(default_factory=dict)

    @cached_property
    def shape(self) -> Topology:
        """The prepared shape, the same object for every network of this shape."""
        counts = tuple((name, law.count) for name, law in self.laws.items())
        return topology(self.elements, tuple(self.demand), tuple(self.fixed), counts)

    def only(self, names: Iterable[str], fixed: Mapping[str, Array], demand: Mapping[str, Array]) -> Network:
        """Some of the elements, with other known heads and demands."""
        chosen = set(names)
        kept = tuple(element for element in self.elements if element.name in chosen)
        return Network(kept, self.laws, fixed, demand)

    def without(self, names: Iterable[str]) -> Network:
        """The network with some elements taken out; fixed nodes that nothing meets any more go too."""
        out = set(names)
        kept = tuple(element for element in self.elements if element.name not in out)
        nodes = {node for element in kept for node in (element.inlet, element.outlet)}
        fixed = {node: head for node, head in self.fixed.items() if node in nodes}
        return replace(self, elements=kept, fixed=fixed)

    def rows(self, index: Index) -> Network:
        """Some of the plants only, in this order; a plant may come more than once."""
        return Network(
            self.elements,
            {name: law.rows(index) for name, law in self.laws.items()},
            {node: pick(head, index) for node, head in self.fixed.items()},
            {node: pick(flow, index) for node, flow in self.demand.items()},
            {name: pick(flow, index) for name, flow in self.about.items()},
        )


class Solution(NamedTuple):
    """Flows and heads of B plants; finite always, right where `converged`.

    Attributes
    ----------
    flow : through each element, (B,). [m³/s]
    drop : head lost in each element, (B,). [m]
    head : energy head of each node, (B,). [m]
    converged : within both tolerances (1e-9 of the head and flow scales), (B,).
    reason : None, or why not: "stalled" or "not-a-number".
    iterations : Newton steps, (B,).
    imbalance : worst of head and mass before the last step, each of its scale; 1 where it gave up. [-]
    undefined : nodes that only shut elements join to a known head, (B,).
    shut : elements on their steep line, (B,): a flow up to some `head scale / SHUT` is their leakage.
    """

    flow: dict[str, Array]
    drop: dict[str, Array]
    head: dict[str, Array]
    converged: Flags
    reason: tuple[str | None, ...]
    iterations: Counts
    imbalance: Array
    undefined: dict[str, Flags]
    shut: dict[str, Flags]


def solve(network: Network, head_scale: ArrayLike, flow_scale: ArrayLike) -> Solution:
    """Balance a network.

    Parameters
    ----------
    network : B plants; B is the longest of its fixed heads, demands and the two scales.
    head_scale : what a large head is here, > 0, scalar or (B,). [m]
    flow_scale : what a large flow is here, > 0, scalar or (B,). [m³/s]

    Returns
    -------
    Solution. A plant that cannot be balanced is no error: its `reason` says so.

    Raises
    ------
    ValueError
        When a node can reach no fixed head (a fault of the caller).
    """
    equations = _equations(network, np.atleast_1d(head_scale), np.atleast_1d(flow_scale))
    with np.errstate(all="ignore"):  # what is lost is seen by its NaN
        found = balance(equations)
    return _solution(network, equations, found)


def _equations(network: Network, head_scale: Array, flow_scale: Array) -> Equations:
    shape = network.shape
    fixed = [np.atleast_1d(head) for head in network.fixed.values()]
    taken = [np.atleast_1d(flow) for flow in network.demand.values()]
    rows = max(len(values) for values in (*fixed, *taken, head_scale, flow_scale))
    heads, supply = np.empty((rows, len(fixed))), np.zeros((rows, len(shape.junctions)))
    for i, head in enumerate(fixed):
        heads[:, i] = head
    for node, flow in zip(network.demand, taken, strict=True):
        supply[:, shape.junctions.index(node)] = -flow
    head_scale, flow_scale = (np.broadcast_to(scale, rows)[:, None] for scale in (head_scale, flow_scale))
    return Equations(
        shape=shape,
        laws=tuple(network.laws[name] for name, _ in shape.cuts),
        fixed=heads,
        ends=heads @ shape.fixed.T,
        supply=supply,
        head_scale=head_scale,
        flow_scale=flow_scale,
        floor=FLOOR * head_scale / flow_scale,
        about=_about(network, flow_scale),
    )


def _about(network: Network, flow_scale: Array) -> Array:
    """Flows of the branches to start from: those that are known, the usual flow elsewhere, (B, K)."""
    shape = network.shape
    flows = np.repeat(flow_scale, shape.chain.shape[1], axis=1)
    for name, flow in network.about.items():
        if name in shape.ahead:
            flows[:, shape.ahead[name]] = flow
    return flows


def _solution(network: Network, equations: Equations, found: Balanced) -> Solution:
    shape = equations.shape
    through = found.flow @ shape.chain.T
    head = _heads(equations, found)
    shut = _shut(network, equations, through)
    places = {element.name: shape.position[element.name] for element in network.elements}
    return Solution(
        flow={name: through[:, place] for name, place in places.items()},
        drop={name: found.drop[:, place] for name, place in places.items()},
        head=head,
        converged=found.converged,
        reason=_reasons(found),
        iterations=found.iterations,
        imbalance=np.where(np.isfinite(found.imbalance), found.imbalance * HEAD_TOLERANCE, 1.0),
        undefined=undefined_nodes(network.elements, head, network.fixed, shut),
        shut=shut,
    )


def _heads(equations: Equations, found: Balanced) -> dict[str, Array]:
    """Heads of all nodes; those inside a branch follow from its inlet's by the drops on the way."""
    shape, fixed = equations.shape, equations.fixed
    fixed = np.where(np.isfinite(fixed), fixed, 0.0)
    inside = fixed @ shape.start_fixed + found.head @ shape.start_junction - found.drop @ shape.along
    head = {node: fixed[:, i] for i, node in enumerate(shape.fixed_nodes)}
    head |= {node: found.head[:, i] for i, node in enumerate(shape.junctions)}
    return head | {node: inside[:, i] for i, node in enumerate(shape.interior)}


def _reasons(found: Balanced) -> tuple[str | None, ...]:
    if found.converged.all():
        return (None,) * len(found.converged)
    lost = np.isnan(found.imbalance).tolist()
    return tuple(
        None if good else LOST if gone else STALLED
        for good, gone in zip(found.converged.tolist(), lost, strict=True)
    )


def _shut(network: Network, equations: Equations, through: Array) -> dict[str, Flags]:
    """Which elements are on their steep line, (B,) each."""
    shut, position = shut_columns(equations, through), equations.shape.position
    return {element.name: shut[:, position[element.name]] for element in network.elements}
