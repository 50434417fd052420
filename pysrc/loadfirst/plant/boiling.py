"""Plants whose suction line passes no more: the liquid boils at a pump's flange.

Whatever the load would take, no more than a certain flow comes. So the load is
asked what head it wants at that flow, and the pumps lack what they would give
above it: their eyes fill with vapour until they give just that.

Side by side both lack the same, as both have the same vapour in front of them.
In line the first lacks it, and with it the second loses NPSH; but no more than
until the liquid would boil in front of the second: the rest the second lacks.
Where the load asks for less head than none at that flow (it drains, and pulls),
the column parts behind the pumps; a note says so there.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import NamedTuple

import numpy as np

from loadfirst.physics.law import Array, Flags
from loadfirst.physics.network import Solution
from loadfirst.physics.pipe import velocity_head
from loadfirst.physics.root import rising_root
from loadfirst.plant.build import Built
from loadfirst.plant.choked import settle
from loadfirst.plant.machines import MachineLaw
from loadfirst.plant.npsh import in_place, own_head, with_npsh
from loadfirst.plant.station_curve import split


class Held(NamedTuple):
    """Plants held by vapour: their answer, and the head that each pump lacks, (B, P). [m]"""

    solution: Solution
    lost: Array


def boiling_flow(built: Built) -> Array:
    """The flow at which the liquid boils at the flange of the first pump that it boils at. (B,) [m³/s]"""
    most = built.suction.boiling_flow()
    if built.layout.in_line == 1:
        return most[:, 0]

    def spare(flow: Array) -> Array:
        at = in_place(built, flow[:, 0]).available[:, 1:]
        return np.asarray(velocity_head(flow, built.suction.bore) - at)

    return rising_root(spare, 0 * most, most)[0][:, 0]


class _Station(NamedTuple):
    """Flow, head and drop of the check valve of each pump, (B, P), and where that holds. [m³/s] [m] [m]"""

    flow: Array
    head: Array
    drop: Array
    shut: Flags


def held_by_vapour(built: Built, most: Array) -> Held:
    """Plants that would take more than `most`, (B,), which is all that comes. [m³/s]"""
    place = in_place(built, most)
    load = settle(
        built,
        replace(built.network.without(built.layout.station), demand={"suction": most, "discharge": -most}),
        built.head_scale,
        built.flow_scale,
    )
    asked = load.head["discharge"] - load.head["suction"]
    station = _station(built, place.laws, most)
    if built.layout.in_line > 1:
        lost, station = _in_line(built, place.available, station, asked, most)
    else:
        rows, strongest = np.arange(len(most)), np.argmax(station.flow, axis=1)
        spare = (station.head - station.drop)[rows, strongest] - asked
        lost = np.repeat(spare[:, None], station.head.shape[1], axis=1)
    return Held(_solution(built, load, station, lost), lost)


def _station(built: Built, laws: Mapping[str, MachineLaw], most: Array) -> _Station:
    """The station at a flow through it."""
    flow = np.concatenate(split(built, most[:, None]), axis=1)
    head = np.stack(
        [own_head(built, laws, number, flow[:, number]) for number in range(flow.shape[1])], axis=1
    )
    if flow.shape[1] == 1:  # its check valve is part of the load
        return _Station(flow, head, np.zeros(flow.shape), np.zeros(flow.shape, dtype=bool))
    law, columns = built.network.laws["checks"], [built.layout.column(name) for name in built.layout.checks]
    through = np.zeros((len(most), law.count))
    through[:, columns] = flow
    return _Station(flow, head, law.head_drop(through)[0][:, columns], law.shut(through)[:, columns])


def _in_line(
    built: Built, available: Array, station: _Station, asked: Array, most: Array
) -> tuple[Array, _Station]:
    """What each of two pumps in line lacks, and the station with what the second then has. (B, 2) [m]"""
    rest = station.head[:, 0] - station.drop.sum(axis=1) - asked

    def second(lost: Array) -> Array:
        less = available.copy()
        less[:, 1] -= lost
        return own_head(built, with_npsh(built, less, built.suction.at_rest[:, 0] <= 0), 1, most)

    room = np.maximum(available[:, 1] - velocity_head(most, built.suction.bore[:, 0]), 0.0)
    first, spare = rising_root(lambda lost: lost - rest - second(lost), 0 * room, room)
    head = np.stack([station.head[:, 0], second(first)], axis=1)
    lost = np.stack([first, np.where(first >= room, np.maximum(-spare, 0.0), 0.0)], axis=1)
    return lost, station._replace(head=head)


def _solution(built: Built, load: Solution, station: _Station, lost: Array) -> Solution:
    """The load's answer, and the station's put into the gap."""
    flow, drop, head = dict(load.flow), dict(load.drop), dict(load.head)
    undefined, shut = dict(load.undefined), dict(load.shut)
    nobody = np.zeros(len(lost), dtype=bool)
    inlets = {element.name: (element.inlet, element.outlet) for element in built.layout.elements}
    for number, pump in enumerate(built.layout.pumps):
        inlet, outlet = inlets[pump]
        flow[pump], drop[pump] = station.flow[:, number], lost[:, number] - station.head[:, number]
        shut[pump] = nobody
        head.setdefault(outlet, head[inlet] - drop[pump])
        undefined.setdefault(outlet, nobody)
        if len(built.layout.pumps) > 1:
            check = built.layout.checks[number]
            flow[check], drop[check] = station.flow[:, number], station.drop[:, number]
            shut[check] = station.shut[:, number]
            head.setdefault(inlets[check][1], head[outlet] - drop[check])
            undefined.setdefault(inlets[check][1], nobody)
    return load._replace(flow=flow, drop=drop, head=head, undefined=undefined, shut=shut)
