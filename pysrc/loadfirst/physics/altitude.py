"""How heavy the air is where the plant stands.

The standard atmosphere: sea-level pressure 101 325 Pa at 15 °C, and a
temperature that falls by 6.5 K per kilometre. Weather moves the real barometer
by some 3 % either way. The height is geopotential, within 2 m of the map's
for any plant below 3500 m.

Sources
-------
ISO 2533, Standard Atmosphere; formula and constants from memory.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import Array
from loadfirst.physics.ranges import require
from loadfirst.units import ATMOSPHERE, G

LAPSE = 0.0065  # [K/m]
SEA_LEVEL = 288.15  # [K]
GAS = 287.05287  # [J/(kg·K)] of air
LOWEST, HIGHEST = -2000.0, 11_000.0  # [m] where the temperature falls so


def barometric_pressure(height: npt.ArrayLike) -> Array:
    """Pressure of the standard atmosphere at a height above sea level.

    Parameters
    ----------
    height : array_like
        From -2000 to 11 000. [m]

    Returns
    -------
    pressure : ndarray, same shape
        Absolute. [Pa]

    Raises
    ------
    InputError
        Outside that range.
    """
    height = np.asarray(height, dtype=float)
    fine = (height >= LOWEST) & (height <= HIGHEST)
    require("site.altitude", height, fine, f"from {LOWEST:.0f} to {HIGHEST:.0f} m")
    return np.asarray(ATMOSPHERE * (1 - LAPSE / SEA_LEVEL * height) ** (G / (GAS * LAPSE)))
