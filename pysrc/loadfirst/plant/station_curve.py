"""What the pumps of a station answer together, at flows forced through it.

The station's own head is that of its pumps; what their check valves lose is
told apart, because it belongs to the load. Two pumps side by side share the
flow: equal ones by halves, others as their curves and check valves have it,
which takes a small network of its own. See also `solved.OnePlant.shares`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, TypeVar

import numpy as np

from loadfirst.physics.displacement import DisplacementRunning
from loadfirst.physics.law import Array, Flags, Law
from loadfirst.physics.machine import Running
from loadfirst.physics.network import Network, solve
from loadfirst.plant.build import Built
from loadfirst.plant.machines import MachineLaw
from loadfirst.plant.share_out import share_out
from loadfirst.plant.shares import shares

Spreads = TypeVar("Spreads", Network, MachineLaw, Law)


Through = tuple[Array, ...]
"""Flow through each of the pumps, (B, F). [m³/s]"""


def station_curve(built: Built, flow: Array, through: Through | None = None) -> Array:
    """Own head of the pumps together at flows through them all: flows shared or heads added.

    Parameters
    ----------
    flow : (B, F) [m³/s]
    through : the same shared out, from `split`; left out it is worked out.

    Returns
    -------
    head : (B, F) [m]
    """
    through = split(built, flow) if through is None else through
    heads = [pump_head(built, number, each) for number, each in enumerate(through)]
    return _together(built, through, heads, heads)


def check_loss(built: Built, flow: Array, through: Through | None = None) -> tuple[Array, Flags]:
    """Head lost in the check valves of two pumps, and where they let the flow pass. (B, F) [m]

    Parameters as of `station_curve`.
    """
    shape = built.layout
    if len(shape.pumps) == 1:
        return np.zeros(flow.shape), np.ones(flow.shape, dtype=bool)
    law = built.network.laws["checks"]
    checks = spread(law, flow)
    through = split(built, flow) if through is None else through
    drops, passes = [], []
    for name, each in zip(shape.checks, through, strict=True):
        all_alike = np.repeat(each.reshape(-1, 1), law.count, axis=1)
        column = shape.column(name)
        drops.append(checks.head_drop(all_alike)[0][:, column].reshape(flow.shape))
        passes.append(~checks.shut(all_alike)[:, column].reshape(flow.shape))
    heads = [pump_head(built, number, each) for number, each in enumerate(through)] if _unlike(built) else []
    open_way = np.any(passes, axis=0) if shape.side_by_side > 1 else np.all(passes, axis=0)
    return _together(built, through, drops, heads), np.asarray(open_way)


def split(built: Built, flow: Array, start: Sequence[float] = ()) -> Through:
    """Flow through each of the pumps at flows through the station, (B, F) each. [m³/s]

    Parameters
    ----------
    start : flow through each in the state that is there; it matters where a curve droops. [m³/s]
    """
    shape = built.layout
    if not _unlike(built):
        return (flow / shape.side_by_side,) * len(shape.pumps)
    if built.droops.any():
        rows = [share_out(built.rows(np.array([row])), flow[row], start) for row in range(len(flow))]
        return tuple(np.stack(each) for each in zip(*rows, strict=True))
    through = flow.ravel()
    alone = built.network.only(shape.station, {"suction": np.zeros(1)}, {})
    network = replace(spread(alone, flow), demand={"discharge": through})
    found = solve(
        network, np.repeat(built.head_scale, flow.shape[1]), np.repeat(built.flow_scale, flow.shape[1])
    )
    return tuple(found.flow[pump].reshape(flow.shape) for pump in shape.pumps)


def pump_head(built: Built, number: int, flow: Array) -> Array:
    """Head of one of the pumps, counted from 0, at flows through it, (B, F). [m³/s] -> [m]"""
    law, column = built.pump(number)
    through = np.repeat(flow.reshape(-1, 1), law.count, axis=1)
    drop, _ = spread(law, flow).head_drop(through)
    return -drop[:, column].reshape(flow.shape)


def pump_curve(built: Built, flow: Array, number: int = 0) -> Running | DisplacementRunning:
    """What one of the pumps, counted from 0, does at flows through it, (B, F) each. [m³/s]"""
    law, column = built.pump(number)
    through = np.repeat(flow.reshape(-1, 1), law.count, axis=1)
    running = spread(law, flow).running(through)
    parts: list[Any] = [part[:, column].reshape(flow.shape) for part in running]
    return type(running)(*parts)


def spread(each: Spreads, flow: Array) -> Spreads:
    """Each plant once per point."""
    plants, points = flow.shape
    return each if plants == 1 else each.rows(np.repeat(np.arange(plants), points))


def _unlike(built: Built) -> bool:
    """Whether pumps side by side may share the flow unequally."""
    alike = all(one.alike for one in built.plants) and not built.droops.any()
    return built.layout.side_by_side > 1 and not alike


def _together(built: Built, through: Through, values: list[Array], heads: list[Array]) -> Array:
    """Something of each pump's way, as it counts for the station; `heads` say which pump is the stronger."""
    if built.layout.side_by_side == 1:
        return np.asarray(sum(values[1:], values[0]))
    if not _unlike(built):
        return np.asarray(sum(values[1:], values[0]) / len(values))
    counts = shares(np.array(through), np.array(heads))
    return np.asarray((counts * np.array(values)).sum(axis=0))
