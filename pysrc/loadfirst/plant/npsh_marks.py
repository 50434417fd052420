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
from loadfirst.physics.cavitation import INCEPTION, rising
from loadfirst.physics.law import Array
from loadfirst.physics.root import rising_root
from loadfirst.physics.standing import StandingPumps
from loadfirst.plant.build import Built
from loadfirst.plant.npsh import in_place, suction_of
from loadfirst.plant.station_curve import pump_curve

RATIOS = (1.0, *INCEPTION)


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

    def required(self, flow: Array) -> Array:
        """The same that it requires. (F,) [m³/s] -> [m]"""
        return np.asarray(pump_curve(self.built, flow[None], self.number).npsh_required[0])


def marks(axis: Axis, most: float) -> Marks:
    """Where along its axis a pump gets short, up to a flow. [m³/s]"""
    law, _ = axis.built.pump(axis.number)
    ratios = np.array(RATIOS)
    found: list[float | None] = [None] * len(ratios)
    if not isinstance(law, StandingPumps | Backward) and most > 0:
        at, left = rising_root(
            lambda flow: ratios * _envelope(axis, flow) - axis.available(flow), 0 * ratios, 0 * ratios + most
        )
        pairs = zip(at.tolist(), left.tolist(), strict=True)
        found = [flow if flow < most or over >= 0 else None for flow, over in pairs]
    times, more = axis.beside
    boils = (boiling(axis.built) - more) / times
    begins, surely, first = found
    return Marks(begins, surely, first, max(boils, 0.0) if boils <= most else None)


def boiling(built: Built) -> float:
    """The flow of the suction line at which the liquid boils at a flange of the first plant. [m³/s]"""
    from loadfirst.plant.boiling import boiling_flow

    return float(boiling_flow(built, suction_of(built))[0])


STEPS = 24
"""How finely the required NPSH is looked through for a fall at small flow."""


def _envelope(axis: Axis, flow: Array) -> Array:
    """The most that is required at any flow up to each. (F,) [m]"""
    up_to = flow[:, None] * np.linspace(0.0, 1.0, STEPS)
    return np.asarray(rising(axis.required(up_to.ravel()).reshape(up_to.shape))[:, -1])
