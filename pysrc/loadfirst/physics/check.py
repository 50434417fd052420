"""A check valve lets the liquid through one way; so does an open pipe end."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import SHUT, Array, Flags, Index, column, pick
from loadfirst.physics.ranges import require
from loadfirst.physics.valve import AS_GOOD_AS_SHUT, HEAD_KV2

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

ROUND_OFF = 1e-18
"""A backward flow that is but the round-off of none: a valve that held would hold 1e-8 m. [m³/s]"""


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
    leak : array_like (B or 1, M)
        Flow coefficient Kv that its seat leaves backward, from 0 (tight). [m³/h]
        Counts only where it holds.

    Raises
    ------
    InputError
        When made with a `k_head` or a `leak` that is negative or not a number.

    Notes
    -----
    Taken as fully open at any forward flow: the weight or spring of the disc,
    which asks for a little more head at small flow, is left out. A seat that
    passes is an orifice backward, by the law of `physics.valve`.
    """

    def __init__(self, k_head: ArrayLike, holds: ArrayLike = True, leak: ArrayLike = 0.0) -> None:
        self._square = column(k_head)
        require("check.k_head", self._square, self._square >= 0, "0 s²/m⁵ or more")
        holds, kv = np.atleast_2d(np.asarray(holds, dtype=bool)), column(leak)
        require("check.leak", kv, kv >= 0, "0 m³/h or more")
        passing = holds & (kv > AS_GOOD_AS_SHUT)
        self._holds = holds & ~passing
        self._passes = HEAD_KV2 / np.where(passing, kv, np.inf) ** 2 if passing.any() else None
        if self._passes is not None:
            self._passes = np.where(passing, self._passes, self._square)

    @property
    def count(self) -> int:
        """How many check valves one plant has (M)."""
        return int(np.broadcast_shapes(self._square.shape, self._holds.shape)[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost, and how fast it grows; see `Law`.

        Forward the square law; backward one steep line (`SHUT`) where it holds,
        another square law where its seat passes.
        """
        back = self._holds & (flow < 0)
        square = self._square if self._passes is None else np.where(flow < 0, self._passes, self._square)
        bent = square * np.abs(flow)
        return np.where(back, SHUT, bent) * flow, np.where(back, SHUT, 2 * bent)

    def corners(self) -> Array | None:
        """No flow, where the steep line begins; NaN for one that does not hold."""
        if not self._holds.any():
            return None
        return np.where(self._holds, 0.0, np.nan) + 0 * self._square

    def shut(self, flow: Array) -> Flags:
        """Where it holds against backward flow, and does not pass. (B, M)"""
        return self._holds & (flow < -ROUND_OFF)

    def rows(self, index: Index) -> CheckValves:
        """The same check valves of some of the plants only."""
        some = object.__new__(CheckValves)
        some._square, some._holds = pick(self._square, index), self._holds
        some._passes = None if self._passes is None else pick(self._passes, index)
        if len(self._holds) > 1:
            some._holds = self._holds[index]
        return some
