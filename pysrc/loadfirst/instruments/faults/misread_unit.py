"""A dial in one unit whose numbers are taken for bar."""

from __future__ import annotations

from typing import Literal

from loadfirst.units import BAR, G

PSI = 0.45359237 * G / 0.0254**2  # [Pa]
SIZES = {"bar": BAR, "psi": PSI, "kpa": 1e3, "mpa": 1e6, "kgf-cm2": G / 1e-4, "m-water": 1e3 * G}
"""Size of each unit, exact: NIST SP 811 (2008), appendix B.8 (from memory); water at 1000 kg/m³. [Pa]"""


def times(unit: Literal["bar", "psi", "kpa", "mpa", "kgf-cm2", "m-water"]) -> float:
    """How many times too large a number is that was read in this unit and is taken for bar. [-]"""
    return BAR / SIZES[unit]
