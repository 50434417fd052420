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

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import SHUT, Array, Flags, Index, Law, column, pick
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.physics.ranges import require
from loadfirst.physics.root import rising_root
from loadfirst.units import ATMOSPHERE, G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

HOLD = 1e6
"""Slope of the line at which the most that comes back is held, of the pull over that flow. [-] Steeper, and
the last digit of the flow would be seen in the head."""


def summit_floor(
    height: ArrayLike,
    primed: ArrayLike,
    density: ArrayLike,
    vapour_pressure: ArrayLike,
    ambient: ArrayLike = ATMOSPHERE,
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
    holds : array_like of bool (B or 1, M)
        Whether the line before the summit can run empty. One that cannot,
        because a check valve holds its liquid, stands full up to the summit.

    Raises
    ------
    InputError
        When made with a value outside these ranges.

    Notes
    -----
    With a positive `rise` nothing comes back over the summit; where the line
    stands full the law goes on with the run's own, for the trifles that a shut
    element lets through. With no `rise` liquid may come back, and no more of it
    than leaves the summit its least head: beyond that flow one steep line.
    """

    def __init__(self, run: Law, rise: ArrayLike, bore: ArrayLike, holds: ArrayLike = True) -> None:
        self._run, self._rise, bore = run, column(rise), column(bore)
        self._stands = np.atleast_2d(~np.asarray(holds, dtype=bool))
        require("summit.rise", self._rise, np.isfinite(self._rise), "a number")
        require("summit.bore", bore, bore > 0, "above 0 m")
        self._speed = velocity_head(1.0, bore)
        self._most_back = self._limit()
        self._rest = np.where(self._rise > 0, self._rise, run.head_drop(self._most_back)[0])
        with np.errstate(divide="ignore", invalid="ignore"):
            steep = HOLD * self._rise / self._most_back
        self._steep = np.where(self._most_back < 0, np.minimum(steep, SHUT), SHUT)

    def _limit(self) -> Array:
        """The most that comes back, as a flow from 0 down: there the summit has its least head. [m³/s]"""
        pull = np.maximum(-self._rise, 0.0)
        flow = -np.sqrt(pull / self._speed)  # all of the pull for speed: more than any run leaves
        if not (pull > 0).any():
            return np.asarray(flow)
        nought = np.zeros_like(flow)
        flow = rising_root(lambda q: self._spare(q)[0], flow, nought)[0]
        for _ in range(2):  # Newton, to the last digit: a steep line begins there
            left, slope = self._spare(flow)
            flow = np.where(
                (pull > 0) & (slope > 0), np.minimum(flow - left / np.maximum(slope, 1e-300), 0.0), flow
            )
        return np.asarray(flow)

    def _spare(self, flow: Array) -> tuple[Array, Array]:
        """Head at the summit above its least, in reversed flow, and how fast it grows."""
        drop, slope = self._run.head_drop(flow)
        return drop - self._rise - self._speed * flow**2, slope - 2 * self._speed * flow

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
        full = np.where((flow < 0) & self._stands, full + np.maximum(self._rise, 0.0), full)
        drop = np.where(
            back, self._rest + self._steep * (flow - self._most_back), np.where(broken, held, full)
        )
        return drop, np.where(back, self._steep, np.where(broken, 2 * self._speed * np.abs(flow), full_slope))

    def broken(self, flow: Array) -> Flags:
        """Where the pipe beyond the summit does not run full: air or vapour stands there. (B, M)"""
        held = self._rise + self._speed * flow * np.abs(flow)
        above = (flow >= 0) & (held > self._run.head_drop(flow)[0])
        return np.asarray(above | (flow < self._most_back))

    def corners(self) -> Array:
        """The most that comes back over the summit; the other corner has no formula."""
        return self._most_back

    def shut(self, flow: Array) -> Flags:
        """Where nothing, or nothing more, comes back over the summit. (B, M)"""
        return np.asarray((flow < self._most_back) & ~((self._rise > 0) & self._stands))

    def rows(self, index: Index) -> Siphons:
        """The same summits of some of the plants only."""
        some = object.__new__(Siphons)
        some._run = self._run.rows(index)
        some._take(self, index)
        return some

    def _take(self, other: Siphons, index: Index) -> None:
        """The numbers of some of another's rows."""
        for name in ("_rise", "_speed", "_most_back", "_rest", "_steep"):
            setattr(self, name, pick(getattr(other, name), index))
        self._stands = other._stands[index] if len(other._stands) > 1 else other._stands


class Summits(Siphons):
    """M siphons whose run beyond the summit is a pipe: `Pipes`' parameters, then those of `Siphons`.

    Parameters
    ----------
    length, bore, roughness, k, viscosity : array_like (B or 1, M)
        Of the pipe beyond the summit, as `Pipes` takes them.
    rise, holds : array_like (B or 1, M)
        As `Siphons` takes them.

    Raises
    ------
    InputError
        When made with a value outside their ranges.
    """

    def __init__(
        self,
        length: ArrayLike,
        bore: ArrayLike,
        roughness: ArrayLike,
        k: ArrayLike,
        viscosity: ArrayLike,
        rise: ArrayLike,
        holds: ArrayLike = True,
    ) -> None:
        self._pipes = Pipes(length, bore, roughness, k, viscosity)
        super().__init__(self._pipes, rise, bore, holds)

    def breakdown(self, flow: Array) -> tuple[Array, Array]:
        """What the run costs along its wall and in its fittings where it is full, (B, M) each. [m]"""
        return self._pipes.breakdown(flow)

    def rows(self, index: Index) -> Summits:
        """The same summits of some of the plants only."""
        some = object.__new__(Summits)
        some._run = some._pipes = self._pipes.rows(index)
        some._take(self, index)
        return some
