"""A control valve whose throat boils passes no more, however low the pressure behind it.

With liquid the flow through a valve grows with the square root of the pressure
drop up to

    Δp_choked = F_L² (p₁ - F_F p_v),     F_F = 0.96 - 0.28 √(p_v / p_c),

p₁ the absolute pressure before the valve, p_v the vapour pressure, p_c the
critical pressure, F_L the valve's pressure recovery factor. A larger drop
brings vapour and noise, not flow. F_L is near 0.9 for globe valves, 0.6 for
ball and butterfly valves (common practice).

How it couples: the limit follows p₁, which falls as the flow grows. So with
everything upstream given there is exactly one flow that equals its own limit.

Sources
-------
IEC 60534-2-1, incompressible fluids (formulae quoted by the documentation of
fluids 1.3.1, which names the standard). Valve as wide as its line: the factor
F_LP for fittings at the valve is left out.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import Array
from loadfirst.physics.ranges import require
from loadfirst.physics.valve import HEAD_KV2
from loadfirst.units import G

WATER_CRITICAL = 22.064e6  # [Pa] critical pressure of water, IAPWS R7-97


def critical_ratio(
    vapour_pressure: npt.ArrayLike, critical_pressure: npt.ArrayLike = WATER_CRITICAL
) -> Array:
    """F_F: the pressure in the choked throat over the vapour pressure.

    Parameters
    ----------
    vapour_pressure : array_like
        Absolute, from 0 to the critical pressure. [Pa]
    critical_pressure : array_like
        Absolute, above 0. [Pa]

    Returns
    -------
    ratio : ndarray, broadcast shape
        From 0.68 to 0.96. [-]

    Raises
    ------
    InputError
        For a value outside these ranges.
    """
    vapour, critical = np.asarray(vapour_pressure, dtype=float), np.asarray(critical_pressure, dtype=float)
    require("liquid.critical_pressure", critical, critical > 0, "above 0 Pa")
    fine = (vapour >= 0) & (vapour <= critical)
    require("liquid.vapour_pressure", vapour, fine, "from 0 to the critical pressure")
    return np.asarray(0.96 - 0.28 * np.sqrt(vapour / critical))


def throat(
    kv: npt.ArrayLike, recovery: npt.ArrayLike, pressure: npt.ArrayLike, density: npt.ArrayLike
) -> tuple[Array, Array]:
    """What a choked valve leaves of the pressure before it: there stand `head` + `square` q², absolute.

    Parameters
    ----------
    kv : array_like
        Flow coefficient, above 0. [m³/h]
    recovery : array_like
        F_L, above 0, at most 1. [-]
    pressure : array_like
        Absolute, of the boiling throat: the vapour pressure times `critical_ratio`, from 0. [Pa]
    density : array_like
        Of the liquid, above 0. [kg/m³]

    Returns
    -------
    head, square : ndarray, broadcast shape
        Static head of the boiling throat, and head lost on the way there over flow squared. [m] [s²/m⁵]

    Raises
    ------
    InputError
        For a value outside these ranges.
    """
    given = (np.asarray(x, dtype=float) for x in (kv, recovery, pressure, density))
    kv, factor, pressure, density = given
    require("valve.kv", kv, kv > 0, "above 0 m³/h")
    require("valve.recovery", factor, (factor > 0) & (factor <= 1), "above 0, at most 1")
    require("valve.throat_pressure", pressure, pressure >= 0, "0 Pa absolute or more")
    require("liquid.density", density, density > 0, "above 0 kg/m³")
    return np.asarray(pressure / (density * G)), np.asarray(HEAD_KV2 / (factor * kv) ** 2)
