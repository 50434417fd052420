"""How hard a pipe's wall holds the liquid back: the Darcy friction factor.

Laminar below Re 2000, Colebrook–White solved exactly above 4000, and between
them one smooth bridge, because a solver (and a needle that follows a slider)
must not meet a jump. Where the flow really is in between, nobody can say.
"""

from __future__ import annotations

from math import log

import numpy as np

from loadfirst.physics.law import Array

LAMINAR_BELOW = 2000.0
TURBULENT_ABOVE = 4000.0
STILL = 1e-6  # Reynolds number; below it the factor would run to infinity

_C = 2 / log(10)  # 1/√f = -C ln(roughness/3.7 + 2.51/(Re √f))
_ROUGH = 1 / (2.51 * 3.7 * _C)
_SMOOTH = log(2.51 * _C)
_STEPS = 3  # of Newton: 0.5 %, 2e-6, 4e-13 at the worst corner, Re 4000 in a smooth pipe

_BRIDGE = log(TURBULENT_ABOVE / LAMINAR_BELOW)
_LAST_LAMINAR = log(64 / LAMINAR_BELOW)


def darcy_factor(reynolds: Array, relative_roughness: Array) -> tuple[Array, Array]:
    """Darcy friction factor, and how it changes with the Reynolds number.

    Parameters
    ----------
    reynolds : ndarray
        Reynolds number on the bore, from 0. Below `STILL` the factor is held
        at its value there, so that it stays finite. [-]
    relative_roughness : ndarray, broadcast against `reynolds`
        Wall roughness over bore, from 0 to 0.05. [-]

    Returns
    -------
    factor : ndarray, broadcast shape
        Darcy (not Fanning) factor. [-]
    exponent : ndarray, same shape
        d(ln factor)/d(ln Re), from -1 to 2.2. The loss goes as
        factor × flow², so its own exponent is this plus 2: always rising.

    Notes
    -----
    Departs from Colebrook–White by less than 1e-12 over 4000 ≤ Re ≤ 1e8 and
    0 ≤ roughness ≤ 0.05. Between 2000 and 4000 the logarithm of the factor is
    a cubic in the logarithm of Re that continues value and slope at both ends.

    Sources
    -------
    Laminar: Hagen–Poiseuille, 64/Re. Turbulent: Colebrook (1939), in the form
    1/√f = -2 log10(roughness/3.7 + 2.51/(Re √f)). Bridge: common practice is a
    cubic through the transitional zone; this one is our own.
    """
    re = np.maximum(reynolds, STILL)
    if re.max() <= LAMINAR_BELOW:
        re = re + 0 * relative_roughness
        return 64 / re, np.full_like(re, -1.0)
    factor, exponent = _colebrook(np.maximum(re, TURBULENT_ABOVE), relative_roughness)
    if re.min() >= TURBULENT_ABOVE:
        return factor, exponent
    bridged, rising = _bridge(re, np.log(factor), exponent)
    laminar, turbulent = re <= LAMINAR_BELOW, re >= TURBULENT_ABOVE
    return (
        np.where(turbulent, factor, np.where(laminar, 64 / re, bridged)),
        np.where(turbulent, exponent, np.where(laminar, -1.0, rising)),
    )


def _colebrook(re: Array, relative_roughness: Array) -> tuple[Array, Array]:
    """Colebrook–White for re ≥ 4000, by Newton on one logarithm.

    With F = 1/(C √f) and t = F + rough the equation reads t + ln t = total,
    whose Newton step is a single product. F is then had from the equation
    itself, F = smooth - ln t, where `t - rough` would cancel in rough pipes.
    """
    rough = _ROUGH * relative_roughness * re
    smooth = np.log(re) - _SMOOTH
    t = rough + smooth
    total = t + 1
    for _ in range(_STEPS):
        t = t * (total - np.log(t)) / (1 + t)
    inverse_root = _C * (smooth - np.log(t))
    return 1 / inverse_root**2, -2 / (1 + t)


def _bridge(re: Array, log_turbulent: Array, exponent: Array) -> tuple[Array, Array]:
    """The cubic between the two regimes; of no meaning outside them."""
    u = np.minimum(np.maximum(np.log(re / LAMINAR_BELOW) / _BRIDGE, 0), 1)
    start, end, rise = -_BRIDGE, _BRIDGE * exponent, log_turbulent - _LAST_LAMINAR
    square, cube = 3 * rise - 2 * start - end, start + end - 2 * rise
    log_factor = _LAST_LAMINAR + u * (start + u * (square + u * cube))
    return np.exp(log_factor), (start + u * (2 * square + u * 3 * cube)) / _BRIDGE
