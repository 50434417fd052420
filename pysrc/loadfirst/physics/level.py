"""Vessels whose level moves while a step of time goes by.

What flows out of a vessel lowers its surface, and the lower surface gives less. As an
element between the surface as it was and the surface as it is at the end of the span:

    drop = (span / area) (q - q0),

q the flow of the network through the vessel, q0 the flow at which the surface stands
still (what comes in from elsewhere, or is drawn). At the rim the line is flat: what is too
much runs over. Out of an empty vessel nothing flows (`SHUT`). It rises with the flow
everywhere.

Source: conservation of volume.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import SHUT, Array, Flags, Index, column, pick

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


class Vessels:
    """M vessels in a batch of plants.

    Parameters
    ----------
    still : array_like (B or 1, M)
        Flow at which the surface stands still, from 0. [m³/s]
    below, above : array_like (B or 1, M)
        Slope at flows less and greater than that, from 0: the span over the area, or 0 where
        the surface does not move. [s/m²]
    no_back, no_out : array_like of bool (B or 1, M)
        Whether nothing flows against the element, or along it: there is no liquid for it.
    """

    def __init__(
        self,
        still: ArrayLike,
        below: ArrayLike,
        above: ArrayLike,
        no_back: ArrayLike = False,
        no_out: ArrayLike = False,
    ) -> None:
        self._still, self._below, self._above = map(column, (still, below, above))
        self._no_back, self._no_out = (
            np.atleast_2d(np.asarray(flag, dtype=bool)) for flag in (no_back, no_out)
        )

    @property
    def count(self) -> int:
        """How many vessels one plant has (M)."""
        parts = self._still, self._below, self._above, self._no_back, self._no_out
        return int(np.broadcast_shapes(*[part.shape for part in parts])[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """How far the surface has moved against the flow, and how fast that grows; see `Law`."""
        shut = self.shut(flow)
        free = np.where(shut, 0.0, flow)
        away = free - self._still
        slope = np.where(away < 0, self._below, self._above)
        return slope * away + np.where(shut, SHUT * flow, 0.0), np.where(shut, SHUT, slope)

    def corners(self) -> Array:
        """No flow where there is nothing to flow, else where the surface stands still. (B or 1, M)"""
        return np.where(self._no_back | self._no_out, 0.0, self._still + 0 * self._below)

    def shut(self, flow: Array) -> Flags:
        """Where more is asked of a vessel than it has. (B, M)"""
        return np.asarray((self._no_back & (flow < 0)) | (self._no_out & (flow > 0)))

    def rows(self, index: Index) -> Vessels:
        """The same vessels of some of the plants only."""
        some = object.__new__(Vessels)
        for name, values in vars(self).items():
            setattr(some, name, pick(values, index))
        return some
