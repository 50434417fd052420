"""A belt between motor and pump: another speed, and a little slip more.

The belt's ratio turns the motor's line (speed over torque) into one for the
pump's shaft: torque grows as the speed falls. On top of it the belt creeps, in
proportion to the torque. Both lines are straight, so the pair answers as one
motor with more droop, and the pump's law does not know the difference.

Beyond the torque that it grips with the belt slips: it squeals, heats and
wears, and the pump slows until it asks for no more than that torque
(`physics.machine_curve`, `physics.displacement_curve`). That rubbing grips as
well as sticking is a first judgement: a real belt that slips soon burns.

Sources
-------
Common practice (no published source): V-belts in good order creep by 1 to 2 %
at rated torque, toothed belts not at all; tensioned for about one and a half
times the rated torque. What bending the belt costs is left out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array, Flags, Index, column, pick
from loadfirst.physics.motor import Motor, single
from loadfirst.physics.ranges import require

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

CREEP = 0.01  # [-] of the speed, at rated torque
GRIP = 1.5  # [-] of the rated torque
EDGE = 1e-6  # [-] of the grip: rounding


@dataclass(frozen=True, slots=True)
class Belted:
    """Motors of M machines in B plants with a belt each. Make it with `Belted.of`.

    What it says of torque and speed holds for the pump's shaft, so a machine's law takes
    it for a motor.

    Attributes
    ----------
    motor : Motor
    ratio : ndarray (B|1, M)
        Speed of the pump over that of the motor, without creep. [-]
    creep : ndarray (B|1, M)
        Share of the speed lost at rated torque. [-]
    tightness : ndarray (B|1, M)
        Torque at which the belt slips, over the rated one; infinite without a belt. [-]
    """

    motor: Motor
    ratio: Array
    creep: Array
    tightness: Array

    @classmethod
    def of(
        cls, motor: Motor, ratio: ArrayLike, *, creep: ArrayLike = CREEP, grip: ArrayLike = GRIP
    ) -> Belted:
        """A belt on a motor.

        Parameters
        ----------
        motor : Motor (B|1, M)
        ratio : array_like (B|1, M)
            Pitch diameter on the motor over that on the pump, above 0. [-]
        creep : array_like (B|1, M)
            From 0 to 0.2. [-]
        grip : array_like (B|1, M)
            Torque at which it slips, over the rated one; above 0, infinite where there is no belt. [-]

        Raises
        ------
        InputError
            For a value outside these ranges.
        """
        ratio, creep, grip = column(ratio), column(creep), column(grip)
        require("belt.ratio", ratio, ratio > 0, "above 0")
        require("belt.creep", creep, (creep >= 0) & (creep <= 0.2), "from 0 to 0.2")
        require("belt.grip", np.where(np.isposinf(grip), 1.0, grip), grip > 0, "above 0")
        return cls(motor, ratio, creep, grip)

    @property
    def grip(self) -> Array:
        """Torque at the pump's shaft beyond which the belt slips. (B|1, M) [N·m]"""
        return self.tightness * self.rated_torque

    @property
    def frequency(self) -> Array:
        """That reaches the motor. (B|1, M) [Hz]"""
        return self.motor.frequency

    @property
    def supply_frequency(self) -> Array:
        """That the motor is made for. (B|1, M) [Hz]"""
        return self.motor.supply_frequency

    @property
    def poles(self) -> Array:
        """Of a motor that would turn the pump's shaft as fast without a belt; no whole number. (B|1, M)"""
        return self.motor.poles / self.ratio

    @property
    def rated_slip(self) -> Array:
        """Of the motor alone. (B|1, M) [-]"""
        return self.motor.rated_slip

    @property
    def relative_voltage(self) -> Array:
        """At the motor. (B|1, M) [-]"""
        return self.motor.relative_voltage

    @property
    def two_phases(self) -> Flags:
        """Whether the motor has lost a phase. (B|1, M)"""
        return self.motor.two_phases

    @property
    def field_strength(self) -> Array:
        """In the motor. (B|1, M) [-]"""
        return self.motor.field_strength

    @property
    def rated_power(self) -> Array:
        """Of the motor. (B|1, M) [W]"""
        return self.motor.rated_power

    @property
    def rated_current(self) -> Array:
        """Of the motor. (B|1, M) [A]"""
        return self.motor.rated_current

    @property
    def rated_torque(self) -> Array:
        """The motor's rated torque, at the pump's shaft. (B|1, M) [N·m]"""
        return self.motor.rated_torque / self.ratio

    @property
    def synchronous_speed(self) -> Array:
        """Speed of the pump's shaft without torque. (B|1, M) [rad/s]"""
        return self.motor.synchronous_speed * self.ratio

    @property
    def droop(self) -> Array:
        """Speed lost per torque at the pump's shaft, slip and creep together. (B|1, M) [rad/s per N·m]

        The product of the two, less than a thousandth of the speed, is left out.
        """
        return self.motor.droop * self.ratio**2 + self.synchronous_speed * self.creep / self.rated_torque

    def speed(self, torque: Array) -> Array:
        """Speed of the pump's shaft under a torque there. (B, M) [N·m] -> (B, M) [rad/s]"""
        return self.synchronous_speed - self.droop * torque

    def load(self, torque: Array, speed: Array) -> Array:
        """The motor's shaft power over its rated one, the belt's heat included. (B, M) [-]"""
        at_motor = torque * self.ratio
        return self.motor.load(at_motor, self.motor.speed(at_motor))

    def input_power(self, torque: Array, speed: Array) -> Array:
        """Electric power taken up, with what the belt turns into heat. (B, M) [N·m], [rad/s] -> (B, M) [W]

        `speed` is not needed: the motor's own follows from the torque.
        """
        at_motor = torque * self.ratio
        return self.motor.input_power(at_motor, self.motor.speed(at_motor))

    def current(self, input_power: Array) -> Array:
        """Current in each phase. (B, M) [W] -> (B, M) [A]"""
        return self.motor.current(input_power)

    def heat(self, torque: Array, speed: Array) -> Array:
        """What the belt turns into heat. (B, M) [N·m], pump's speed [rad/s] -> (B, M) [W]"""
        return torque * (self.ratio * self.motor.speed(torque * self.ratio) - speed)

    def slips(self, torque: Array) -> Flags:
        """Where a torque at the pump's shaft is all that the belt holds. (B, M)"""
        return np.asarray(torque >= self.grip * (1 - EDGE))

    def one(self, row: int, machine: int) -> Belted:
        """One of the motors with its belt, (1, 1)."""
        parts = (single(values, row, machine) for values in (self.ratio, self.creep, self.tightness))
        return Belted(self.motor.one(row, machine), *parts)

    def rows(self, index: Index) -> Belted:
        """The belts of some of the plants only."""
        some = (pick(values, index) for values in (self.ratio, self.creep, self.tightness))
        return Belted(self.motor.rows(index), *some)


Drives = Motor | Belted
"""What turns a pump: both answer alike, for the pump's shaft."""
