"""A variable-speed drive at its current limit turns the pump slower than it was told to.

The drive cuts the frequency back until the motor's current is at the limit. So
the ammeter stands still, and the tachometer tells the story. The current comes
from the plant, through a function from frequencies to currents.

On a pump with rising power current falls with the frequency all the way down:
torque goes with the square of the speed, and voltage goes with the frequency.
On constant torque (a displacement pump at its relief valve) it hardly falls:
then the drive ends at its lowest frequency, still over the limit, and trips.

Sources
-------
Common practice of drives: current limit by frequency set-back (no published source).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import Array, Flags
from loadfirst.physics.ranges import require
from loadfirst.physics.root import rising_root

WITHIN = 1e-9  # [-] of the limit


@dataclass(frozen=True, slots=True)
class CutBack:
    """What B drives give.

    Attributes
    ----------
    frequency : ndarray (B,) [Hz]
    current : ndarray (B,) [A]
    limited : ndarray (B,) of bool
        The frequency is below the one asked for.
    overloaded : ndarray (B,) of bool
        Even at the lowest frequency the current is above the limit.
    """

    frequency: Array
    current: Array
    limited: Flags
    overloaded: Flags


def cut_back(
    frequency: npt.ArrayLike,
    limit: npt.ArrayLike,
    currents: Callable[[Array], Array],
    lowest: npt.ArrayLike = 5.0,
) -> CutBack:
    """The highest frequency, up to the one asked for, at which the current keeps to its limit.

    Parameters
    ----------
    frequency : array_like (B,)
        Asked for, not below `lowest`. [Hz]
    limit : array_like (B,)
        Of the motor's current, above 0. [A]
    currents : callable
        The plant: from frequencies (B,) to motor currents (B,), rising. [Hz] -> [A]
    lowest : array_like (B,)
        Above 0. [Hz]

    Returns
    -------
    CutBack

    Raises
    ------
    InputError
        For a value outside these ranges.
    """
    given = (np.atleast_1d(np.asarray(x, dtype=float)) for x in (frequency, limit, lowest))
    asked, most, least = (x.copy() for x in np.broadcast_arrays(*given))
    require("drive.current_limit", most, most > 0, "above 0 A")
    fine = (least > 0) & (least <= asked)
    require("drive.lowest_frequency", least, fine, "above 0 Hz, not above the one asked for")
    found, over = rising_root(lambda f: currents(f) - most, least, asked, within=WITHIN * most)
    overloaded = (found <= least) & (over > WITHIN * most)
    return CutBack(found, most + over, found < asked, overloaded)
