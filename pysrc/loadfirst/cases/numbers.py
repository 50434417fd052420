"""Readings in the units of files, for what an author is told."""

from __future__ import annotations

from math import ceil, log10

from loadfirst.days.shift import Shift
from loadfirst.instruments.panel import Reading
from loadfirst.units import BAR, HOUR, PERCENT, RPM

UNITS = {
    "pressure": ("bar", BAR, 2), "flow": ("m³/h", 1 / HOUR, 1), "current": ("A", 1.0, 1),
    "speed": ("1/min", RPM, 0), "height": ("m", 1.0, 2), "output": ("%", PERCENT, 1),
}  # fmt: skip
"""By quantity: unit, its size and how many decimals an engineer would read off. [SI]"""
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
