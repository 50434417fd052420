"""A displacement pump on its induction motor: its flow hardly follows the load, its torque does.

The law that the network meets is made in `physics.displacement_curve`, where
the derivation and the proof that it is monotone stand. Here it is read, and
the speed, the torque and what the motor takes follow from the same slip.

The head is the pressure difference over ρ g: the bores of both sides are taken
as equal, so that there is no velocity head between them. Nothing here stops a
pump against a shut valve but its motor's breakdown torque: no relief valve, no
burst casing. The pressure is then what the motor can push, far beyond the
rating of pump and pipe; `beyond` and `stalled` say so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from loadfirst.physics.belt import Drives
from loadfirst.physics.breakdown import breakdown_torque, starting_current
from loadfirst.physics.displacement_curve import PIECES, Curves, Pumps, curves, slip, stack
from loadfirst.physics.displacement_pump import DisplacementPump
from loadfirst.physics.law import Array, Flags, Index, column, pick
from loadfirst.physics.ranges import require
from loadfirst.units import G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


class DisplacementRunning(NamedTuple):
    """What M displacement pumps do at a flow: as `Running`, where some names have their own sense, and more.

    Attributes
    ----------
    head ... beyond : as in `machine.Running`, but
    npsh_required : [m]         the maker's, with the square of the speed (common practice)
    reduced_flow : [m³/s]       what the pump would give against this head at the maker's speed
    beyond : bool               pressure above the maker's limit
    pressure : [Pa]             outlet less inlet
    slip : [m³/s]               back through the clearances
    volumetric_efficiency : [-] flow over displacement times speed; 0 where it does not pump
    mechanical_efficiency : [-] torque the liquid needs over shaft torque, likewise
    stalled : bool              the load asks more than the motor's breakdown torque, or than its belt holds
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
    reduced_flow: Array
    beyond: Flags
    pressure: Array
    slip: Array
    volumetric_efficiency: Array
    mechanical_efficiency: Array
    stalled: Flags


