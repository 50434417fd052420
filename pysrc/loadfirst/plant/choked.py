"""Plants whose control valve may choke: its throat boils, and what is behind it no longer matters.

Free, the valve's drop goes with the square of its flow. Choked, the flow is the
one whose drop, over F_L², would bring the inlet down to the throat's pressure
F_F p_v (`physics.choking`). As a head before the valve that is

    C(q) = z + v²/2g + (F_F p_v - air)/ρg + h(q)/F_L²,

h(q) the free drop: from upstream it looks like a narrower valve that opens into
a vessel of a known head. A valve chokes where its free state has less head than
C before it. Then the plant is two: all before the valve, with that vessel in its
place, and all behind it, with the flow that comes through. The head that the
pumps must give at a flow is the greater of the two states', so it still rises
with the flow, and there is one answer. Where the liquid boils before the valve
already, that vessel lets nothing out: the valve then counts as shut by vapour.

Source: IEC 60534-2-1, see `physics.choking`.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple, TypeVar

import numpy as np

from loadfirst.physics.law import Array, Flags, Index
from loadfirst.physics.network import Element, Network, Solution, solve
from loadfirst.units import BAR, TO_SI, G

if TYPE_CHECKING:
    from loadfirst.plant.build import Built
    from loadfirst.plant.elements.section import Given

Some = TypeVar("Some", Array, Flags)

MM = TO_SI["mm"]
THROAT, VALVE, BEHIND = "throat", "valve", "after-valve"


def settle(built: Built, network: Network, head_scale: Array, flow_scale: Array, copies: int = 1) -> Solution:
    """Balance a network of these plants, choked valves included.

    Parameters
    ----------
    network : of the plants, each `copies` times in a row; all of it or a part with the line.
    head_scale, flow_scale : as `network.solve` takes them.
    """
    free = solve(network, head_scale, flow_scale)
    if not any(one.plant.valve.recovery is not None and one.plant.discharge.attached for one in built.plants):
        return free
    throats = _Throats.of(built, copies)
    flow, before = free.flow[VALVE], free.head[_inlet(network)]
    rows = np.flatnonzero(free.converged & (flow > 0) & (throats.needed(flow) > before))
    if not len(rows):
        return free
    some = throats.rows(rows)
    head, flows = (np.broadcast_to(scale, len(flow))[rows] for scale in (head_scale, flow_scale))
    upstream = solve(_upstream(network.rows(rows), some), head, flows)
    downstream = solve(_downstream(network.rows(rows), upstream.flow[THROAT]), head, flows)
    return _merged(free, rows, upstream, downstream, _inlet(network))


class _Throats(NamedTuple):
    """Head of the vessel that a choked valve opens into, and the flow coefficient of the way there, (B,)."""

    head: Array
    square: Array

    @classmethod
    def of(cls, built: Built, copies: int) -> _Throats:
        from loadfirst.plant.elements.section import Given

        pairs = zip(built.plants, built.liquids, strict=True)
        head, square = np.array([_throat(Given(one.plant, liquid)) for one, liquid in pairs]).T
        return cls(np.repeat(head, copies), np.repeat(square, copies))

    def needed(self, flow: Array) -> Array:
        """Head before the valve that a choked flow needs. (B,) [m]"""
        return np.asarray(self.head + self.square * flow**2)

    def rows(self, index: Index) -> _Throats:
        return _Throats(self.head[index], self.square[index])


def _throat(given: Given) -> tuple[float, float]:
    """Head [m], and head over flow squared [s²/m⁵]; what cannot choke has a head that is always there."""
    from loadfirst.physics.choking import throat
    from loadfirst.physics.pipe import velocity_head
    from loadfirst.physics.valve import AS_GOOD_AS_SHUT
    from loadfirst.plant.air import air_pressure
    from loadfirst.plant.elements.control_valve import kv_of

    plant, liquid = given
    kv, recovery = kv_of(plant), plant.valve.recovery
    if recovery is None or kv <= AS_GOOD_AS_SHUT:
        return -np.inf, 0.0
    boiling = _critical_ratio(given) * liquid.vapour_pressure
    head, square = throat(kv, recovery, boiling, liquid.density)
    above = plant.pump.centre_m - air_pressure(plant) / (liquid.density * G)
    return above + float(head), float(square + velocity_head(1.0, plant.discharge.bore_mm * MM))


def _critical_ratio(given: Given) -> float:
    """F_F; of a liquid whose critical pressure is not given, that far below it. [-]"""
    from loadfirst.physics.choking import WATER_CRITICAL, critical_ratio

    plant, liquid = given
    given_bar = plant.liquid.critical_bar
    if liquid.name != "water" and given_bar is None:
        return float(critical_ratio(0.0))
    critical = WATER_CRITICAL if given_bar is None else given_bar * BAR
    return float(critical_ratio(min(liquid.vapour_pressure, critical), critical))


def _inlet(network: Network) -> str:
    return next(element.inlet for element in network.elements if element.name == VALVE)


def _behind(network: Network) -> set[str]:
    """Names of all elements behind the valve: it is the only way there."""
    names: set[str] = set()
    reached, before = {BEHIND}, -1
    while len(names) > before:
        before = len(names)
        for element in network.elements:
            if element.name != VALVE and {element.inlet, element.outlet} & (reached - set(network.fixed)):
                names.add(element.name)
                reached |= {element.inlet, element.outlet}
    return names


def _upstream(network: Network, throats: _Throats) -> Network:
    """All before the valve, and the vessel that it opens into."""
    from loadfirst.physics.check import CheckValves

    laws = {**network.laws, THROAT: CheckValves(throats.square[:, None])}
    part = network.without({*_behind(network), VALVE})
    throat = Element(THROAT, _inlet(network), THROAT, THROAT, 0)
    fixed = {**part.fixed, THROAT: throats.head}
    return replace(part, elements=(*part.elements, throat), laws=laws, fixed=fixed)


def _downstream(network: Network, flow: Array) -> Network:
    """All behind the valve, and the flow that comes through it."""
    names = _behind(network)
    nodes = {node for each in network.elements if each.name in names for node in (each.inlet, each.outlet)}
    fixed = {node: head for node, head in network.fixed.items() if node in nodes}
    return network.only(names, fixed, {BEHIND: -flow})


def _merged(free: Solution, rows: Index, upstream: Solution, downstream: Solution, inlet: str) -> Solution:
    """The free solution, with the two halves in place of the rows that choke."""
    flow, drop, head = _copy(free.flow), _copy(free.drop), _copy(free.head)
    undefined, shut = _copy(free.undefined), _copy(free.shut)
    for half in (upstream, downstream):
        for whole, part in ((flow, half.flow), (drop, half.drop), (head, half.head)):
            _put(whole, part, rows)
        _put(undefined, half.undefined, rows)
        _put(shut, half.shut, rows)
    flow[VALVE][rows] = upstream.flow[THROAT]
    drop[VALVE][rows] = upstream.head[inlet] - downstream.head[BEHIND]
    shut[VALVE][rows] = upstream.shut[THROAT]
    converged, imbalance = free.converged.copy(), free.imbalance.copy()
    converged[rows] = upstream.converged & downstream.converged
    imbalance[rows] = np.maximum(upstream.imbalance, downstream.imbalance)
    reason = list(free.reason)
    for row, first, second in zip(rows, upstream.reason, downstream.reason, strict=True):
        reason[row] = first or second
    return Solution(flow, drop, head, converged, tuple(reason), free.iterations, imbalance, undefined, shut)


def _copy(part: dict[str, Some]) -> dict[str, Some]:
    return {name: value.copy() for name, value in part.items()}


def _put(whole: dict[str, Some], part: dict[str, Some], rows: Index) -> None:
    for name in part.keys() & whole.keys():
        whole[name][rows] = part[name]
