"""SI inside, everywhere. These are the only factors that cross the border.

Files carry their unit in the key (``bore_mm``, ``gas_bar``); each suffix that
a key may end with stands here once. Exact by definition unless said.
"""

from __future__ import annotations

from math import pi

G = 9.80665  # [m/s²] standard gravity, exact (CGPM 1901)
BAR = 1e5  # [Pa]
ATMOSPHERE = 101_325.0  # [Pa] standard atmosphere, exact
ZERO_CELSIUS = 273.15  # [K], exact
HOUR = 3600.0  # [s]
RPM = pi / 30  # [rad/s] in 1/min
PERCENT = 0.01

TO_SI = {
    "m": 1.0,
    "mm": 1e-3,
    "cm3": 1e-6,
    "m3h": 1.0 / HOUR,
    "bar": BAR,
    "mpas": 1e-3,
    "kw": 1e3,
    "kgm3": 1.0,
    "hz": 1.0,
    "percent": PERCENT,
    "rpm": RPM,
    "a": 1.0,
    "s": 1.0,
    "m2": 1.0,
    "kgm2": 1.0,
}
