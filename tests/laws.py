"""Simple laws for the tests of the network, written apart from those of the package."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import SHUT, Array, Flags, column, pick


@dataclass(frozen=True)
class Square:
    """Head drop k q|q|: fully rough flow. `k` (B or 1, M) [s²/m⁵]"""

    k: Array

    @property
    def count(self) -> int:
        return self.k.shape[1]

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        return self.k * np.abs(flow) * flow, 2 * self.k * np.abs(flow)

    def corners(self) -> Array | None:
        return None

    def shut(self, flow: Array) -> Flags:
        return np.zeros(np.broadcast_shapes(flow.shape, self.k.shape), dtype=bool)

    def rows(self, index: npt.NDArray[np.intp]) -> Square:
        return Square(pick(self.k, index))


@dataclass(frozen=True)
class Parabola:
    """A pump at one speed: head shut_off - a q - b q²; at negative flow shut_off + b q². (B or 1, M)"""

    shut_off: Array
    a: Array
    b: Array

    @property
    def count(self) -> int:
        return self.shut_off.shape[1]

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        drop = self.a * flow + self.b * np.abs(flow) * flow - self.shut_off
        return drop, self.a + 2 * self.b * np.abs(flow)

    def corners(self) -> Array | None:
        return None

    def shut(self, flow: Array) -> Flags:
        return np.zeros(np.broadcast_shapes(flow.shape, self.shut_off.shape), dtype=bool)

    def rows(self, index: npt.NDArray[np.intp]) -> Parabola:
        return Parabola(pick(self.shut_off, index), pick(self.a, index), pick(self.b, index))


@dataclass(frozen=True)
class Flap:
    """A check valve: k q² forward, one steep line backward; `k` < 0 marks one that is shut both ways."""

    k: Array

    @property
    def count(self) -> int:
        return self.k.shape[1]

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        holds = self.shut(flow)
        drop = np.where(holds, SHUT * flow, self.k * flow**2)
        return drop, np.where(holds, SHUT, 2 * self.k * np.abs(flow))

    def corners(self) -> Array | None:
        return np.where(self.k < 0, np.nan, 0.0)

    def shut(self, flow: Array) -> Flags:
        return (flow < 0) | (self.k < 0)

    def rows(self, index: npt.NDArray[np.intp]) -> Flap:
        return Flap(pick(self.k, index))


def square(*k: float) -> Square:
    """Square laws of one plant."""
    return Square(column(k))


def parabola(shut_off: float, a: float, b: float, count: int = 1) -> Parabola:
    """Equal pumps of one plant."""
    return Parabola(column([shut_off] * count), column([a] * count), column([b] * count))


def flap(*k: float) -> Flap:
    """Check valves of one plant."""
    return Flap(column(k))
