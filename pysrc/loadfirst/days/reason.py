"""Why an instrument moved between two days, as one word: what made the greatest part of its change."""

from __future__ import annotations

from typing import Literal, get_args

import numpy as np
from msgspec import UNSET
from msgspec.structs import replace

from loadfirst.days.groups import group_of
from loadfirst.days.heads import Both, parts_of
from loadfirst.days.meeting import Meeting, displaces, own_change
from loadfirst.days.shift import Shift
from loadfirst.days.two_days import Days, OneDay
from loadfirst.instruments.panel import readings
from loadfirst.physics.machine import Running
from loadfirst.plant.build import build
from loadfirst.plant.station_curve import pump_curve

Reason = Literal[
    "instrument", "supply", "flow-before", "line-before", "delivery", "flow-behind", "line-behind", "suction",
    "curve", "machine", "asked", "liquid", "place", "load", "both", "drive", "slip", "set", "time",
    "controller",
]  # fmt: skip
"""What moved it: the instrument itself; the level or pressure at an end of the line; the flow, or the
line itself, before or behind the pump; the suction's pressure; the same pump's curve at another flow;
another machine; what is asked of a pump that gives its flow at any head; the liquid; the height of the
place; load, machine or both, of a flow; the drive, or the motor's slip, of a speed; somebody, or time, of
a level; a controller, of its output."""

SAME_SPEED = 1e-4
"""Change of the synchronous speed below which it is the same. [-]"""

MOTORS = ("pump.model", "pump.curve", "pump.displacement")
"""Keys that bring another pump with a motor of its own."""


def reasons(days: Days, met: Meeting, shifts: list[Shift]) -> dict[str, Reason]:
    """The reason of every instrument that moved, by its id; none where nobody can say."""
    own = _own_changes(days, shifts)
    found: dict[str, Reason] = {}
    for each in shifts:
        if each.moved in (None, "same"):
            continue
        if each.change is not None and abs(own.get(each.id, 0.0)) > abs(each.change) / 2:
            found[each.id] = "instrument"
        elif (reason := _reason(each.id, days, met)) is not None:
            found[each.id] = reason
    return found


def _own_changes(days: Days, shifts: list[Shift]) -> dict[str, float]:
    """What the instruments' own changes did to today's readings: less what yesterday's would show today."""
    if not any(group_of(key) == "instrument" for key in days.differences):
        return {}
    before, after = days.yesterday.settled.plant, days.today.settled.plant
    plant = replace(after, gauges=before.gauges, meters=before.meters)
    shown = {one.id: one for one in readings(days.today.state, plant, look=1, before=days.yesterday.readings)}
    own = {}
    for each in shifts:
        old = shown[each.id].value if each.id in shown else None
        if each.today and each.today.value is not None and old is not None:
            own[each.id] = each.today.value - old
    return own


def _reason(id: str, days: Days, met: Meeting) -> Reason | None:
    kind, _, place = id.partition("-")
    if kind == "gauge":
        states = Both(days.yesterday.state, days.today.state)
        parts = parts_of(place, states, met, own_change(days) if None in met.answered else None)
        return _greatest(parts) if parts else None
    if kind == "flow":
        return {"load": "load", "machine": "machine", "both": "both", "neither": None}[met.mover]
    if kind == "ammeter":
        return _of_current(days, int(place) - 1)
    if kind == "tachometer":
        before, after = (day.state.synchronous_speed for day in (days.yesterday, days.today))
        if any(key in MOTORS for key in days.differences):
            return "machine"
        other = abs(after - before) > SAME_SPEED * before
        return "drive" if other or _touched(days, "drive") else "slip"
    return "set" if kind == "level" else "controller"


def _greatest(parts: dict[str, float]) -> Reason | None:
    name = max(parts, key=lambda each: abs(parts[each]))
    assert name in get_args(Reason)
    return name if parts[name] else None  # type: ignore[return-value]


def _touched(days: Days, group: str) -> bool:
    return any(group_of(key) == group for key in days.differences)


def _of_current(days: Days, number: int) -> Reason:
    """Why a motor draws another current: its pump runs at another flow, is asked otherwise, or is another."""
    if _touched(days, "drive"):
        return "machine"
    if displaces(days.yesterday.state) and displaces(days.today.state) and not _touched(days, "machine"):
        return "asked"
    before, after = days.yesterday, days.today
    if number >= min(len(before.state.machines), len(after.state.machines)):
        return "machine"
    at = before.state.machines[number].flow
    power = [_power(day, number, at) for day in (before, after)]
    if None in power:
        return "machine"
    own = power[1] - power[0]  # type: ignore[operator]
    all_of_it = after.state.machines[number].shaft_power - before.state.machines[number].shaft_power
    if abs(own) <= abs(all_of_it - own):
        return "curve"
    return "machine" if _touched(days, "machine") or not _touched(days, "liquid") else "liquid"


def _power(day: OneDay, number: int, flow: float) -> float | None:
    """Shaft power of one of the pumps at a flow through it. [m³/s] -> [W]"""
    machine = day.state.machines[number]
    if machine.backward is not UNSET or machine.standing is not UNSET or machine.pressure_limit is not UNSET:
        return None
    running = pump_curve(build([day.settled]), np.array([[flow]]), number)
    return float(running.shaft_power[0, 0]) if isinstance(running, Running) else None
