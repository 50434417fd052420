"""The whole torque line of an induction motor, from standstill over breakdown to the field's speed.

`physics.motor` takes the line as straight, which it is at running load. Here
it bends: torque rises with slip up to breakdown and falls beyond it. A motor
loaded past breakdown stops; voltage and field weaken it with their square.

Kloss's formula, with u the speed lost over the speed lost at breakdown:

    T / T_b = 2 u / (1 + u²)

It meets the rated point when the slip at breakdown is s_n (μ + √(μ² - 1)), μ the
breakdown torque over the rated one. The speed lost at breakdown stays the
same at any voltage and frequency; the torque there goes with the square of
the field.

A motor that has lost a phase has two such lines, its own and that of a field that turns the other way: at
standstill they are equal, and it does not start (textbook, symmetrical components).

What it leaves out: deep rotor bars make a cage motor start with more torque
than Kloss says. A pump asks for little at standstill; do not judge a conveyor
by it.

Sources
-------
M. Kloss, "Drehmoment und Schlupf des Drehstrommotors", Archiv für
Elektrotechnik 5 (1916); from memory, as in any textbook on machines.
IEC 60034-1: at least 1.6 times the rated torque (from memory). Two to three
times is common practice.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics import drive
from loadfirst.physics.belt import Drives
from loadfirst.physics.law import Array, column
from loadfirst.physics.ranges import require

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

BREAKDOWN = 2.5  # [-] of the rated torque
STARTING_CURRENT = 7.0  # [-] of the rated current, at rated voltage and frequency (common practice: 6 to 8)


def breakdown_slip(rated_slip: ArrayLike, ratio: ArrayLike = BREAKDOWN) -> Array:
    """Slip at breakdown, at rated voltage and frequency.

    Parameters
    ----------
    rated_slip : array_like
        Above 0. [-]
    ratio : array_like
        Breakdown torque over rated torque, above 1. [-]

    Returns
    -------
    slip : ndarray, broadcast shape [-]

    Raises
    ------
    InputError
        For a value outside these ranges.
    """
    slip, mu = np.asarray(rated_slip, dtype=float), np.asarray(ratio, dtype=float)
    require("motor.rated_slip", slip, slip > 0, "above 0")
    require("motor.breakdown", mu, mu > 1, "above 1")
    return np.asarray(slip * (mu + np.sqrt(mu**2 - 1)))


def breakdown_torque(motor: Drives, ratio: ArrayLike = BREAKDOWN) -> Array:
    """The most torque that the motor gives at its voltage and frequency. (B|1, M) [N·m]

    On two phases that at the speed of the breakdown on three, which is within two per cent of it.
    """
    most = column(ratio) * motor.rated_torque * motor.field_strength**2
    if not motor.two_phases.any():
        return np.asarray(most)
    back = 2 * motor.synchronous_speed - lost_at_breakdown(motor, ratio)
    return np.asarray(most - np.where(motor.two_phases, _kloss(motor, back, ratio), 0.0))


def torque_at(motor: Drives, speed: ArrayLike, ratio: ArrayLike = BREAKDOWN) -> Array:
    """Torque at any speed, standstill and braking included.

    Parameters
    ----------
    motor : Motor or Belted (B|1, M), with a slip
    speed : array_like (B, M)
        Of the shaft; above the field's speed the torque is negative. [rad/s]
    ratio : array_like (B|1, M)
        Breakdown torque over rated torque, above 1. [-]

    Returns
    -------
    torque : ndarray (B, M) [N·m]

    Raises
    ------
    InputError
        For a motor without slip, or a ratio outside its range.
    """
    lost = motor.synchronous_speed - column(speed)
    back = np.where(motor.two_phases, _kloss(motor, 2 * motor.synchronous_speed - lost, ratio), 0.0)
    return np.asarray(_kloss(motor, lost, ratio) - back)


def _kloss(motor: Drives, lost: Array, ratio: ArrayLike) -> Array:
    """Torque of one field at a speed lost to it. (B, M) [rad/s] -> (B, M) [N·m]"""
    share = lost / lost_at_breakdown(motor, ratio)
    most = column(ratio) * motor.rated_torque * motor.field_strength**2
    return np.asarray(2 * most * share / (1 + share**2))


def starting_current(motor: Drives, ratio: ArrayLike = STARTING_CURRENT) -> Array:
    """Current at standstill when switched straight to the supply; it goes with the voltage. (B|1, M) [A]"""
    return column(ratio) * motor.rated_current * motor.relative_voltage


def lost_at_breakdown(motor: Drives, ratio: ArrayLike = BREAKDOWN) -> Array:
    """Speed lost at breakdown: the same at any voltage and frequency. (B|1, M) [rad/s]"""
    field = drive.synchronous_speed(motor.supply_frequency, motor.poles)
    return field * breakdown_slip(motor.rated_slip, column(ratio))
