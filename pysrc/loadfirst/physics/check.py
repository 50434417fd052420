"""A check valve lets the liquid through one way; so does an open pipe end."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import SHUT, Array, Flags, Index, column, pick
from loadfirst.physics.ranges import require

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


class CheckValves:
    """M check valves in a batch of plants.

    Also stands for a pipe end above the liquid (`k_head` 0): liquid may leave
    there, but none can come in.

    Parameters
    ----------
    k_head : array_like (B or 1, M)
        Head lost over flow squared, K/(2 g A²), from 0. [s²/m⁵]
    holds : array_like of bool (B or 1, M)
        Whether it holds against backward flow. One that does not is a fitting
        like any other, the same both ways.

    Raises
    ------
    InputError
        When made with a `k_head` that is negative or not a number.

    Notes
    -----
    Taken as fully open at any forward flow: the weight or spring of the disc,
    which asks for a little more head at small flow, is left out.
    """

    def __init__(self, k_head: ArrayLike, holds: ArrayLike = True) -> None:
        self._square = column(k_head)
        require("check.k_head", self._square, self._square >= 0, "0 s²/m⁵ or more")
        self._holds = np.atleast_2d(np.asarray(holds, dtype=bool))

    @property
    def count(self) -> int:
        """How many check valves one plant has (M)."""
        return int(np.broadcast_shapes(self._square.shape, self._holds.shape)[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost, and how fast it grows; see `Law`.

        Forward the square law; backward one steep line (`SHUT`) where it holds.
        """
        back = self.shut(flow)
        bent = self._square * np.abs(flow)
        return np.where(back, SHUT, bent) * flow, np.where(back, SHUT, 2 * bent)

    def corners(self) -> Array | None:
        """No flow, where the steep line begins; NaN for one that does not hold."""
        if not self._holds.any():
            return None
        return np.where(self._holds, 0.0, np.nan) + 0 * self._square

    def shut(self, flow: Array) -> Flags:
        """Where it holds against backward flow. (B, M)"""
        return self._holds & (flow < 0)

    def rows(self, index: Index) -> CheckValves:
        """The same check valves of some of the plants only."""
        some = object.__new__(CheckValves)
        some._square, some._holds = pick(self._square, index), self._holds
        if len(self._holds) > 1:
            some._holds = self._holds[index]
        return some
