"""Pumps in their place: with the NPSH that is there, and filled with no more than reaches them.

What reaches a pump depends on the flow of the whole suction line, its own head
only on its own flow. So the NPSH available is a number here; who solves the
plant finds the one that goes with the flow (`plant.in_place`).

Where the liquid boils in the suction line no more flow passes, whatever the
pump would do: its eye fills with vapour until its head is what the load asks at
that flow. So its curve ends in a cliff there, and what it lacks at the foot of
the cliff is head that it lost (`lacking`). A centrifugal pump loses head before
that (`physics.cavitation`). A displacement pump is counted as losing nothing up
to the cliff, though in truth its flow begins to fall off before; at the cliff it
keeps the pressure that the load asks and is not filled any more (`unfilled`).

A centrifugal pump's torque at a flow is left as it is with plenty of NPSH (a
simplification: at the collapse it falls).

Sources
-------
`physics.cavitation` and `physics.suction`; the cliff of the curve as in any
textbook on pumps.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Any

import numpy as np

from loadfirst.physics.cavitation import in_place
from loadfirst.physics.displacement import DisplacementMachines, DisplacementRunning
from loadfirst.physics.interpolate import slope, value
from loadfirst.physics.law import Array, Flags, Index, pick
from loadfirst.physics.machine import Machines, Running
from loadfirst.physics.machine_curve import NPSH
from loadfirst.physics.suction import Suction

PLENTY = 1e9  # [m] of NPSH: none is lost
PARTS = tuple(part.name for part in fields(Machines))


@dataclass(frozen=True, slots=True)
class StarvedMachines(Machines):
    """Centrifugal pumps in their place. Make it with `StarvedMachines.of`.

    Attributes
    ----------
    available : (B|1, M)
        NPSH at their inlets, of any sign. [m]
    """

    available: Array

    @classmethod
    def of(cls, machines: Machines, available: Array) -> StarvedMachines:
        """Machines as they run with plenty of NPSH, put in their place."""
        parts: dict[str, Any] = {name: getattr(machines, name) for name in PARTS}
        return cls(**parts, available=available)

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Minus the head that is left, and its slope, never negative; see `Law`."""
        head, rise = self._left(flow)
        if self.leaning is None:
            return -head, np.maximum(-rise, 0.0)
        lean, about = self.leaning
        return lean * (flow - about) - head, np.maximum(lean - rise, 0.0)

    def rise(self, flow: Array) -> Array:
        """Slope of the head that is left, nowhere more than `steepest`. (B, M) [m³/s] -> [m/(m³/s)]"""
        return self._left(flow)[1]

    def _left(self, flow: Array) -> tuple[Array, Array]:
        """Head that is left, and its slope. [m], [m/(m³/s)]"""
        row, into = self.curves.find(flow)
        required = self._required(flow, row, into)
        return in_place(value(row, into), slope(row, into), self._npsh(flow), required)

    def _npsh(self, flow: Array) -> tuple[Array, Array]:
        """What is available at a flow through each machine, and its slope. [m], [m/(m³/s)]"""
        return self.available, np.zeros(())

    def required(self, flow: Array) -> Array:
        """Rising envelope of the required NPSH. (B, M) [m³/s] -> [m]"""
        return self._required(flow, *self.curves.find(flow))[0]

    def _required(self, flow: Array, row: Array, into: Array) -> tuple[Array, Array]:
        """The same, and its slope. [m], [m/(m³/s)]"""
        piece = (flow[..., None] >= self.curves.knots).sum(axis=-1)
        peaks = np.broadcast_to(self.peaks, (*piece.shape, self.peaks.shape[-1]))
        peak = np.take_along_axis(peaks, piece[..., None], axis=-1)[..., 0]
        own, grows = value(row, into, NPSH), slope(row, into, NPSH)
        return np.maximum(own, peak), np.where(own > peak, np.maximum(grows, 0.0), 0.0)

    def running(self, flow: Array) -> Running:
        """What the machines do at a flow; see `Machines.running`."""
        plenty = Machines.running(self, flow)
        return lacking(plenty, plenty.head - self._left(flow)[0])

    def rows(self, index: Index) -> StarvedMachines:
        """The machines of some of the plants only."""
        return StarvedMachines.of(Machines.rows(self, index), pick(self.available, index))


