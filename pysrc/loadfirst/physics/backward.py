"""Machines that pump backward: propellers and displacement pumps whose motor turns the wrong way.

Turned round, such a machine takes in at its discharge flange and gives out at
its suction flange. Seen along the plant's way its law is that of the machine
turned by half a turn: with h(q) the head of the machine at a flow through it,

    drop(q) = h(-q),        d drop/dq = -h'(-q),

which never falls, because h never rises: a curve that droops is held level for
this (`centrifugal.levelled`; our choice).

What it takes in comes from what was its load. Where too little comes the liquid
boils at its inlet: the pressure there stays at the vapour pressure, and the
machine, not filled any more, gives only the head that is left from there to its
outlet. Who solves the plant finds the share of the head that is left
(`plant.backward`), because it hangs on everything behind the pump; here the
law is scaled by it, so that it goes through the state that was found.

Sources
-------
Common practice: exchange two phases and a displacement pump interchanges inlet
and outlet; a propeller does too, and pumps badly (`changes.rotation`).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import numpy as np

from loadfirst.physics.belt import Drives
from loadfirst.physics.displacement import DisplacementMachines, DisplacementRunning
from loadfirst.physics.law import Array, Flags, Index, column, pick
from loadfirst.physics.machine import Machines, Running
from loadfirst.units import G

ENOUGH = column(1.0)


@dataclass(frozen=True, slots=True)
class Backward:
    """The law of M machines that pump backward, in a batch of B plants.

    Attributes
    ----------
    turned : Machines or DisplacementMachines
        The same machines in their own sense, from what is their inlet now.
    left : (B|1, M|1)
        Share of the head that they give for want of liquid, from 0 to 1. [-]
    """

    turned: Machines | DisplacementMachines
    left: Array = field(default_factory=lambda: ENOUGH)

    @property
    def count(self) -> int:
        """Machines per plant (M)."""
        return self.turned.count

    @property
    def motor(self) -> Drives:
        """Their motors."""
        return self.turned.motor

    @property
    def last_flow(self) -> Array:
        """Of the machines in their own sense, above 0. (B|1, M) [m³/s]"""
        return self.turned.last_flow

    @property
    def best_efficiency_flow(self) -> Array:
        """Of the machines in their own sense, above 0. (B|1, M) [m³/s]"""
        return self.turned.best_efficiency_flow

    @property
    def limit_head(self) -> Array:
        """What is a large head to them: shut-off, or the most that the casing bears. (B|1, M) [m]"""
        if isinstance(self.turned, Machines):
            return self.turned.shut_off_head
        return self.turned.limit_head

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head that they take from the way, and its slope, never negative. (B, M); see `Law`."""
        drop, slope = self.turned.head_drop(-flow)
        share = np.where(drop < 0, self.left, 1.0)
        return -share * drop, share * slope

    def corners(self) -> Array | None:
        """Those of the machines, on the other side of no flow."""
        corners = self.turned.corners()
        return None if corners is None else -corners

    def shut(self, flow: Array) -> Flags:
        """Never: a pump is no closed valve. (B, M)"""
        return self.turned.shut(-flow)

    def flow_at(self, head: Array) -> Array:
        """The flow, not above 0, against a head in their own sense; of displacement pumps. (B, M) [m]"""
        assert isinstance(self.turned, DisplacementMachines)
        return -self.turned.flow_at(head)

    def rows(self, index: Index) -> Backward:
        """The machines of some of the plants only."""
        return Backward(self.turned.rows(index), pick(self.left, index))

    def with_left(self, left: Array) -> Backward:
        """The same machines with another share of their head left. (B|1, M|1) [-]"""
        return Backward(self.turned, left)

    def lacking(self, running: Running | DisplacementRunning, lost: Array) -> Running | DisplacementRunning:
        """The machines where liquid is dragged forward through them and boils before it gets there.

        Parameters
        ----------
        running : as they are with liquid in front of them.
        lost : ndarray (B, M)
            Head that is missing behind them for that. [m]
        """
        if isinstance(running, Running):
            return running._replace(head=running.head - lost)
        assert isinstance(self.turned, DisplacementMachines)
        weight = self.turned.density * G
        return running._replace(head=running.head - lost, pressure=running.pressure - weight * lost)

    def running(self, flow: Array) -> Running | DisplacementRunning:
        """What the machines do at a flow along the plant's way. (B, M) [m³/s]

        Head and pressure are negative where they pump; speed, torque and
        powers are those that the motor has, above 0. A displacement pump that
        is not filled takes the torque of the head that is left.
        """
        head, _ = self.head_drop(flow)
        if isinstance(self.turned, Machines):
            found = self.turned.running(-flow)
            share = np.where(found.head > 0, self.left, 1.0)
            return found._replace(head=-head, efficiency=share * found.efficiency)
        starved = (self.left < 1) & (head >= 0)
        filled = np.where(starved, self.turned.flow_at(np.maximum(head, 0.0)), -flow)
        running = self.turned.running(filled)
        part = np.where(
            starved & (filled > 0), np.maximum(-flow, 0.0) / np.where(filled > 0, filled, 1.0), 1.0
        )
        kept: dict[str, Any] = {
            name: part * getattr(running, name) for name in ("efficiency", "volumetric_efficiency")
        }
        return running._replace(head=-running.head, pressure=-running.pressure, **kept)