@dataclass(frozen=True, slots=True)
class DisplacementMachines:
    """The law of M displacement pumps with their motors in a batch of B plants. Make it with `build`.

    Attributes
    ----------
    pumps : Pumps           the makers' numbers
    curves : Curves         head over flow with this motor and liquid
    motor : Motor or Belted
    density : (B|1, 1|M)    of the liquid [kg/m³]
    gas : (B|1, 1|M)        share of gas in what is swept [-]
    """

    pumps: Pumps
    curves: Curves
    motor: Drives
    density: Array
    gas: Array

    @classmethod
    def build(
        cls,
        pumps: Sequence[Sequence[DisplacementPump]],
        motor: Drives,
        density: ArrayLike,
        viscosity: ArrayLike,
        *,
        clearance: ArrayLike = 1.0,
        gas: ArrayLike = 0.0,
    ) -> DisplacementMachines:
        """Pumps with their motors and their liquid.

        Parameters
        ----------
        pumps : B or 1 rows of M pumps
        motor : Motor or Belted of shape (B|1, M|1)
        density : (B|1, M|1)
            Of the liquid, above 0. [kg/m³]
        viscosity : (B|1, M|1)
            *Dynamic*, above 0. [Pa·s]
        clearance : (B|1, M|1)
            Height of the gaps over their height when new: wear; above 0. [-]
        gas : (B|1, M|1)
            Share of gas in the volume that is swept, at suction pressure,
            from 0 to 0.9. It is squeezed to nothing on the way: less liquid
            is delivered, the torque stays (common practice). [-]

        Raises
        ------
        InputError
            For a value outside the ranges above.
        """
        numbers = tuple(column(number) for number in (density, viscosity, clearance, gas))
        for name, number in zip(("density", "viscosity", "clearance"), numbers, strict=False):
            require(f"pump.{name}", number, number > 0, "above 0")
        require("pump.gas", numbers[3], (numbers[3] >= 0) & (numbers[3] <= 0.9), "from 0 to 0.9")
        rated = stack(pumps)
        return cls(rated, curves(rated, motor, *numbers), motor, numbers[0], numbers[3])

    @property
    def count(self) -> int:
        """Machines per plant (M)."""
        return int(self.curves.start.shape[1])

    @property
    def shut_off_head(self) -> Array:
        """Head at no flow: all of the flow slips back, or the motor is stalled. (B|1, M) [m]"""
        return -self.head_drop(np.zeros(self.curves.start.shape))[0]

    @property
    def last_flow(self) -> Array:
        """Flow against no head. (B|1, M) [m³/s]"""
        return self.curves.free_flow

    @property
    def best_efficiency_flow(self) -> Array:
        """The maker's flow, the usual size of a flow here. (B|1, M) [m³/s]"""
        return self.pumps.rated_flow

    @property
    def limit_head(self) -> Array:
        """Head at the most pressure that the maker allows. (B|1, M) [m]"""
        return self.pumps.pressure_limit / (self.density * G)

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Minus the head the pumps add, and its slope, never negative. (B, M) [m³/s] -> [m], [m/(m³/s)]"""
        row = self._piece(flow)
        back, root = _slip(row, flow)
        a, bent = row[..., 4], row[..., 5] * np.abs(back)
        return -back * (a + bent), (a + 2 * bent) / root

    def flow_at(self, head: Array) -> Array:
        """The flow against a head, the inverse of `head_drop`. (B, M) [m] -> [m³/s]

        Of two pieces the one with less flow holds where the motor is stalled on one of them: it gives
        way more. Where the liquid drives the pump the one holds on which it runs away with the motor.
        """
        rows = [self.curves.table.take(self.curves.start + piece, axis=0) for piece in range(PIECES)]
        flows = [row[..., 0] - row[..., 1] * head - slip(head, row[..., 4], row[..., 5]) for row in rows]
        stalled, running, driven, away = flows
        given = np.minimum(stalled, running)
        return np.where(head >= 0, given, np.maximum(np.minimum(running, driven), away))

    def corners(self) -> Array:
        """Where the motor reaches its breakdown torque; the other two corners are slight. (B|1, M) [m³/s]"""
        return self.curves.stall

    def shut(self, flow: Array) -> Flags:
        """Never: even at standstill liquid passes the clearances. (B, M)"""
        return np.zeros(np.broadcast_shapes(flow.shape, self.curves.start.shape), dtype=bool)

    def rows(self, index: Index) -> DisplacementMachines:
        """The machines of some of the plants only."""
        return DisplacementMachines(
            pumps=self.pumps.rows(index),
            curves=self.curves.rows(index),
            motor=self.motor.rows(index),
            density=pick(self.density, index),
            gas=pick(self.gas, index),
        )

    def running(self, flow: Array) -> DisplacementRunning:
        """Everything else that the machines do at a flow. (B, M) [m³/s]"""
        row = self._piece(flow)
        back, _ = _slip(row, flow)
        head = back * (row[..., 4] + row[..., 5] * np.abs(back))
        swept = (1 - self.gas) * self.pumps.per_radian
        speed = (row[..., 0] - row[..., 1] * head) / swept
        pressure = self.density * G * head
        push = 1 + self.pumps.friction
        ideal = self.curves.torque_per_head * head
        torque = ideal * np.where(head > 0, push, 1 / push) + self.curves.drag * speed + self.curves.bearings
        shaft_power = torque * speed
        stalled = flow < self.curves.stall
        motor_input = self.motor.input_power(torque, self.motor.speed(torque))
        halted = stalled & (self.motor.grip > breakdown_torque(self.motor))
        pumping = (flow > 0) & (head > 0) & (speed > 0)
        return DisplacementRunning(
            head=head,
            speed=speed,
            torque=torque,
            shaft_power=shaft_power,
            efficiency=_share(flow * pressure, shaft_power, pumping),
            npsh_required=self.pumps.npsh_required * (np.maximum(speed, 0.0) / self.pumps.speed) ** 2,
            motor_input=motor_input,
            current=self._current(motor_input, speed, halted),
            load=np.where(halted, shaft_power / self.motor.rated_power, self.motor.load(torque, speed)),
            reduced_flow=swept * self.pumps.speed - back,
            beyond=np.asarray(pressure > self.pumps.pressure_limit),
            pressure=pressure,
            slip=back,
            volumetric_efficiency=_share(flow, self.pumps.per_radian * speed, pumping),
            mechanical_efficiency=_share(ideal, torque, pumping),
            stalled=stalled,
        )

    def _piece(self, flow: Array) -> Array:
        """The rows of `displacement_curve.Curves.table` in force. (B, M) -> (B, M, 6)"""
        piece = (flow > self.curves.knots).sum(axis=0)
        return np.asarray(self.curves.table.take(self.curves.start + piece, axis=0))

    def _current(self, motor_input: Array, speed: Array, halted: Flags) -> Array:
        """Current; past breakdown it climbs to the starting current as the shaft comes to rest. [A]

        `motor_input` holds the power that crosses the air gap, torque times the
        field's speed, whether the shaft turns or not.
        """
        usual = self.motor.current(motor_input)
        at_rest = starting_current(self.motor)
        left = np.clip(speed / self.motor.synchronous_speed, 0.0, 1.0)
        return np.where(halted, np.maximum(usual, at_rest + left * (usual - at_rest)), usual)


def _slip(row: Array, flow: Array) -> tuple[Array, Array]:
    """Slip [m³/s], and √(A² + 4 B |u|) [-]; see `physics.displacement_curve`."""
    u = row[..., 0] - flow
    root = np.sqrt(row[..., 2] ** 2 + 4 * row[..., 3] * np.abs(u))
    return 2 * u / (row[..., 2] + root), root


def _share(part: Array, whole: Array, pumping: Flags) -> Array:
    """Part over whole where the pump pumps, else 0. [-]"""
    return np.where(pumping, part / np.where(pumping, whole, 1.0), 0.0)
