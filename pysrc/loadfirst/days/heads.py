"""What moved the pressure at a tapping between two days, as parts that add up to the whole change.

A gauge's pressure is the head at its tapping, less the height there, times the liquid's
weight. That head is what stands at one end of the line, less what is lost from there
(suction) or plus what is lost to there (after the valve); at the discharge it is the
suction's, plus what the pumps add.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from loadfirst.days.meeting import Meeting, displaces
from loadfirst.plant.answer import Node, State
from loadfirst.units import G

Parts = dict[str, float]
"""Name of a reason to its part of the change of pressure. [Pa]"""
Heads = list[float | None]


class Both(NamedTuple):
    """The true states of both days."""

    before: State
    after: State


def parts_of(place: str, days: Both, met: Meeting, own: float | None = None) -> Parts | None:
    """Reasons for the change at "suction", "discharge" or "after-valve"; None where it is undefined.

    `own` is `meeting.own_change`, for a station that has no curve of its own. [m]
    """
    nodes = [state.nodes.get(place) for state in days]
    if any(node is None or node.pressure is None for node in nodes):
        return None
    static = [_static(node, state) for node, state in zip(nodes, days, strict=True) if node]
    weights = [state.liquid.density * G for state in days]
    weight = sum(weights) / 2
    parts = {"liquid": (weights[1] - weights[0]) * sum(static) / 2}
    heads = {"suction": _suction, "discharge": _discharge, "after-valve": _after_valve}[place](days, met, own)
    total = static[1] - static[0]
    heads["place"] = total - sum(heads.values())  # velocity head, and a pump that stands at another height
    return parts | {name: weight * head for name, head in heads.items()}


def _static(node: Node, state: State) -> float:
    assert node.pressure is not None
    return node.pressure / (state.liquid.density * G)


def _suction(days: Both, met: Meeting, _: float | None) -> Parts:
    ends = [state.path[0].head for state in days]
    heads = [state.station.suction_head for state in days]
    return _line("supply", "before", ends, heads, -1.0, met.flow)


def _after_valve(days: Both, met: Meeting, _: float | None) -> Parts:
    ends = [state.path[-1].head for state in days]
    heads = [state.nodes["after-valve"].head for state in days]
    return _line("delivery", "behind", ends, heads, 1.0, (days.before.flow, days.after.flow))


def _line(end: str, way: str, ends: Heads, heads: Heads, sign: float, flow: tuple[float, float]) -> Parts:
    """Parts of a change of head at a tapping: of the line's end, and of what is lost between both."""
    known = [number for number in (*ends, *heads) if number is not None]
    if len(known) < 4:
        return {}
    first, last, before, after = known
    lost = sign * (before - first), sign * (after - last)
    why = "flow" if _by_flow(lost, flow) else "line"
    return {end: last - first, f"{why}-{way}": sign * (lost[1] - lost[0])}


def _by_flow(lost: tuple[float, float], flow: tuple[float, float]) -> bool:
    """Whether another flow, rather than another line, made the loss another: loss over flow² tells."""
    if min(*lost, *(abs(each) for each in flow)) <= 0.0:
        return (lost[1] > lost[0]) == (abs(flow[1]) > abs(flow[0]))
    by_flow = 2 * math.log(abs(flow[1]) / abs(flow[0]))
    by_line = math.log(lost[1] / lost[0]) - by_flow
    return abs(by_flow) >= abs(by_line)


def _discharge(days: Both, met: Meeting, own: float | None) -> Parts:
    before, after = (state.station for state in days)
    parts: Parts = {}
    if before.suction_head is not None and after.suction_head is not None:
        parts["suction"] = after.suction_head - before.suction_head
    gained = after.head - before.head
    if displaces(days.before) or displaces(days.after):
        return parts | {"asked": gained}
    if met.answered[0] is not None and met.answered[1] is not None:
        own = met.answered[1] - met.answered[0]
    if own is None:
        return parts | {"machine": gained}
    return parts | {"machine": own, "curve": gained - own}
