"""Rated efficiency of standard cage motors of class IE3 (premium).

Sources
-------
50 Hz: interpolation η = A x³ + B x² + C x + D in per cent, x = lg(P / 1 kW),
with the coefficients of IEC 60034-30-1 as printed in UK SI 2021/745, schedule
16, tables 27 and 28 (read), which print them for 0.12–0.55 and 0.75–200 kW.
60 Hz: 10 CFR 431.25, table 1, enclosed motors, 2, 4 and 6 poles (read as
quoted by a public copy); 8 poles up to 22 kW from the Federal Register's
correction C1-2013-28776 (read), above from memory.
Outside these ranges the nearest efficiency is kept; below 0.75 kW the 60 Hz
motor has that of the 50 Hz one, but not more than at 0.75 kW (our choice).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

SMALL_50 = {  # 0.12 to 0.55 kW
    2: (6.8532, 6.2006, 25.1317, 84.0392),
    4: (7.6356, 4.8236, 21.0903, 86.0998),
    6: (-17.361, -44.538, -3.0554, 79.1318),
    8: (-0.5896, -25.526, 4.2884, 75.831),
}
LARGE_50 = {  # 0.75 to 200 kW
    2: (0.3569, -3.3076, 11.6108, 82.2503),
    4: (0.0773, -1.8951, 9.2984, 83.7025),
    6: (0.1252, -2.613, 11.9963, 80.4769),
    8: (0.7189, -5.1678, 15.705, 77.074),
}
# fmt: off
# ruff: noqa: E501
POWER_60 = np.array([0.75, 1.1, 1.5, 2.2, 3.7, 5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45, 55, 75, 90, 110, 150])  # [kW]
TABLE_60 = {  # [%]
    2: (77.0, 84.0, 85.5, 86.5, 88.5, 89.5, 90.2, 91.0, 91.0, 91.7, 91.7, 92.4, 93.0, 93.6, 93.6, 94.1, 95.0, 95.0, 95.4),
    4: (85.5, 86.5, 86.5, 89.5, 89.5, 91.7, 91.7, 92.4, 93.0, 93.6, 93.6, 94.1, 94.5, 95.0, 95.4, 95.4, 95.4, 95.8, 96.2),
    6: (82.5, 87.5, 88.5, 89.5, 89.5, 91.0, 91.0, 91.7, 91.7, 93.0, 93.0, 94.1, 94.1, 94.5, 94.5, 95.0, 95.0, 95.8, 95.8),
    8: (75.5, 78.5, 84.0, 85.5, 86.5, 86.5, 89.5, 89.5, 90.2, 90.2, 91.7, 91.7, 92.4, 92.4, 93.6, 93.6, 94.1, 94.1, 94.5),
}
# fmt: on


def rated_efficiency(power: ArrayLike, poles: ArrayLike, supply_frequency: ArrayLike) -> Array:
    """Efficiency at rated load of an IE3 motor.

    Parameters
    ----------
    power : array_like
        Rated power, above 0. [W]
    poles : array_like
        2, 4, 6 or 8.
    supply_frequency : array_like
        50 or 60. [Hz]

    Returns
    -------
    efficiency : ndarray, broadcast shape [-]
    """
    given = (np.asarray(number, dtype=float) for number in (power, poles, supply_frequency))
    power, poles, supply = np.broadcast_arrays(*given)
    out = np.empty(power.shape)
    for pole in set(poles.flat):  # np.unique would load numpy's masked arrays into the page
        for hertz in set(supply.flat):
            here = (poles == pole) & (supply == hertz)
            percent = _at_60 if hertz == 60 else _at_50
            out[here] = percent(power[here] / 1e3, int(pole)) / 100
    return out


def _at_50(kilowatt: Array, poles: int) -> Array:
    """The two polynomials, joined by a straight line on lg P between 0.55 and 0.75 kW. [%]"""
    x = np.log10(np.clip(kilowatt, 0.12, 200.0))
    ends = np.log10([0.55, 0.75])
    low, high = np.poly1d(SMALL_50[poles]), np.poly1d(LARGE_50[poles])
    joined = np.interp(x, ends, [low(ends[0]), high(ends[1])])
    return np.where(x <= ends[0], low(x), np.where(x >= ends[1], high(x), joined))


def _at_60(kilowatt: Array, poles: int) -> Array:
    """The table on lg P. [%]"""
    table = np.interp(np.log10(kilowatt), np.log10(POWER_60), TABLE_60[poles])
    return np.where(kilowatt < POWER_60[0], np.minimum(_at_50(kilowatt, poles), TABLE_60[poles][0]), table)
