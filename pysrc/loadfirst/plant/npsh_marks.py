"""Where along its own flow axis a pump gets short of NPSH.

The NPSH that a pump has at a flow of its own depends on what else the suction
line carries: an equal pump beside it gives as much as it does; an unlike one is
taken to give what it gives now. So at the duty all of it is what it is there.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from msgspec import Struct

from loadfirst.physics.backward import Backward
from loadfirst.physics.cavitation import INCEPTION
from loadfirst.physics.law import Array
from loadfirst.physics.pipe import velocity_head
from loadfirst.physics.standing import StandingPumps
from loadfirst.physics.starved import StarvedMachines
from loadfirst.plant.boiling import boiling_flow
from loadfirst.plant.build import Built
from loadfirst.plant.npsh import in_place

RATIOS = (1.0, *INCEPTION)
POINTS = 33
"""Of each of two rounds: the second is a thirty-second of a thirty-second of the axis apart."""


class Marks(Struct, frozen=True):
    """Flows through a pump, each None where it is not met up to the end of its curves. [m³/s]

    Attributes
    ----------
    begins : from here on 3 % of the head and more are lost: the NPSH available is the required one.
    bubbles_surely, bubbles_first : from here on it is less than twice, and less than five times,
        that: common practice for the first bubbles.
    boils : no more passes: the liquid boils at the flange.
    """

    begins: float | None
    bubbles_surely: float | None
    bubbles_first: float | None
    boils: float | None


class Axis(NamedTuple):
    """The flow axis of one of the pumps of one plant.

    Attributes
    ----------
    built : the plant, alone.
    number : of the pump, from 0.
    beside : the suction line's flow is so many times this pump's, and so much more. [-] [m³/s]
    """

    built: Built
    number: int
    beside: tuple[float, float]

    @classmethod
    def of(cls, built: Built, number: int, flows: tuple[float, ...]) -> Axis:
        """`flows` is what each of the pumps gives now. [m³/s]"""
        if built.layout.side_by_side == 1:
            return cls(built, number, (1.0, 0.0))
        if built.plants[0].alike:
            return cls(built, number, (float(len(flows)), 0.0))
        return cls(built, number, (1.0, sum(flows) - flows[number]))

    def line(self, flow: Array) -> Array:
        """Flow of the suction line at flows through the pump. (F,) [m³/s]"""
        times, more = self.beside
        return times * flow + more

    def available(self, flow: Array) -> Array:
        """NPSH at flows through the pump. (F,) [m³/s] -> [m]"""
        return in_place(self.built, self.line(flow)).available[:, self.number]

    def npsh(self, flow: Array) -> tuple[Array, Array]:
        """The same, and what the pump requires, which never falls with the flow. (F,) [m³/s] -> [m]"""
        place = in_place(self.built, self.line(flow))
        name, column = self.built.layout.machines[self.number]
        law = place.laws[name]
        through = np.repeat(flow[:, None], law.count, axis=1)
        required = (
            law.required if isinstance(law, StarvedMachines) else lambda q: law.running(q).npsh_required
        )
        return place.available[:, self.number], required(through)[:, column]


def marks(axis: Axis, most: float, boils: float) -> Marks:
    """Where along its axis a pump gets short, up to a flow; the suction line boils at `boils`. [m³/s]"""
    law, _ = axis.built.pump(axis.number)
    found: list[float | None] = [None] * len(RATIOS)
    if not isinstance(law, StandingPumps | Backward) and most > 0:
        found = _crossings(axis, most)
    begins, surely, first = found
    times, more = axis.beside
    own = (boils - more) / times
    return Marks(begins, surely, first, max(own, 0.0) if own <= most else None)


def boiling(built: Built, most: float) -> float:
    """Flow of the suction line at which it boils at a flange of one plant; infinite above `most`. [m³/s]"""
    end = np.array([most])
    if (in_place(built, end).available > velocity_head(end, built.suction.bore)).all():
        return np.inf
    return float(boiling_flow(built)[0])


def _crossings(axis: Axis, most: float) -> list[float | None]:
    """For each of the ratios the flow at which it is met: two rounds of points, joined by straight lines."""
    flow = np.linspace(0.0, most, POINTS)
    available, required = axis.npsh(flow)
    missing = np.outer(RATIOS, required) - available
    after = np.where((missing >= 0).any(axis=1), np.argmax(missing >= 0, axis=1), -1)
    before = np.maximum(after - 1, 0)
    finer = flow[before, None] + (flow[after] - flow[before])[:, None] * np.linspace(0.0, 1.0, POINTS)
    available, required = (each.reshape(finer.shape) for each in axis.npsh(finer.ravel()))
    left = np.array(RATIOS)[:, None] * required - available
    found: list[float | None] = []
    for row, at, reached in zip(left, finer, after.tolist(), strict=True):
        found.append(None if reached < 0 else float(np.interp(0.0, row, at)))
    return found
