"""Curves over flow: what the load asks, what a pump and the whole station answer.

The load's curve is found by taking the station out, forcing a flow through the
gap and reading the head across it; so it holds for any network. What two pumps'
check valves lose is added: they belong to the load. The duty point lies on both
curves, also where the plant runs backward; where something holds at no flow the
load's curve falls straight down to it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any, TypeVar

import numpy as np
from msgspec import Struct

from loadfirst.physics.law import Array, Flags, Law
from loadfirst.physics.machine import Machines, Running
from loadfirst.physics.network import Network, solve
from loadfirst.plant.answer import Duty
from loadfirst.plant.build import Built

Spreads = TypeVar("Spreads", Network, Machines, Law)

POINTS = 60
"""How many a curve has where nobody says otherwise."""
VISIBLE = 1e-3
"""How far a drawn curve may pass from the duty point, of the plant's head scale. [-]"""
MARGIN = 1.1
"""How far the curves go beyond the last point of the pumps, or the duty. [-]"""


class Curves(Struct, frozen=True):
    """Columns of equal length.

    Attributes
    ----------
    flow : through the station, from 0, or from below the duty's flow where that is
        negative; 0 twice where the load's curve is upright there. [m³/s]
    load : head that the load asks; None where no flow can pass. [m]
    machine, npsh_required, power : of one pump at that flow. [m] [m] [W]
    station : own head of the pumps together. [m]
    """

    flow: tuple[float, ...]
    load: tuple[float | None, ...]
    machine: tuple[float, ...]
    station: tuple[float, ...]
    npsh_required: tuple[float, ...]
    power: tuple[float, ...]


def curves(one: Built, duty: Duty, points: int = POINTS) -> Curves:
    """All curves of one plant.

    Parameters
    ----------
    one : the plant, built alone.
    duty : the curves pass through it, from 3 points on, and go beyond.
    points : how many, at least 2.
    """
    last = one.layout.side_by_side * float(one.machines.last_flow[0, 0])
    flow: Array = np.linspace(MARGIN * min(0.0, duty.flow), MARGIN * max(last, duty.flow), points)[None]
    asked, known = load_curve(one, flow)
    if known.any():
        flow, asked, known = _through(duty, flow, asked, known, VISIBLE * float(one.head_scale[0]))
    pump, head = pump_curve(one, flow), station_curve(one, flow)
    return Curves(
        flow=_column(flow),
        load=tuple(value if yes else None for value, yes in zip(asked[0].tolist(), known[0], strict=True)),
        machine=_column(pump.head),
        station=_column(head),
        npsh_required=_column(pump.npsh_required),
        power=_column(pump.shaft_power),
    )


def _through(
    duty: Duty, flow: Array, asked: Array, known: Flags, visible: float
) -> tuple[Array, Array, Flags]:
    """The same columns, of the same length, and through the duty point where they visibly miss it."""
    points = flow.shape[1]
    if points < 3 or abs(np.interp(duty.flow, flow[0], asked[0]) - duty.head) < visible:
        return flow, asked, known
    place = 1 + int(np.argmin(np.abs(flow[0, 1:-1] - duty.flow)))
    if duty.flow == 0:  # something holds: the curve falls straight down from what the first trickle asks
        place, twice = 0, [0, *range(points - 1)]
        flow, asked, known = flow[:, twice], asked[:, twice], known[:, twice]
    flow[0, place], asked[0, place], known[0, place] = duty.flow, duty.head, True
    return flow, asked, known


def _column(values: Array) -> tuple[float, ...]:
    return tuple(values[0].tolist())


def load_curve(built: Built, flow: Array) -> tuple[Array, Flags]:
    """Head that the load asks at flows through the station.

    Parameters
    ----------
    flow : (B, F) [m³/s]

    Returns
    -------
    head : (B, F) that the pumps must add. [m]
    known : (B, F) False where no flow can pass: a shut valve answers with any head.
    """
    checks, within = _within_station(built, flow)
    through = flow.ravel()
    load = _spread(built.network.without(built.layout.station), flow)
    demand = {"suction": through, "discharge": -through}
    found = solve(
        replace(load, demand=demand), _scale(built.head_scale, flow), _scale(built.flow_scale, flow)
    )
    head = found.head["discharge"] - found.head["suction"]
    known = found.converged & ~found.undefined["discharge"]
    return head.reshape(flow.shape) + checks, known.reshape(flow.shape) & within


def _within_station(built: Built, flow: Array) -> tuple[Array, Flags]:
    """Head lost in the check valves of two pumps, and where they let the flow pass. (B, F) [m]"""
    shape = built.layout
    if len(shape.pumps) == 1:
        return np.zeros(flow.shape), np.ones(flow.shape, dtype=bool)
    checks, first = built.network.laws["checks"], shape.column("check-1")
    through = np.repeat(flow.reshape(-1, 1) / shape.side_by_side, checks.count, axis=1)
    checks = _spread(checks, flow)
    drop, shut = checks.head_drop(through)[0][:, first], checks.shut(through)[:, first]
    return (shape.in_line * drop).reshape(flow.shape), ~shut.reshape(flow.shape)


def station_curve(built: Built, flow: Array) -> Array:
    """Own head of equal pumps together at flows through them all: flows shared or heads added.

    Parameters
    ----------
    flow : (B, F) [m³/s]

    Returns
    -------
    head : (B, F) [m]
    """
    through = np.repeat(flow.reshape(-1, 1) / built.layout.side_by_side, built.machines.count, axis=1)
    drop, _ = _spread(built.machines, flow).head_drop(through)
    return (-built.layout.in_line * drop[:, 0]).reshape(flow.shape)


def pump_curve(built: Built, flow: Array) -> Running:
    """What the first pump does at flows through it, (B, F) each. [m³/s]"""
    through = np.repeat(flow.reshape(-1, 1), built.machines.count, axis=1)
    running = _spread(built.machines, flow).running(through)
    first: list[Any] = [part[:, 0].reshape(flow.shape) for part in running]
    return Running(*first)


def _spread(each: Spreads, flow: Array) -> Spreads:
    """Each plant once per point."""
    plants, points = flow.shape
    return each if plants == 1 else each.rows(np.repeat(np.arange(plants), points))


def _scale(scale: Array, flow: Array) -> Array:
    return np.repeat(scale, flow.shape[1])
