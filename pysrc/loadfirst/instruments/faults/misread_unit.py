"""A dial in one unit whose numbers are taken for bar."""

from __future__ import annotations

from math import log10
from typing import Literal

from loadfirst.units import BAR, G

PSI = 0.45359237 * G / 0.0254**2  # [Pa]
SIZES = {"bar": BAR, "psi": PSI, "kpa": 1e3, "mpa": 1e6, "kgf-cm2": G / 1e-4, "m-water": 1e3 * G}
"""Size of each unit, exact: NIST SP 811 (2008), appendix B.8 (from memory); water at 1000 kg/m³. [Pa]"""


Unit = Literal["bar", "psi", "kpa", "mpa", "kgf-cm2", "m-water"]
ALIKE = 0.03
"""Up to which a unit is taken for bar, or for ten or a tenth of it, by who chooses a dial. [-]"""


def end(unit: Unit) -> float:
    """Where a dial in this unit really ends, over where it would in bar. [-]

    A dial has round numbers: the one in kgf/cm² that hangs where one to 6 bar has been goes to 6 too.
    """
    size = SIZES[unit] / BAR
    over = size / 10.0 ** round(log10(size))
    return over if abs(over - 1) < ALIKE else 1.0


def times(unit: Unit) -> float:
    """How many times too large a number is that was read in this unit and is taken for bar. [-]"""
    return BAR / SIZES[unit]
