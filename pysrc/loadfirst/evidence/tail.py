"""The normal distribution by numpy alone: its density and its tails, as logarithms.

Sources
-------
erfc by a rational Chebyshev fit, right to 1.2e-7 of itself everywhere: W. H. Press et al.,
"Numerical Recipes", section 6.2 (`erfcc`; from memory). Tests compare it with math.erfc.
"""

from __future__ import annotations

import numpy as np

from loadfirst.physics.law import Array

ROOT_2, LOG_ROOT_2PI = 2**0.5, float(np.log(2 * np.pi) / 2)
FIT = (-1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806,
       0.27886807, -1.13520398, 1.48851587, -0.82215223, 0.17087277)  # fmt: skip


def log_density(z: Array) -> Array:
    """Of the standard normal distribution at z, any shape."""
    return np.asarray(-0.5 * np.square(z) - LOG_ROOT_2PI)


def log_above(z: Array) -> Array:
    """Chance that a standard normal number is above z, any shape."""
    x = np.abs(z) / ROOT_2
    t = 1 / (1 + x / 2)
    total = np.zeros_like(t)
    for factor in reversed(FIT):
        total = total * t + factor
    far = np.log(t / 2) - np.square(x) + total
    return np.asarray(np.where(z >= 0, far, np.log1p(-np.exp(far))))
