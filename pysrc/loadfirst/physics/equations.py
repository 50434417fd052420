"""The equations of a network: what its laws lose along the branches, at given flows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import Array, Law, pick
from loadfirst.physics.topology import Topology

FLOOR = 1e-5
"""Least slope in the matrix, of head scale over flow scale; never in a law. [-]"""


@dataclass(frozen=True, eq=False)
class Equations:
    """Branch laws and balances of B plants of one shape.

    Attributes
    ----------
    shape : Topology
    laws : one per entry of `shape.cuts`.
    fixed : (B, F) heads of the fixed nodes. [m]
    ends : (B, K) head at a branch's inlet less that at its outlet, of fixed nodes only. [m]
    supply : (B, N) flow put in at the junctions. [m³/s]
    head_scale, flow_scale : (B, 1) what is large here. [m], [m³/s]
    """

    shape: Topology
    laws: tuple[Law, ...]
    fixed: Array
    ends: Array
    supply: Array
    head_scale: Array
    flow_scale: Array

    @property
    def floor(self) -> Array:
        """Least slope in the matrix, (B, 1). [m/(m³/s)]"""
        return FLOOR * self.head_scale / self.flow_scale

    def elements(self, flow: Array) -> tuple[Array, Array]:
        """Head drop and slope of every column, (B, C), at branch flows (B, K)."""
        through = flow @ self.shape.chain.T
        drop, slope = np.empty_like(through), np.empty_like(through)
        for law, (_, cut) in zip(self.laws, self.shape.cuts, strict=True):
            drop[:, cut], slope[:, cut] = law.head_drop(through[:, cut])
        return drop, slope

    def corners(self, flow: Array, change: Array) -> Array:
        """Steps along `change` at which an element meets its corner, (B, C); inf where none."""
        through, moved = flow @ self.shape.chain.T, change @ self.shape.chain.T
        at = np.full_like(through, np.inf)
        for law, (_, cut) in zip(self.laws, self.shape.cuts, strict=True):
            corner = law.corners()
            if corner is not None:
                with np.errstate(all="ignore"):
                    at[:, cut] = (corner - through[:, cut]) / moved[:, cut]
        return np.where(np.isfinite(at), at, np.inf)

    def rows(self, index: npt.NDArray[np.intp]) -> Equations:
        """The same of some plants only."""
        return Equations(
            self.shape,
            tuple(law.rows(index) for law in self.laws),
            pick(self.fixed, index),
            pick(self.ends, index),
            pick(self.supply, index),
            pick(self.head_scale, index),
            pick(self.flow_scale, index),
        )


@dataclass(frozen=True, eq=False)
class Point:
    """Flows of B plants with the laws' answers there."""

    flow: Array
    drop: Array
    loss: Array
    slope: Array


def at(equations: Equations, flow: Array) -> Point:
    """Evaluate all laws once, and add them up along the branches."""
    drop, slope = equations.elements(flow)
    return Point(flow, drop, drop @ equations.shape.chain, slope @ equations.shape.size)
