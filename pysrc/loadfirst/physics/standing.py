"""Pumps that stand still: their motors are off, and liquid may be driven through them either way.

A centrifugal pump is then a resistance that turns. Forward it is a windmill
without load; backward it runs away like a turbine without load, faster than its
motor ever drove it. Both follow from the complete characteristics of a pump,
which hold for all speeds by the affinity laws: with no torque, head and speed go
with flow squared and flow.

    forward    drop = 0.4 (q/q_b)² H_b,    speed = 0.5 (q/q_b) n
    backward   drop = 2.3 (q/q_b)² H_b,    speed = 1.8 (q/q_b) n

q_b, H_b, n of its best-efficiency point. A pump with a holding brake or a seized
shaft resists otherwise; a propeller resists less than this.

A displacement pump that stands is nearly shut: gears and screws are held by
their motor, and only the clearances pass (`physics.displacement_pump`).

Sources
-------
Backward: head and torque of a radial pump in all four quadrants (specific speed
25, in 1/min, m³/s and m 25 to 35), in the form of E. B. Wylie and V. L.
Streeter, "Fluid Transients" (from memory): without torque at 2.3 times the head
of its best point, per flow squared, and 1.15 times its speed under that head.
Forward: common practice, and soft: the head that is lost at the usual flow is
about a third to half of what the pump would give.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from loadfirst.physics.belt import Drives
from loadfirst.physics.law import Array, Flags, Index, pick
from loadfirst.physics.machine import Running

FORWARD, BACKWARD = 0.4, 2.3
"""Head lost at the flow of best efficiency, of the head there, when nothing brakes the shaft. [-]"""
TURNS_FORWARD, TURNS_BACKWARD = 0.5, 1.8
"""Speed at that flow, of the speed of the pump's points. [-]"""


@dataclass(frozen=True, slots=True)
class StandingPumps:
    """The law of M pumps whose motors are off, in a batch of B plants.

    Attributes
    ----------
    motor : Motor or Belted that is off
    straight : (B|1, M)     head over flow, from 0 [s/m²]
    forward, backward : (B|1, M)
        Head over flow squared, from 0. [s²/m⁵]
    turns_forward, turns_backward : (B|1, M)
        Speed over flow; 0 where the shaft is held. [rad/s per m³/s]
    limit_head, last_flow, best_efficiency_flow : (B|1, M)
        What these would be if it ran, as scales. [m] [m³/s] [m³/s]
    """

    motor: Drives
    straight: Array
    forward: Array
    backward: Array
    turns_forward: Array
    turns_backward: Array
    limit_head: Array
    last_flow: Array
    best_efficiency_flow: Array

    @property
    def count(self) -> int:
        """Machines per plant (M)."""
        return int(self.straight.shape[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost, and its slope, never negative. (B, M) [m³/s] -> [m], [m/(m³/s)]"""
        bent = np.where(flow >= 0, self.forward, self.backward) * np.abs(flow)
        return (self.straight + bent) * flow, self.straight + 2 * bent

    def corners(self) -> Array | None:
        """None: at no flow the slope is the same from both sides."""
        return None

    def shut(self, flow: Array) -> Flags:
        """Never: a pump is no closed valve. (B, M)"""
        return np.zeros(np.broadcast_shapes(flow.shape, self.straight.shape), dtype=bool)

    def rows(self, index: Index) -> StandingPumps:
        """The pumps of some of the plants only."""
        return StandingPumps(
            self.motor.rows(index),
            pick(self.straight, index),
            pick(self.forward, index),
            pick(self.backward, index),
            pick(self.turns_forward, index),
            pick(self.turns_backward, index),
            pick(self.limit_head, index),
            pick(self.last_flow, index),
            pick(self.best_efficiency_flow, index),
        )

    def running(self, flow: Array) -> Running:
        """As of a pump that runs, where most is nought: the head is negative forward. (B, M) [m³/s]

        The speed is that at which the liquid turns the shaft, negative backward.
        """
        drop, _ = self.head_drop(flow)
        none = np.zeros_like(drop)
        speed = np.where(flow >= 0, self.turns_forward, self.turns_backward) * flow
        return Running(
            head=-drop,
            speed=speed,
            torque=none,
            shaft_power=none,
            efficiency=none,
            npsh_required=none,
            motor_input=none,
            current=none,
            load=none,
            beyond=np.zeros(none.shape, dtype=bool),
        )
