"""A pipe that climbs over a summit and comes down again: whether the far leg pulls.

Primed, the pipe runs full: liquid falling beyond the summit pulls up what comes
behind it, and the load is only the lift to the pipe's end. Not primed, air
stands at the summit: liquid falls freely beyond it, nothing is recovered, and
the summit is the end of the pipe as the pump sees it. A vented summit is never
primed. Both states can stand with the same pump; history chooses.

A primed siphon breaks where the absolute pressure at the summit would fall
below vapour pressure. Until air comes in, the summit then holds vapour: again it
is an end of the pipe, one at vapour pressure. So one law serves both states:

    drop = max(run(q), floor + v²/2g - outlet's head),

run(q) what the pipe beyond the summit costs, `floor` the summit's height, lower
by the head between ambient and vapour pressure when primed. Both terms never
fall as the flow rises, so the drop does not either.

Sources
-------
Bernoulli; that no head is recovered beyond an unprimed summit is common
practice. Dissolved gas breaks real siphons earlier: keep summits below 7 or 8 m
of suction (common practice).
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import SHUT, Array, Flags, Law, column, pick
from loadfirst.physics.pipe import velocity_head
from loadfirst.physics.ranges import require
from loadfirst.units import ATMOSPHERE, G


def summit_floor(
    height: npt.ArrayLike,
    primed: npt.ArrayLike,
    density: npt.ArrayLike,
    vapour_pressure: npt.ArrayLike,
    ambient: npt.ArrayLike = ATMOSPHERE,
) -> Array:
    """The lowest head, less velocity head, that liquid can have at the summit.

    Parameters
    ----------
    height : array_like
        Of the summit. [m]
    primed : array_like of bool
        Whether it runs full.
    density : array_like
        Above 0. [kg/m³]
    vapour_pressure, ambient : array_like
        Absolute. [Pa]

    Returns
    -------
    head : ndarray, broadcast shape
        The height itself where air stands there; lower by ambient less vapour
        pressure where it runs full. [m]
    """
    pull = (np.asarray(ambient, dtype=float) - vapour_pressure) / (np.asarray(density, dtype=float) * G)
    return np.asarray(np.asarray(height, dtype=float) - np.where(primed, pull, 0.0))


def summit_pressure(
    head: npt.ArrayLike,
    height: npt.ArrayLike,
    flow: npt.ArrayLike,
    bore: npt.ArrayLike,
    density: npt.ArrayLike,
    ambient: npt.ArrayLike = ATMOSPHERE,
) -> Array:
    """Absolute pressure at the summit of a siphon that runs full.

    Parameters
    ----------
    head : array_like
        Energy head there: the outlet's, and what the run beyond it costs. [m]
    height : array_like
        Of the summit, from the same zero. [m]
    flow, bore : array_like
        [m³/s], [m]
    density : array_like
        [kg/m³]
    ambient : array_like
        Absolute. [Pa]

    Returns
    -------
    pressure : ndarray, broadcast shape
        Below the vapour pressure the siphon breaks; below 0 no liquid could
        be there at all. [Pa]
    """
    above = np.asarray(head, dtype=float) - height - velocity_head(flow, bore)
    return np.asarray(np.asarray(ambient, dtype=float) + np.asarray(density, dtype=float) * G * above)


class Siphons:
    """M pipe runs from a summit to their outlet, in a batch of plants.

    Parameters
    ----------
    run : Law of M elements
        The pipe from the summit to its end, as if it ran full.
    rise : array_like (B or 1, M)
        `summit_floor` less the head at the outlet: how far the summit stands
        above the outlet, less what a primed one can pull. [m]
    bore : array_like (B or 1, M)
        At the summit, above 0. [m]

    Raises
    ------
    InputError
        When made with a value outside these ranges.

    Notes
    -----
    With a positive `rise` nothing comes back over the summit. Else it may, and
    the run's own law holds there: a summit at vapour pressure in reversed flow
    is not covered.
    """

    def __init__(self, run: Law, rise: npt.ArrayLike, bore: npt.ArrayLike) -> None:
        self._run, self._rise, bore = run, column(rise), column(bore)
        require("summit.rise", self._rise, np.isfinite(self._rise), "a number")
        require("summit.bore", bore, bore > 0, "above 0 m")
        self._speed = velocity_head(1.0, bore)

    @property
    def count(self) -> int:
        """How many summits one plant has (M)."""
        return self._run.count

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head from summit's inlet to outlet, and how fast it grows; see `Law`."""
        full, full_slope = self._run.head_drop(flow)
        held = self._rise + self._speed * flow * np.abs(flow)
        back = self.shut(flow)
        broken = (flow >= 0) & (held > full)
        drop = np.where(back, self._rise + SHUT * flow, np.where(broken, held, full))
        return drop, np.where(back, SHUT, np.where(broken, 2 * self._speed * np.abs(flow), full_slope))

    def broken(self, flow: Array) -> Flags:
        """Where the pipe beyond the summit does not run full: air or vapour stands there. (B, M)"""
        held = self._rise + self._speed * flow * np.abs(flow)
        return np.asarray(self.shut(flow) | ((flow >= 0) & (held > self._run.head_drop(flow)[0])))

    def corners(self) -> Array | None:
        """No flow, where the summit stands above; the other corner has no formula."""
        if not (self._rise > 0).any():
            return None
        return np.where(self._rise > 0, 0.0, np.nan)

    def shut(self, flow: Array) -> Flags:
        """Where nothing gets over the summit. (B, M)"""
        return np.asarray((self._rise > 0) & (flow < 0))

    def rows(self, index: npt.NDArray[np.intp]) -> Siphons:
        """The same summits of some of the plants only."""
        some = object.__new__(Siphons)
        some._run = self._run.rows(index)
        some._rise, some._speed = pick(self._rise, index), pick(self._speed, index)
        return some
