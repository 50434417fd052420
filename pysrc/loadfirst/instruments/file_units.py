"""The units in which files and the command line have readings."""

from __future__ import annotations

from loadfirst.instruments.instrument import Quantity
from loadfirst.units import BAR, HOUR, PERCENT, RPM

UNITS: dict[Quantity, tuple[str, float, int]] = {
    "pressure": ("bar", BAR, 2), "flow": ("m³/h", 1 / HOUR, 1), "current": ("A", 1.0, 1),
    "speed": ("1/min", RPM, 0), "height": ("m", 1.0, 2), "output": ("%", PERCENT, 1),
}  # fmt: skip
"""By quantity: unit, its size and how many decimals an engineer would read off. [SI]"""
