"""How deep an outlet must lie so that no vortex draws air into it.

    S = D (1 + 2.3 Fr),   Fr = v / √(g D)

with S the liquid above the outlet, D its bore and v the speed in it. Common
practice for a calm approach; swirl in the vessel asks for more, a vortex breaker
for less.

Sources
-------
ANSI/HI 9.8, minimum submergence against strong free-surface vortices; the
same rule in inches and gallons quoted from its 1998 edition, section 9.8.7.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array
from loadfirst.physics.ranges import require
from loadfirst.units import G

if TYPE_CHECKING:  # costs a page that starts more than it says
    from numpy.typing import ArrayLike

SWIRL = 2.3  # [-] bores of liquid more per Froude number


def required_submergence(flow: ArrayLike, bore: ArrayLike) -> Array:
    """Height of liquid that an outlet needs above it.

    Parameters
    ----------
    flow : array_like
        Out of the vessel; none is needed for more than the bore when it runs back. [m³/s]
    bore : array_like, broadcast against `flow`
        Of the outlet or of its bell, above 0. [m]

    Returns
    -------
    height : ndarray, broadcast shape
        At least one bore. [m]

    Raises
    ------
    InputError
        For a bore that is none.
    """
    bore = np.asarray(bore, dtype=float)
    require("outlet.bore", bore, bore > 0, "above 0 m")
    speed = np.maximum(np.asarray(flow, dtype=float), 0.0) / (math.pi / 4 * bore**2)
    return np.asarray(bore * (1 + SWIRL * speed / np.sqrt(G * bore)))
