"""How fast an induction motor turns: the field's speed, less a slip that follows the torque.

At constant voltage per hertz the torque line keeps its slope and shifts with
the frequency. Above the supply's frequency the voltage cannot rise any more,
the field weakens, and the same torque takes a slip that grows with the
square of the frequency (T ∝ (V/f)² × slip frequency; common practice, as in
any textbook on electric drives).

The line is straight: right up to about one and a half times the rated torque;
a motor near its breakdown torque slips more than this says.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

SLIP_POWER = np.array([0.373, 3.73, 11.2, 37.3, 186.0]) * 1e3  # [W] 1/2, 5, 15, 50 and 250 hp
SLIP = np.array([0.05, 0.03, 0.025, 0.017, 0.008])  # [-]
VOLTAGE = {50: 400.0, 60: 460.0}  # [V] IEC 60038 and common practice in 60 Hz countries


def synchronous_speed(frequency: ArrayLike, poles: ArrayLike) -> Array:
    """Speed of the rotating field, n = 120 f / poles in 1/min.

    Parameters
    ----------
    frequency : array_like
        Of the current that reaches the motor. [Hz]
    poles : array_like
        Number of poles, 2, 4, 6 …

    Returns
    -------
    speed : ndarray, broadcast shape [rad/s]
    """
    return np.asarray(4 * math.pi * np.asarray(frequency, dtype=float) / np.asarray(poles, dtype=float))


def rated_slip(power: ArrayLike) -> Array:
    """Typical slip at rated load of a standard cage motor of this rated power.

    Parameters
    ----------
    power : array_like
        Rated power. [W]

    Returns
    -------
    slip : ndarray, same shape
        Part of the field's speed, 0.05 for 0.4 kW and less, 0.008 for 190 kW
        and more, between them on the logarithm of the power. [-]

    Sources
    -------
    The Engineering ToolBox, "Electrical Induction Motors - Slip": 5, 3, 2.5,
    1.7 and 0.8 % (read) for 1/2, 5, 15, 50 and 250 hp (from memory).
    """
    return np.asarray(np.interp(np.log(power), np.log(SLIP_POWER), SLIP))


def weakening(frequency: ArrayLike, supply_frequency: ArrayLike) -> Array:
    """How many times weaker the field is than on the supply: 1 up to the supply's frequency. [-]"""
    ratio = np.asarray(frequency, dtype=float) / np.asarray(supply_frequency, dtype=float)
    return np.asarray(np.maximum(ratio, 1.0))