@dataclass(frozen=True, slots=True)
class SoleMachines(StarvedMachines):
    """Centrifugal pumps, each alone at its suction line or beside its likes. Make it with `sole`.

    Attributes
    ----------
    suction : Suction (B|1, M)
        What the line leaves of NPSH at its flow; `available` says nothing here.
    likes : int
        How many equal pumps share the line: its flow is so many times their own. [-]
    """

    suction: Suction
    likes: int

    @classmethod
    def sole(cls, machines: Machines, suction: Suction, likes: int = 1) -> SoleMachines:
        """Machines as they run with plenty of NPSH, put at the end of their suction lines."""
        parts: dict[str, Any] = {name: getattr(machines, name) for name in PARTS}
        none = np.full((1, 1), np.nan)
        return cls(**parts, available=none, suction=suction, likes=likes)

    def _npsh(self, flow: Array) -> tuple[Array, Array]:
        """What is available at a flow through each machine, and its slope. [m], [m/(m³/s)]"""
        available, slopes = self.suction.available(self.likes * flow)
        return available, self.likes * slopes

    def rows(self, index: Index) -> SoleMachines:
        """The machines of some of the plants only."""
        return SoleMachines.sole(Machines.rows(self, index), self.suction.rows(index), self.likes)


@dataclass(frozen=True, slots=True)
class DryDisplacement(DisplacementMachines):
    """Displacement pumps, some without liquid in front of them. Make it with `DryDisplacement.of`.

    Attributes
    ----------
    lost : (B|1, M)
        All that they would give at no flow where they are dry, else 0. [m]
    """

    lost: Array

    @classmethod
    def of(cls, machines: DisplacementMachines, dry: Flags) -> DryDisplacement:
        """Machines that have liquid, but for those that are dry, (B|1, M): these push nothing."""
        parts: dict[str, Any] = {
            part.name: getattr(machines, part.name) for part in fields(DisplacementMachines)
        }
        return cls(**parts, lost=np.where(dry, machines.shut_off_head, 0.0))

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Minus the head that is left, and its slope, never negative; see `Law`."""
        drop, slopes = DisplacementMachines.head_drop(self, flow)
        return drop + self.lost, slopes

    def rows(self, index: Index) -> DryDisplacement:
        """The machines of some of the plants only."""
        plenty = DisplacementMachines.rows(self, index)
        return DryDisplacement.of(plenty, pick(self.lost, index) != 0)


def lacking(running: Running, lost: Array) -> Running:
    """Machines that lack some of their head, and as much of their efficiency.

    Parameters
    ----------
    running : as they are with it.
    lost : ndarray (B, M)
        Where it is more than the head, the pump is a resistance. [m]
    """
    left = 1 - np.where(running.head > 0, lost / np.where(running.head > 0, running.head, 1.0), 0.0)
    return running._replace(head=running.head - lost, efficiency=running.efficiency * np.maximum(left, 0.0))


def unfilled(machines: DisplacementMachines, flow: Array, lost: Array) -> DisplacementRunning:
    """Displacement pumps that are not filled: less flow than they make room for, against what the load asks.

    The shaft does what it would do filled against that head. The vapour that is
    drawn along collapses on the way and takes no torque (a simplification).

    Parameters
    ----------
    flow : ndarray (B, M)
        That reaches them. [m³/s]
    lost : ndarray (B, M)
        How much the head that they would make of it is above what the load asks. [m]
    """
    head = -machines.head_drop(flow)[0] - lost
    filled = machines.running(machines.flow_at(head))
    pumping = (flow > 0) & (head > 0) & (filled.speed > 0)
    swept = np.where(pumping, machines.pumps.per_radian * filled.speed, 1.0)
    power = np.where(pumping, filled.shaft_power, 1.0)
    return filled._replace(
        efficiency=np.where(pumping, flow * filled.pressure / power, 0.0),
        volumetric_efficiency=np.where(pumping, flow / swept, 0.0),
    )
