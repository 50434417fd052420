"""How much each of unlike pumps side by side counts for their station."""

from __future__ import annotations

import numpy as np

from loadfirst.physics.law import Array


def shares(flows: Array, heads: Array) -> Array:
    """By flow; where nothing flows forward the stronger counts alone: it makes the pressure behind both.

    Parameters
    ----------
    flows, heads : (P, ...) of P pumps. [m³/s] [m]

    Returns
    -------
    shares : (P, ...), together 1. [-]
    """
    forward = np.maximum(flows, 0.0)
    total = forward.sum(axis=0)
    number = np.arange(len(flows)).reshape(-1, *[1] * (flows.ndim - 1))
    strongest = np.argmax(heads, axis=0) == number
    return np.where(total > 0, forward / np.where(total > 0, total, 1.0), strongest)
