"""Where the ammeter stands: at the motor, or on the supply's side of a variable-speed drive.

A drive takes what power the motor needs, at the supply's voltage and with next
to no reactive current: before it the current follows the power. At the motor
the current that magnetises it flows too.
"""

from __future__ import annotations

import math

EFFICIENCY = 0.97
"""Of a drive, near enough at any load. Common practice. [-]"""
POWER_FACTOR = 0.9
"""Of a rectifier with a choke, harmonics included: 0.9 to 0.95. Common practice. [-]"""


def before_drive(motor_input: float, voltage: float) -> float:
    """Current that a drive takes from the supply.

    Parameters
    ----------
    motor_input : power that the motor takes. [W]
    voltage : of the supply, between phases. [V]

    Returns
    -------
    float
        In each phase. [A]

    Sources
    -------
    P = √3 U I λ of a three-phase supply; the two factors are common practice.
    """
    return motor_input / (EFFICIENCY * math.sqrt(3) * voltage * POWER_FACTOR)
