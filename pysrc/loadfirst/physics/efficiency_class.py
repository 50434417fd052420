"""Rated efficiency of cage motors of the classes IE1, IE2, IE3 and IE4.

IE3 comes from `physics.motor_efficiency`, for 50 and for 60 Hz. The others are
the standard's tables of nominal efficiency at 50 Hz, straight between the sizes
on the logarithm of the power; outside the sizes the nearest efficiency is kept.
At 60 Hz a class loses as much more or less than IE3 as it does at 50 Hz
(both our choice).

Sources
-------
IEC 60034-30-1:2014, nominal efficiencies at 50 Hz: IE1, IE2 and IE4 from memory.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.errors import InputError
from loadfirst.physics.law import Array
from loadfirst.physics.motor_efficiency import rated_efficiency

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

CLASSES = ("IE1", "IE2", "IE3", "IE4")
POLES = (2, 4, 6, 8)

# fmt: off
# ruff: noqa: E501
POWER = np.array([0.75, 1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45, 55, 75, 90, 110, 132, 160, 200])  # [kW]
TABLES = {  # [%]
    ("IE1", 2): (72.1, 75.0, 77.2, 79.7, 81.5, 83.1, 84.7, 86.0, 87.6, 88.7, 89.3, 89.9, 90.7, 91.2, 91.7, 92.1, 92.7, 93.0, 93.3, 93.5, 93.8, 94.0),
    ("IE1", 4): (72.1, 75.0, 77.2, 79.7, 81.5, 83.1, 84.7, 86.0, 87.6, 88.7, 89.3, 89.9, 90.7, 91.2, 91.7, 92.1, 92.7, 93.0, 93.3, 93.5, 93.8, 94.0),
    ("IE1", 6): (70.0, 72.9, 75.2, 77.7, 79.7, 81.4, 83.1, 84.7, 86.4, 87.7, 88.6, 89.2, 90.2, 90.8, 91.4, 91.9, 92.6, 92.9, 93.3, 93.5, 93.8, 94.0),
    ("IE1", 8): (61.2, 66.5, 70.2, 74.2, 77.0, 79.2, 81.4, 83.1, 85.0, 86.2, 86.9, 87.4, 88.3, 88.8, 89.2, 89.7, 90.3, 90.7, 91.1, 91.5, 91.9, 92.5),
    ("IE2", 2): (77.4, 79.6, 81.3, 83.2, 84.6, 85.8, 87.0, 88.1, 89.4, 90.3, 90.9, 91.3, 92.0, 92.5, 92.9, 93.2, 93.8, 94.1, 94.3, 94.6, 94.8, 95.0),
    ("IE2", 4): (79.6, 81.4, 82.8, 84.3, 85.5, 86.6, 87.7, 88.7, 89.8, 90.6, 91.2, 91.6, 92.3, 92.7, 93.1, 93.5, 94.0, 94.2, 94.5, 94.7, 94.9, 95.1),
    ("IE2", 6): (75.9, 78.1, 79.8, 81.8, 83.3, 84.6, 86.0, 87.2, 88.7, 89.7, 90.4, 90.9, 91.7, 92.2, 92.7, 93.1, 93.7, 94.0, 94.3, 94.6, 94.8, 95.0),
    ("IE2", 8): (66.2, 70.8, 74.1, 77.6, 80.0, 81.9, 83.8, 85.3, 86.9, 88.0, 88.6, 89.1, 89.8, 90.3, 90.7, 91.0, 91.6, 91.9, 92.3, 92.6, 93.0, 93.5),
    ("IE4", 2): (83.5, 85.2, 86.5, 88.0, 89.1, 90.0, 90.9, 91.7, 92.6, 93.3, 93.7, 94.0, 94.5, 94.8, 95.0, 95.3, 95.6, 95.8, 96.0, 96.2, 96.3, 96.5),
    ("IE4", 4): (85.7, 87.2, 88.2, 89.5, 90.4, 91.1, 91.9, 92.6, 93.3, 93.9, 94.2, 94.5, 94.9, 95.2, 95.4, 95.7, 96.0, 96.1, 96.3, 96.4, 96.6, 96.7),
    ("IE4", 6): (82.7, 84.5, 85.9, 87.4, 88.6, 89.5, 90.5, 91.3, 92.3, 92.9, 93.4, 93.7, 94.2, 94.5, 94.8, 95.1, 95.4, 95.6, 95.8, 96.0, 96.2, 96.3),
    ("IE4", 8): (78.4, 80.8, 82.6, 84.5, 85.9, 87.1, 88.3, 89.3, 90.4, 91.2, 91.7, 92.1, 92.7, 93.1, 93.4, 93.7, 94.2, 94.4, 94.7, 94.9, 95.1, 95.4),
}
# fmt: on


def class_efficiency(
    power: ArrayLike, poles: int, efficiency_class: str, supply_frequency: int = 50
) -> Array:
    """Efficiency at rated load of a motor of a class.

    Parameters
    ----------
    power : array_like
        Rated power, above 0. [W]
    poles : int
        2, 4, 6 or 8.
    efficiency_class : str
        "IE1" (standard), "IE2" (high), "IE3" (premium) or "IE4" (super premium).
    supply_frequency : int
        50 or 60. [Hz]

    Returns
    -------
    efficiency : ndarray, shape of `power` [-]
        To hand to `Motor.rated`.

    Raises
    ------
    InputError
        For a class or a number of poles that has no table here.
    """
    if efficiency_class not in CLASSES:
        allowed = "one of " + ", ".join(CLASSES)
        raise InputError(
            "motor.efficiency_class", efficiency_class, allowed, rule="choice", choices=list(CLASSES)
        )
    if poles not in POLES:
        raise InputError("motor.poles", poles, "2, 4, 6 or 8", rule="choice", choices=list(POLES))
    premium = rated_efficiency(power, poles, supply_frequency)
    if efficiency_class == "IE3":
        return premium
    kilowatt = np.asarray(power, dtype=float) / 1e3
    nominal = np.interp(np.log(kilowatt), np.log(POWER), TABLES[efficiency_class, poles]) / 100
    if supply_frequency == 50:
        return np.asarray(nominal)
    usual = rated_efficiency(power, poles, 50)
    return np.asarray(1 / (1 + (1 / premium - 1) * (1 / nominal - 1) / (1 / usual - 1)))
