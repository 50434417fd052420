"""What the pumps of a station answer together, at flows forced through it.

The station's own head is that of its pumps, each with the NPSH that goes with
the flow (`plant.npsh`); what their check valves lose is told apart, because it
belongs to the load. Two pumps side by side share the flow: equal ones by halves,
others as their curves and check valves have it, which takes a small network of
its own. See also `solved.OnePlant.shares`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, NamedTuple, TypeVar

import numpy as np

from loadfirst.physics.displacement import DisplacementRunning
from loadfirst.physics.law import Array, Flags
from loadfirst.physics.machine import Machines, Running
from loadfirst.physics.network import Network, solve
from loadfirst.physics.starved import PLENTY, StarvedMachines
from loadfirst.plant.build import Built
from loadfirst.plant.machines import MachineLaw
from loadfirst.plant.npsh import InPlace, equipped, in_place, own_head, with_npsh
from loadfirst.plant.share_out import share_out
from loadfirst.plant.shares import shares

Spreads = TypeVar("Spreads", Network, MachineLaw)


class Forced(NamedTuple):
    """A station with flows forced through it. Make it with `forced`.

    Attributes
    ----------
    placed : each plant once per point, its pumps in their place.
    flow : (B, F) [m³/s]
    through : flow through each of the pumps, (B, F). [m³/s]
    available : NPSH at each of the pumps, (B, F). [m]
    """

    placed: Built
    flow: Array
    through: tuple[Array, ...]
    available: tuple[Array, ...]

    def heads(self) -> list[Array]:
        """Head of each of the pumps, (B, F). [m]"""
        laws = self.placed.machines
        return [
            own_head(self.placed, laws, number, each.ravel()).reshape(each.shape)
            for number, each in enumerate(self.through)
        ]


def forced(built: Built, flow: Array, start: Sequence[float] = ()) -> Forced:
    """A station at flows forced through it, (B, F); `start` as of `split`. [m³/s]"""
    every = built if len(built) == 1 else built.rows(np.repeat(np.arange(len(built)), flow.shape[1]))
    place = in_place(every, flow.ravel())
    placed = equipped(every, counted(every, place))
    through = split(built, flow, placed, start)
    return Forced(placed, flow, through, tuple(npsh.reshape(flow.shape) for npsh in place.available.T))


def counted(built: Built, place: InPlace) -> Mapping[str, MachineLaw]:
    """The pumps with the NPSH that counts: two side by side that droop have plenty (`plant.drooping`)."""
    leaves_out = built.droops & (built.layout.side_by_side > 1)
    if not leaves_out.any():
        return place.laws
    dry = np.zeros(len(place.available), dtype=bool)
    return with_npsh(built, np.where(leaves_out[:, None], PLENTY, place.available), dry)


def station_curve(built: Built, flow: Array, at: Forced | None = None) -> Array:
    """Own head of the pumps together at flows through them all: flows shared or heads added.

    Beyond the flow at which the suction line boils none passes; what is said there is
    what the pumps would give of what they have of NPSH.

    Parameters
    ----------
    flow : (B, F) [m³/s]
    at : the station at these flows, from `forced`; left out it is worked out.

    Returns
    -------
    head : (B, F) [m]
    """
    at = forced(built, flow) if at is None else at
    heads = at.heads()
    return _together(built, at.through, heads, heads)


def check_loss(built: Built, flow: Array, at: Forced | None = None) -> tuple[Array, Flags]:
    """Head lost in the check valves of two pumps, and where they let the flow pass. (B, F) [m]

    Parameters as of `station_curve`.
    """
    shape = built.layout
    if len(shape.pumps) == 1:
        return np.zeros(flow.shape), np.ones(flow.shape, dtype=bool)
    at = forced(built, flow) if at is None else at
    checks = at.placed.network.laws["checks"]
    drops, passes = [], []
    for name, each in zip(shape.checks, at.through, strict=True):
        all_alike = np.repeat(each.reshape(-1, 1), checks.count, axis=1)
        column = shape.column(name)
        drops.append(checks.head_drop(all_alike)[0][:, column].reshape(flow.shape))
        passes.append(~checks.shut(all_alike)[:, column].reshape(flow.shape))
    heads = at.heads() if _unlike(built) else []
    open_way = np.any(passes, axis=0) if shape.side_by_side > 1 else np.all(passes, axis=0)
    return _together(built, at.through, drops, heads), np.asarray(open_way)


def split(
    built: Built, flow: Array, placed: Built | None = None, start: Sequence[float] = ()
) -> tuple[Array, ...]:
    """Flow through each of the pumps at flows through the station, (B, F) each. [m³/s]

    Parameters
    ----------
    placed : as in `Forced`; left out it is worked out.
    start : flow through each in the state that is there; it matters where a curve droops: such a
        pump's want of NPSH is then left out of account. [m³/s]
    """
    shape = built.layout
    if not _unlike(built):
        return (flow / shape.side_by_side,) * len(shape.pumps)
    if built.droops.any():
        rows = [share_out(built.rows(np.array([row])), flow[row], start) for row in range(len(flow))]
        return tuple(np.stack(each) for each in zip(*rows, strict=True))
    if placed is None:
        return forced(built, flow).through
    alone = placed.network.only(shape.station, {"suction": np.zeros(1)}, {})
    network = replace(alone, demand={"discharge": flow.ravel()})
    count = flow.shape[1]
    found = solve(network, np.repeat(built.head_scale, count), np.repeat(built.flow_scale, count))
    return tuple(found.flow[pump].reshape(flow.shape) for pump in shape.pumps)


def pump_curve(
    built: Built, flow: Array, number: int = 0, available: Array | None = None
) -> Running | DisplacementRunning:
    """What one of the pumps, counted from 0, does at flows through it, (B, F) each. [m³/s]

    `available` is the NPSH that it has there, (B, F); left out it has plenty. [m]
    """
    law, column = built.pump(number)
    through = np.repeat(flow.reshape(-1, 1), law.count, axis=1)
    law = spread(law, flow)
    if available is not None and isinstance(law, Machines):
        law = StarvedMachines.of(law, np.repeat(available.reshape(-1, 1), law.count, axis=1))
    running = law.running(through)
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


def _together(built: Built, through: tuple[Array, ...], values: list[Array], heads: list[Array]) -> Array:
    """Something of each pump's way, as it counts for the station; `heads` say which pump is the stronger."""
    if built.layout.side_by_side == 1:
        return np.asarray(sum(values[1:], values[0]))
    if not _unlike(built):
        return np.asarray(sum(values[1:], values[0]) / len(values))
    counts = shares(np.array(through), np.array(heads))
    return np.asarray((counts * np.array(values)).sum(axis=0))
