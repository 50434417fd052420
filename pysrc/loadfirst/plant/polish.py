"""States that were found in tables, by the laws themselves; and networks balanced near a state."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from loadfirst.physics.law import Array, Flags
from loadfirst.physics.machine import Machines
from loadfirst.physics.network import Network, Solution
from loadfirst.plant.build import Built
from loadfirst.plant.choked import settle
from loadfirst.plant.load_table import load_at
from loadfirst.plant.station_tables import leaks, way_heads

ROUNDS = 8  # of Newton's method; two or three are usual
AGAIN = 20  # times that a balance may be wanting more than `CLOSE`
CLOSE = 1e-10  # [-] of the head scale
HELD = 1e-6  # [-] of the head scale: what no step brings nearer is no state, only a narrow miss
SAME = 1e-5  # [-] of the flow scale: states nearer than that are one
STRAY = 0.02  # [-] of the flow scale: farther from where it was found a state is another


def balanced(built: Built, about: Array, counts: Flags | None = None) -> tuple[Solution, Array, Array]:
    """The plants balanced near flows through their pumps, (B, pumps): what lasts is come to, step by step.

    Parameters
    ----------
    counts : which of them matter, (B,); left out, all.

    Returns
    -------
    solution, flows (B, pumps), and how far the stand-in laws are from true there (B,) [m].
    """
    for _ in range(AGAIN):
        network = leant(built, about)
        solution = settle(built, network, built.head_scale, built.flow_scale)
        flows = np.stack([solution.flow[name] for name in built.layout.pumps], axis=1)
        off = _off(built, network, flows)
        close = off <= CLOSE * built.head_scale
        if (close if counts is None else close | ~counts).all():
            break
        about = flows
    return solution, flows, off


def leant(built: Built, about: Array) -> Network:
    """The network with stand-in laws that are true at these flows through its pumps, (B, pumps)."""
    laws = dict(built.network.laws)
    for name, law in built.machines.items():
        if isinstance(law, Machines):
            columns = [number for number, (own, _) in enumerate(built.layout.machines) if own == name]
            laws[name] = law.leant(about[:, columns])
    return replace(built.network, laws=laws)


def _off(built: Built, network: Network, flows: Array) -> Array:
    """How far the stand-in laws are from the pumps' own at these flows, the worst of each plant. (B,) [m]"""
    worst = np.zeros(len(built))
    for number, (name, column) in enumerate(built.layout.machines):
        law = network.laws[name]
        if isinstance(law, Machines) and law.leaning is not None:
            lean, about = law.leaning
            worst = np.maximum(worst, np.abs(lean * (flows[:, [number]] - about[:, [column]]))[:, column])
    return worst


def polished(one: Built, found: Array, scale: tuple[float, float]) -> Array:
    """The same states by the laws themselves: Newton's method, each one apart; at a corner step by step."""
    head, usual = scale
    flows, best, least = found.copy(), found.copy(), np.full(len(found), np.inf)
    room = _room(found, usual)
    corner = np.abs(found).max(axis=1, initial=0.0) <= leaks(one)  # seldom met by Newton's method
    for number in range(ROUNDS):
        given, rise = way_heads(one, flows)
        asked, load_rise = load_at(one, flows.sum(axis=1), usual)
        left = given - asked[:, None]
        off = np.abs(left).max(axis=1, initial=0.0)
        near = np.abs(flows - found).max(axis=1, initial=0.0) <= room
        better = (off < least) & near
        best[better], least[better] = flows[better], off[better]
        if ((least <= CLOSE * head) | (corner & (number > 1))).all():
            break
        step = _newton(left, rise, load_rise)
        most = np.abs(step).max(axis=1, keepdims=True) / (STRAY * usual)
        flows = flows + step / np.maximum(most, 1.0)
    wanting = np.flatnonzero(least > CLOSE * head)
    if len(wanting):
        about = np.broadcast_to(best[wanting], (len(wanting), len(one.layout.pumps)))
        _, ends, off = balanced(one.rows(np.zeros(len(wanting), dtype=np.intp)), about)
        ends = ends[:, : found.shape[1]]
        near = np.abs(ends - found[wanting]).max(axis=1) <= room[wanting]
        came = near & (off <= CLOSE * head)
        best[wanting[came]], least[wanting[came]] = ends[came], off[came]
    true = (least <= HELD * head) | corner
    return _apart(best[true if true.any() else least == least.min()], usual)


def _room(found: Array, usual: float) -> Array:
    """How far each state may move and still be that one, (S,). [m³/s]"""
    apart = np.abs(found[:, None] - found).max(axis=2)
    apart[np.diag_indices(len(found))] = np.inf
    return np.asarray(np.clip(apart.min(axis=1, initial=np.inf) / 2, SAME * usual, STRAY * usual))


def _newton(left: Array, rise: Array, load_rise: Array) -> Array:
    """Steps that would undo what is left, (S, ways); none where they are not to be had. [m³/s]"""
    r, load = rise.T, load_rise
    with np.errstate(divide="ignore", invalid="ignore"):
        if len(r) == 1:
            step = left / (load - r[0])[:, None]
        else:
            first, second = left.T
            down = np.stack([first * (r[1] - load) + load * second, second * (r[0] - load) + load * first])
            step = -(down / (r[0] * r[1] - load * (r[0] + r[1]))).T
    return np.asarray(np.where(np.isfinite(step), step, 0.0))


def _apart(flows: Array, usual: float) -> Array:
    """Each state once, in the order of the flow together, then of that through the first."""
    kept: list[Array] = []
    for one in flows:
        if all(np.abs(one - other).max() > SAME * usual for other in kept):
            kept.append(one)
    apart = np.array(kept).reshape(len(kept), flows.shape[1])
    together = np.round(apart.sum(axis=1) / (SAME * usual))
    return apart[np.lexsort((apart[:, 0], together))]
