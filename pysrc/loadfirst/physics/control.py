"""What a controller in automatic has settled on: the output at which its reading stands at the set point.

In automatic the controlled reading stands still, and the output tells the
story. At a limit of its output control is lost and the reading goes where the
plant lets it. Only the settled state is found here; how it gets there is a
matter of time.

The plant is asked through a function from outputs to readings. A reading that
rises or falls all the way from one limit to the other has one answer at most;
which of the two it does is found at the limits, so the controller's direction
of action is always the right one.

Sources
-------
The settled state of a controller with an integral part is one without
deviation; a proportional one leaves an offset. As in any textbook on control.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import Array, Flags
from loadfirst.physics.ranges import require
from loadfirst.physics.root import rising_root

WITHIN = 1e-9  # [-] of what the reading changes between the limits

Readings = Callable[[Array], Array]
"""From outputs (B,) to readings (B,): the plant, answered."""


@dataclass(frozen=True, slots=True)
class Held:
    """What B controllers settled on.

    Attributes
    ----------
    output : ndarray (B,)
        Valve opening or drive frequency. [unit of the output]
    reading : ndarray (B,)
        [unit of the reading]
    reached : ndarray (B,) of bool
        The reading stands at the set point.
    at_low, at_high : ndarray (B,) of bool
        Control is lost: the output is at its lower or upper limit and the
        reading is not at the set point.

    Notes
    -----
    Neither reached nor at a limit: the reading leaps over the set point, as
    at the smallest flow that a valve can control. A real loop hunts there.
    """

    output: Array
    reading: Array
    reached: Flags
    at_low: Flags
    at_high: Flags

    @property
    def lost(self) -> Flags:
        """Where control is lost. (B,)"""
        return self.at_low | self.at_high


def hold(
    set_point: npt.ArrayLike,
    readings: Readings,
    low: npt.ArrayLike,
    high: npt.ArrayLike,
    within: float = WITHIN,
    least: npt.ArrayLike = 0.0,
) -> Held:
    """The output at which the reading equals its set point.

    Parameters
    ----------
    set_point : array_like (B,)
        [unit of the reading]
    readings : callable
        The plant; monotone in the output, either way.
    low, high : array_like (B,)
        Limits of the output, `low` not above `high`. [unit of the output]
    within : float
        How near the set point is near enough, as a share of what the reading
        changes between the limits. [-]
    least : array_like (B,)
        And as an amount, for readings that are no more exact than that. [unit of the reading]

    Returns
    -------
    Held

    Raises
    ------
    InputError
        When `low` is above `high`, or something is not a number.
    """
    wanted, low, high = _limits(set_point, low, high)
    at_ends = readings(low), readings(high)
    way = np.where(at_ends[1] >= at_ends[0], 1.0, -1.0)
    near = np.maximum(within * np.abs(at_ends[1] - at_ends[0]), least)
    ends = way * (at_ends[0] - wanted), way * (at_ends[1] - wanted)
    output, miss = rising_root(lambda u: way * (readings(u) - wanted), low, high, within=near, ends=ends)
    reached = np.abs(miss) <= near
    return Held(
        output=output,
        reading=wanted + way * miss,
        reached=reached,
        at_low=~reached & (ends[0] >= 0),
        at_high=~reached & (ends[0] < 0) & (ends[1] <= 0),
    )


def _limits(set_point: npt.ArrayLike, low: npt.ArrayLike, high: npt.ArrayLike) -> tuple[Array, Array, Array]:
    """Set point and limits as (B,), or an error."""
    given = (np.atleast_1d(np.asarray(x, dtype=float)) for x in (set_point, low, high))
    wanted, least, most = (x.copy() for x in np.broadcast_arrays(*given))
    require("controller.set_point", wanted, np.isfinite(wanted), "a number")
    require("controller.low", least, least <= most, "not above the upper limit")
    return wanted, least, most
