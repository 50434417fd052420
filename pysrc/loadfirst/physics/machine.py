"""A centrifugal pump on its induction motor: one law, head added over flow, with the slip inside.

The curve that the network meets is made once, in `physics.machine_curve`, where
the derivation stands. Here it is read: one search gives head, torque and
required NPSH at a flow; the motor gives the rest.

Beyond the last point the torque is bent so that it never reaches what the
motor's line holds at standstill: the speed stays above zero and every number
finite, however far a pump is forced.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from loadfirst.physics.belt import Belted, Drives
from loadfirst.physics.cavitation import rising
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.interpolate import Pieces, slope, value
from loadfirst.physics.law import Array, Flags, Index, column, pick
from loadfirst.physics.machine_curve import HEAD, NPSH, SLOWER, TORQUE, move, stack
from loadfirst.units import G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


class Running(NamedTuple):
    """What M machines in a batch of B plants do at a flow. Every array (B, M), every number finite.

    Attributes
    ----------
    head : [m]              what the pump adds
    speed : [rad/s]         of the shaft
    torque : [N·m]
    shaft_power : [W]
    efficiency : [-]        of the pump; 0 where it gives the liquid nothing
    npsh_required : [m]
    motor_input : [W]       electric power
    current : [A]           in each phase
    load : [-]              the motor's shaft power over its rated one
    beyond : bool           past the last point of the maker's curve
    """

    head: Array
    speed: Array
    torque: Array
    shaft_power: Array
    efficiency: Array
    npsh_required: Array
    motor_input: Array
    current: Array
    load: Array
    beyond: Flags


class Leaning(NamedTuple):
    """By how much stand-in laws fall more steeply, and where they are true, (B, M). [m/(m³/s)] [m³/s]"""

    lean: Array
    about: Array


@dataclass(frozen=True, slots=True)
class Machines:
    """The law of M pumps with their motors in a batch of B plants. Make it with `Machines.build`.

    Attributes
    ----------
    curves : Pieces         head, torque and required NPSH over flow, at the speed the motor holds
    motor : Motor or Belted
    density : (B|1, 1|M)    of the liquid pumped [kg/m³]
    shut_off_head, peak_head, last_flow, best_efficiency_flow : (B, M)
        Of these machines as they run. [m] [m] [m³/s] [m³/s]
    limited : (B, M) bool
        Where the curve's power and the motor's slip would have made the head
        rise with the flow, and were held back (`physics.machine_curve`).
    droops : (B, M) bool
        Where the head rises with the flow somewhere, as the maker's does.
    steepest : (B, M)
        Not less than the slope of any such rise. [m/(m³/s)]
    peaks : (B|1, M, K)
        The most NPSH that is required at any knot up to each piece: where a
        maker's curve falls at small flow its rising envelope counts. [m]
    leaning : Leaning or None
        See `leant`.
    """

    curves: Pieces
    motor: Drives
    density: Array
    shut_off_head: Array
    peak_head: Array
    last_flow: Array
    best_efficiency_flow: Array
    limited: Flags
    droops: Flags
    steepest: Array
    peaks: Array
    leaning: Leaning | None

    @classmethod
    def build(cls, curves: Sequence[Sequence[PumpCurve]], motor: Drives, density: ArrayLike) -> Machines:
        """Pumps with their motors and their liquid.

        Parameters
        ----------
        curves : B or 1 rows of M pumps
        motor : Motor or Belted of shape (B|1, M|1)
        density : (B|1, M|1)
            Of the liquid pumped, above 0. [kg/m³]
        """
        points, density = stack(curves), column(density)
        moved = move(points, motor, density)
        return cls(
            curves=moved.curves,
            motor=motor,
            density=density,
            **{name: value for name, value in moved._asdict().items() if name != "curves"},
            peaks=_peaks(moved.curves),
            leaning=None,
        )

    @property
    def count(self) -> int:
        """Machines per plant (M)."""
        return int(self.curves.start.shape[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Minus the head the pumps add, and its slope, never negative. (B, M) [m³/s] -> [m], [m/(m³/s)]"""
        row, into = self.curves.find(flow)
        if self.leaning is None:
            return -value(row, into), np.maximum(-slope(row, into), 0.0)
        lean, about = self.leaning
        return lean * (flow - about) - value(row, into), np.maximum(lean - slope(row, into), 0.0)

    def leant(self, about: Array) -> Machines:
        """The same machines with stand-in laws that hold at one flow, and never rise in head.

        A head that droops is taken off by as much as it can rise at most, counted
        from the flow `about`; so a network has one answer, and it is true where
        the flow found is that one.

        Parameters
        ----------
        about : (B, M) [m³/s]
        """
        return replace(self, leaning=Leaning(np.where(self.droops, self.steepest, 0.0) + 0 * about, about))

    def rise(self, flow: Array) -> Array:
        """Slope of the head over the flow, whatever its sign. (B, M) [m³/s] -> [m/(m³/s)]"""
        row, into = self.curves.find(flow)
        return slope(row, into)

    def corners(self) -> Array | None:
        """None: the law has no corner."""
        return None

    def shut(self, flow: Array) -> Flags:
        """Never: a pump is no closed valve. (B, M)"""
        return np.zeros(flow.shape, dtype=bool)

    def rows(self, index: Index) -> Machines:
        """The machines of some of the plants only."""
        return Machines(
            curves=self.curves.rows(index),
            motor=self.motor.rows(index),
            density=pick(self.density, index),
            shut_off_head=pick(self.shut_off_head, index),
            peak_head=pick(self.peak_head, index),
            last_flow=pick(self.last_flow, index),
            best_efficiency_flow=pick(self.best_efficiency_flow, index),
            limited=self.limited[index] if len(self.limited) > 1 else self.limited,
            droops=self.droops[index] if len(self.droops) > 1 else self.droops,
            steepest=pick(self.steepest, index),
            peaks=pick(self.peaks, index),
            leaning=self.leaning and Leaning(*(pick(part, index) for part in self.leaning)),
        )

    def running(self, flow: Array) -> Running:
        """Everything else that the machines do at a flow. (B, M) [m³/s]"""
        row, into = self.curves.find(flow)
        beyond = self.curves.beyond(flow)
        head = value(row, into, HEAD)
        torque = self._held(row, into, beyond)
        speed = self._speed(row, into, torque)
        shaft_power = torque * speed
        given = self.density * G * flow * head
        motor_input = self.motor.input_power(torque, speed)
        return Running(
            head=head,
            speed=speed,
            torque=torque,
            shaft_power=shaft_power,
            efficiency=np.where((flow > 0) & (head > 0), given / shaft_power, 0.0),
            npsh_required=value(row, into, NPSH),
            motor_input=motor_input,
            current=self.motor.current(motor_input),
            load=self.motor.load(torque, speed),
            beyond=beyond,
        )

    @property
    def shut_off_torque(self) -> Array:
        """Torque at no flow, at the speed that the motor holds there. (B|1, M) [N·m]"""
        return np.asarray(self.curves.table[self.curves.start, 1 + 4 * TORQUE])

    def _speed(self, row: Array, into: Array, torque: Array) -> Array:
        """The motor's, unless a belt slips: then less. (B, M) [rad/s]"""
        speed = self.motor.speed(torque)
        return speed - value(row, into, SLOWER) if isinstance(self.motor, Belted) else speed

    def _held(self, row: Array, into: Array, beyond: Flags) -> Array:
        """Torque, beyond the last point bent below what the motor's line holds at standstill. [N·m]"""
        torque = value(row, into, TORQUE)
        last = row[..., 1 + 4 * TORQUE]
        standstill = self.motor.synchronous_speed / np.maximum(self.motor.droop, 1e-300)
        more = np.where(beyond, torque - last, 0.0)
        bent = np.where(beyond, last + more / (1 + more / (standstill - last)), torque)
        return np.minimum(bent, self.motor.grip)


def _peaks(curves: Pieces) -> Array:
    """Required NPSH where each piece starts, and the most of it so far. (B|1, M, K)"""
    pieces = curves.start[..., None] + np.arange(curves.knots.shape[-1] + 1)
    return rising(curves.table[pieces, 1 + 4 * NPSH])
