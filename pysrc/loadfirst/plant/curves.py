"""Curves over flow: what the load asks, what a pump and the whole station answer.

The load's curve is found by taking the station out, forcing a flow through the
gap and reading the head across it; so it holds for any network. The station's
curve is the same with the load out.
"""

from __future__ import annotations

from dataclasses import fields, replace

import numpy as np
from msgspec import Struct

from loadfirst.physics.law import Array, Flags
from loadfirst.physics.machine import Running
from loadfirst.physics.network import Network, solve
from loadfirst.plant.build import Built, build

POINTS = 60
MARGIN = 1.1
"""How far the curves go beyond the last point of the pumps, or the duty. [-]"""


class Curves(Struct, frozen=True):
    """Columns of equal length.

    Attributes
    ----------
    flow : through the station, from 0. [m³/s]
    load : head that the load asks; None where no flow can pass. [m]
    machine, npsh_required, power : of one pump at that flow. [m] [m] [W]
    station : head of the station. [m]
    """

    flow: tuple[float, ...]
    load: tuple[float | None, ...]
    machine: tuple[float, ...]
    station: tuple[float, ...]
    npsh_required: tuple[float, ...]
    power: tuple[float, ...]


def curves(built: Built, points: int = POINTS, duty_flow: float = 0.0, row: int = 0) -> Curves:
    """All curves of one plant.

    Parameters
    ----------
    built : the plant, or a batch of which `row` is taken.
    points : how many, at least 2.
    duty_flow : the curves go beyond it. [m³/s]
    """
    one = built if len(built) == 1 else build([built.plants[row]])
    last = one.layout.side_by_side * float(one.machines.last_flow[0, 0])
    flow: Array = np.linspace(0.0, MARGIN * max(last, duty_flow), points)[None]
    asked, known = load_curve(one, flow)
    pump = pump_curve(one, flow)
    head = pump.head if len(one.layout.station) == 1 else station_curve(one, flow)
    return Curves(
        flow=_column(flow),
        load=tuple(value if yes else None for value, yes in zip(asked[0].tolist(), known[0], strict=True)),
        machine=_column(pump.head),
        station=_column(head),
        npsh_required=_column(pump.npsh_required),
        power=_column(pump.shaft_power),
    )


def _column(values: Array) -> tuple[float, ...]:
    return tuple(values[0].tolist())


def load_curve(built: Built, flow: Array) -> tuple[Array, Flags]:
    """Head that the load asks at flows through the station.

    Parameters
    ----------
    flow : (B, F) [m³/s]

    Returns
    -------
    head : (B, F) from suction to discharge node. [m]
    known : (B, F) False where no flow can pass: a shut valve answers with any head.
    """
    through = flow.ravel()
    load = _spread(built.network.without(built.layout.station), flow)
    demand = {"suction": through, "discharge": -through}
    found = solve(
        replace(load, demand=demand), _scale(built.head_scale, flow), _scale(built.flow_scale, flow)
    )
    head = found.head["discharge"] - found.head["suction"]
    known = found.converged & ~found.undefined["discharge"]
    return head.reshape(flow.shape), known.reshape(flow.shape)


def station_curve(built: Built, flow: Array) -> Array:
    """Head that the station adds at flows through it, check valves between its pumps included.

    Parameters
    ----------
    flow : (B, F), not negative. [m³/s]

    Returns
    -------
    head : (B, F) [m]
    """
    fixed = {"suction": np.zeros(1)}
    station = _spread(built.network.only(built.layout.station, fixed, {}), flow)
    demand = {"discharge": flow.ravel()}
    found = solve(
        replace(station, demand=demand), _scale(built.head_scale, flow), _scale(built.flow_scale, flow)
    )
    return found.head["discharge"].reshape(flow.shape)


def pump_curve(built: Built, flow: Array) -> Running:
    """What the first pump does at flows through it, (B, F) each. [m³/s]"""
    plants, points = flow.shape
    through = np.repeat(flow.reshape(-1, 1), built.machines.count, axis=1)
    machines = built.machines.rows(np.repeat(np.arange(plants), points))
    running = machines.running(through)
    return Running(*(getattr(running, part.name)[:, 0].reshape(flow.shape) for part in fields(running)))


def _spread(network: Network, flow: Array) -> Network:
    """Each plant once per point."""
    plants, points = flow.shape
    return network if plants == 1 else network.rows(np.repeat(np.arange(plants), points))


def _scale(scale: Array, flow: Array) -> Array:
    return np.repeat(scale, flow.shape[1])
