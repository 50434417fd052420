"""Numbers as they are shown, held against SI values.

The factors are written out here once more, on purpose.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

# SP 811 (NIST, 2008), appendix B.8, and the definitions of foot, pound-force and US gallon.
SI = {
    "bar": 1e5,
    "kPa": 1e3,
    "psi": 6894.757293168,
    "m³/h": 1 / 3600,
    "L/s": 1e-3,
    "gpm": 6.30901964e-5,
    "m": 1.0,
    "ft": 0.3048,
    "A": 1.0,
    "1/min": 2 * math.pi / 60,
    "Hz": 1.0,
    "%": 0.01,
}

UNITS = "|".join(re.escape(unit) for unit in sorted(SI, key=len, reverse=True))
SHOWN = re.compile(rf"([-−]?[\d,]*\.?\d+)\s({UNITS})")


@dataclass(frozen=True)
class Number:
    """A number with its unit, as a person reads it."""

    value: float
    decimals: int
    unit: str

    def is_(self, si: float) -> bool:
        """Whether it is this SI value, rounded to the digits shown (a tie may go either way)."""
        return abs(self.value - si / SI[self.unit]) <= 0.5001 * 10**-self.decimals

    @property
    def si(self) -> float:
        """Its SI value."""
        return self.value * SI[self.unit]


def numbers(text: str) -> list[Number]:
    """Every number with a unit in a text."""
    found = []
    for digits, unit in SHOWN.findall(text):
        plain = digits.replace("−", "-").replace(",", "")
        found.append(Number(float(plain), len(plain.partition(".")[2]), unit))
    return found
