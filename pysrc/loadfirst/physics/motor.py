"""An induction motor as the pump and the ammeter see it: speed, input power and current at a torque.

Current is not proportional to load: even an idle motor draws the current that
magnetises it. Here the current has an active part, which carries the input
power, and a reactive part: one third of the rated current to magnetise, and a
leakage that grows with the square of the active part. So a motor at half load
still draws 55 to 60 % of its rated current (common practice).

Losses are fixed ones and ones that grow with the square of the torque. Their
ratio follows from where efficiency is best, "usually near 75 % of rated load"
(U.S. Department of Energy, fact sheet "Determining Electric Motor Load and
Efficiency", read). Fixed losses fall with frequency, with exponent 1.5, between
hysteresis (1) and eddy currents (2) (our choice).

Low voltage weakens the field in proportion. The same torque then takes a slip
that grows with the inverse square of the voltage, T ∝ V² × slip, which is
little; the active current grows with the inverse of the voltage and the
magnetising one falls with it. So the current rises where the motor is loaded
and falls where it idles (common practice, as in any textbook on machines). The
fixed losses are taken as going with the square of the voltage (our choice).

A motor that loses one phase while it runs goes on between the other two. By symmetrical components it
then is two motors in series, one of which the rotor meets almost at twice the field's speed: that one lets
little torque through and takes an eighth of the voltage that the first would have. So the first has
`TWO_PHASES` of its voltage, the current in the two phases left is √3 times that of its share, and the rotor
heats twice as much for the same torque (textbook; the figure is from memory, 0.85 to 0.89).
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from loadfirst.physics import drive
from loadfirst.physics.law import Array, Flags, Index, column, pick
from loadfirst.physics.motor_efficiency import rated_efficiency
from loadfirst.physics.ranges import require

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

BEST_LOAD = 0.75  # [-] part of rated load where the efficiency is best
FIXED_SHARE = BEST_LOAD**2 / (1 + BEST_LOAD**2)  # [-] of the losses at rated load
FIXED_EXPONENT = 1.5  # [-]
MAGNETISING = 1 / 3  # [-] of the rated current
TWO_PHASES = 0.87  # [-] of the voltage that is left for the field that drives, one phase lost
ANY_TORQUE = column(np.inf)  # [N·m]


class Motor(NamedTuple):
    """Motors of M machines in a batch of B plants. Make it with `Motor.rated`.

    Attributes
    ----------
    rated_power : ndarray (B|1, M) [W]
    poles : ndarray (B|1, M)
    supply_frequency : ndarray (B|1, M)
        The frequency the motor is made for. [Hz]
    frequency : ndarray (B|1, M)
        The frequency that reaches it. [Hz]
    rated_slip, efficiency, power_factor : ndarray (B|1, M)
        At rated load. [-]
    voltage : ndarray (B|1, M)
        Rated, between phases. [V]
    relative_voltage : ndarray (B|1, M)
        Voltage at the terminals over the one that belongs to the frequency
        there: in proportion to it up to the supply's, rated above. [-]
        1 on a sound supply or drive. A supply that sags to 47 of 50 Hz at full
        voltage has 50/47.
    phases : ndarray (B|1, M)
        That reach it: 3, or 2 where one is lost; `relative_voltage` holds what that leaves. [-]
    """

    rated_power: Array
    poles: Array
    supply_frequency: Array
    frequency: Array
    rated_slip: Array
    efficiency: Array
    power_factor: Array
    voltage: Array
    relative_voltage: Array = column(1.0)
    phases: Array = column(3.0)

    @classmethod
    def rated(
        cls,
        power: ArrayLike,
        *,
        poles: ArrayLike = 2,
        supply_frequency: ArrayLike = 50,
        frequency: ArrayLike | None = None,
        slip: ArrayLike | None = None,
        efficiency: ArrayLike | None = None,
        relative_voltage: ArrayLike = 1.0,
        phases: ArrayLike = 3.0,
    ) -> Motor:
        """A standard motor, IE3 unless told, 400 V at 50 Hz or 460 V at 60 Hz.

        Parameters
        ----------
        power : array_like
            Rated power, above 0. [W]
        poles : array_like
            2, 4, 6 or 8.
        supply_frequency : array_like
            50 or 60. [Hz]
        frequency : array_like
            What reaches the motor; the supply's when left out. [Hz]
        slip : array_like
            Slip at rated load; typical of the power when left out; 0 for a
            motor that holds its speed. [-]
        efficiency : array_like
            At rated load, above 0, below 1; that of class IE3 when left out. [-]
        relative_voltage : array_like
            From 0.5 to 1.5, of all three phases; see `Motor`. [-]
        phases : array_like
            3 or 2. [-]

        Raises
        ------
        InputError
            For an efficiency or a voltage outside these ranges.

        Notes
        -----
        All arguments broadcast as (B|1, M); a plain number is one motor. A
        drive above the supply's frequency keeps the supply's voltage.
        """
        power, poles, supply = column(power), column(poles), column(supply_frequency)
        volts, wires = column(relative_voltage), column(phases)
        require("motor.relative_voltage", volts, (volts >= 0.5) & (volts <= 1.5), "from 0.5 to 1.5")
        rated = rated_efficiency(power, poles, supply) if efficiency is None else column(efficiency)
        require("motor.efficiency", rated, (rated > 0) & (rated < 1), "above 0, below 1")
        return cls(
            rated_power=power,
            poles=poles,
            supply_frequency=supply,
            frequency=supply if frequency is None else column(frequency),
            rated_slip=drive.rated_slip(power) if slip is None else column(slip),
            efficiency=rated,
            power_factor=rated_power_factor(power, poles),
            voltage=np.where(supply == 60, drive.VOLTAGE[60], drive.VOLTAGE[50]),
            relative_voltage=np.where(wires == 2, TWO_PHASES, 1.0) * volts,
            phases=wires,
        )

    @property
    def synchronous_speed(self) -> Array:
        """Speed of the field at the frequency that reaches the motor. (B|1, M) [rad/s]"""
        return drive.synchronous_speed(self.frequency, self.poles)

    @property
    def rated_torque(self) -> Array:
        """Torque at rated power on the supply's frequency. (B|1, M) [N·m]"""
        field = drive.synchronous_speed(self.supply_frequency, self.poles)
        return self.rated_power / (field * (1 - self.rated_slip))

    @property
    def rated_current(self) -> Array:
        """What the name plate says, for the ammeter's range. (B|1, M) [A]"""
        return self.rated_power / (math.sqrt(3) * self.voltage * self.efficiency * self.power_factor)

    @property
    def field_strength(self) -> Array:
        """Field over the rated one; the torque at a slip goes with its square. (B|1, M) [-]"""
        return self.relative_voltage / drive.weakening(self.frequency, self.supply_frequency)

    @property
    def droop(self) -> Array:
        """Speed lost per torque. (B|1, M) [rad/s per N·m]"""
        field = drive.synchronous_speed(self.supply_frequency, self.poles)
        return field * self.rated_slip / self.rated_torque / self.field_strength**2

    @property
    def two_phases(self) -> Flags:
        """Whether one phase is lost. (B|1, M)"""
        return np.asarray(self.phases == 2)

    @property
    def grip(self) -> Array:
        """Torque that the coupling holds: any. (1, 1) [N·m]"""
        return ANY_TORQUE

    def speed(self, torque: Array) -> Array:
        """Shaft speed under a torque. (B, M) [N·m] -> (B, M) [rad/s]"""
        return self.synchronous_speed - self.droop * torque

    def load(self, torque: Array, speed: Array) -> Array:
        """Shaft power over the rated one. (B, M) [N·m], [rad/s] -> (B, M) [-]"""
        return torque * speed / self.rated_power

    def input_power(self, torque: Array, speed: Array) -> Array:
        """Electric power taken up: shaft power and losses. (B, M) [N·m], [rad/s] -> (B, M) [W]"""
        losses = self.rated_power * (1 / self.efficiency - 1)
        fixed = FIXED_SHARE * losses * (self.frequency / self.supply_frequency) ** FIXED_EXPONENT
        active = torque / self.rated_torque / self.field_strength
        heat = np.where(self.two_phases, 2.0, 1.0) * (1 - FIXED_SHARE) * losses * active**2
        return torque * speed + fixed * self.relative_voltage**2 + heat

    def current(self, input_power: Array) -> Array:
        """Current in each phase of the motor's cable that has any. (B, M) [W] -> (B, M) [A]

        The voltage falls with the frequency below the supply's and stays at
        the supply's above it, `relative_voltage` apart. Between a drive and its motor; before the drive
        an ammeter would follow the power instead.
        """
        weak = drive.weakening(self.frequency, self.supply_frequency)
        below = np.minimum(self.frequency / self.supply_frequency, 1.0)
        line = np.where(self.two_phases, self.relative_voltage / TWO_PHASES, self.relative_voltage)
        active = input_power / (math.sqrt(3) * self.voltage * below * line * self.rated_current)
        reactive_rated = np.sqrt(1 - self.power_factor**2)
        leakage = (reactive_rated - MAGNETISING) / self.power_factor**2
        stray = leakage * weak / self.relative_voltage
        reactive = MAGNETISING * self.field_strength + stray * active**2
        return np.where(self.two_phases, math.sqrt(3), 1.0) * self.rated_current * np.hypot(active, reactive)

    def one(self, row: int, machine: int) -> Motor:
        """One of the motors, (1, 1)."""
        if all(part.size == 1 for part in self):
            return self
        return Motor(*(single(part, row, machine) for part in self))

    def rows(self, index: Index) -> Motor:
        """The motors of some of the plants only."""
        return Motor(*(pick(part, index) for part in self))


def single(values: Array, row: int, machine: int) -> Array:
    """One of (B|1, M|1) values, as (1, 1)."""
    plant = values[row if len(values) > 1 else 0]
    return np.reshape(plant[machine if len(plant) > 1 else 0], (1, 1))


def rated_power_factor(power: ArrayLike, poles: ArrayLike) -> Array:
    """Typical power factor at rated load (common practice; no published source).

    0.86 for 5.5 kW and 2 poles, 0.03 more per decade of power and 0.03 less
    per further pair of poles, kept from 0.6 to 0.92. Power in W.
    """
    decades = np.log10(np.asarray(power, dtype=float) / 5500.0)
    pairs = np.asarray(poles, dtype=float) / 2 - 1
    return np.clip(0.86 + 0.03 * decades - 0.03 * pairs, 0.6, 0.92)
