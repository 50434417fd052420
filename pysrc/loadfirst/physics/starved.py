"""Pumps in their place: with the NPSH that is there, and no more flow than the suction lets through.

What reaches a pump depends on the flow of the whole suction line, its own head
only on its own flow. So the NPSH available is a number here; who solves the
plant finds the one that goes with the flow (`plant.in_place`).

Where the liquid boils in the suction line no more flow passes, whatever the
pump would do: its eye fills with vapour until its head is what the load asks at
that flow. So its curve ends in a cliff: one steep line (`law.SHUT`) at that flow.
A centrifugal pump loses head before that (`physics.cavitation`). A displacement
pump keeps its pressure and loses flow: it is not filled any more.

A pump's torque at a flow is left as it is with plenty of NPSH (a
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

from loadfirst.physics.cavitation import in_place, rising
from loadfirst.physics.interpolate import Pieces, slope, value
from loadfirst.physics.law import SHUT, Array, Index, pick
from loadfirst.physics.machine import Machines, Running
from loadfirst.physics.machine_curve import NPSH

PLENTY = 1e9  # [m] of NPSH: none is lost
WITHOUT_END = np.inf  # [m³/s] most flow where nothing boils


@dataclass(frozen=True, slots=True)
class StarvedMachines(Machines):
    """Centrifugal pumps in their place. Make it with `StarvedMachines.of`.

    Attributes
    ----------
    available : (B|1, M)
        NPSH at their inlets, of any sign. [m]
    most : (B|1, M)
        Flow that the suction lets through, from 0; infinite where it does not matter. [m³/s]
    peaks : (B|1, M, K)
        The most NPSH that is required at any knot up to each piece: where a
        maker's curve falls at small flow its rising envelope counts. [m]
    """

    available: Array
    most: Array
    peaks: Array

    @classmethod
    def of(cls, machines: Machines, available: Array, most: Array) -> StarvedMachines:
        """Machines as they run with plenty of NPSH, put in their place."""
        parts: dict[str, Any] = {part.name: getattr(machines, part.name) for part in fields(Machines)}
        return cls(**parts, available=available, most=most, peaks=_peaks(machines.curves))

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Minus the head that is left, and its slope, never negative; see `Law`."""
        row, into = self.curves.find(flow)
        head, fall = value(row, into), np.minimum(slope(row, into), 0.0)
        required = self._required(flow, row, into)
        head, fall = in_place(head, fall, (self.available, np.zeros(())), required)
        more, steep = _cliff(flow, self.most)
        return more - head, steep + np.maximum(-fall, 0.0)

    def _required(self, flow: Array, row: Array, into: Array) -> tuple[Array, Array]:
        """Rising envelope of the required NPSH, and its slope. [m], [m/(m³/s)]"""
        piece = (flow[..., None] >= self.curves.knots).sum(axis=-1)
        peaks = np.broadcast_to(self.peaks, (*piece.shape, self.peaks.shape[-1]))
        peak = np.take_along_axis(peaks, piece[..., None], axis=-1)[..., 0]
        own, grows = value(row, into, NPSH), slope(row, into, NPSH)
        return np.maximum(own, peak), np.where(own > peak, np.maximum(grows, 0.0), 0.0)

    def corners(self) -> Array:
        """The edge of the cliff."""
        return _edges(self.most)

    def running(self, flow: Array) -> Running:
        """What the machines do at a flow; see `Machines.running`."""
        plenty = Machines.running(self, flow)
        head = -self.head_drop(flow)[0]
        given = np.where(plenty.head > 0, head / np.where(plenty.head > 0, plenty.head, 1.0), 1.0)
        return plenty._replace(head=head, efficiency=plenty.efficiency * np.maximum(given, 0.0))

    def rows(self, index: Index) -> StarvedMachines:
        """The machines of some of the plants only."""
        plenty = Machines.rows(self, index)
        return StarvedMachines.of(plenty, pick(self.available, index), pick(self.most, index))


def _peaks(curves: Pieces) -> Array:
    """Required NPSH where each piece starts, and the most of it so far. (B|1, M, K)"""
    pieces = curves.start[..., None] + np.arange(curves.knots.shape[-1] + 1)
    return rising(curves.table[pieces, 1 + 4 * NPSH])


def _cliff(flow: Array, most: Array) -> tuple[Array, Array]:
    """Head lost beyond the most flow, and its slope. [m], [m/(m³/s)]"""
    over = flow > most
    return np.where(over, SHUT * (flow - np.where(over, most, 0.0)), 0.0), np.where(over, SHUT, 0.0)


def _edges(most: Array) -> Array:
    return np.where(np.isfinite(most), most, np.nan)
