"""Readings in the units of files, for what an author is told."""

from __future__ import annotations

from math import ceil, log10

from loadfirst.days.shift import Shift
from loadfirst.instruments.file_units import UNITS
from loadfirst.instruments.panel import Reading

MOST = 4
"""Decimals, at most."""


def numbers(shift: Shift) -> str:
    """Both readings of an instrument and what it may differ by, with as many decimals as that asks for."""
    unit, size, usual = UNITS[shift.quantity]
    scatter = (shift.explained or 0.0) / size
    decimals = min(max(usual, ceil(-log10(scatter)) if scatter > 0 else usual), MOST)
    both = [_number(reading, size, decimals) for reading in (shift.yesterday, shift.today)]
    within = "" if shift.explained is None else f", scatter {scatter:.{decimals}f}"
    return f"from {both[0]} to {both[1]} {unit}{within}"


def _number(reading: Reading | None, size: float, decimals: int) -> str:
    if reading is None or reading.value is None:
        return "nothing"
    return f"{reading.value / size:z.{decimals}f}"
