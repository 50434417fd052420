"""The equations of a network: what its laws lose along the branches, at given flows."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from loadfirst.physics.law import Array, Index, Law, pick
from loadfirst.physics.topology import Topology


class Equations(NamedTuple):
    """Branch laws and balances of B plants of one shape.

    Attributes
    ----------
    shape : Topology
    laws : one per entry of `shape.cuts`.
    fixed : (B, F) heads of the fixed nodes. [m]
    ends : (B, K) head at a branch's inlet less that at its outlet, of fixed nodes only. [m]
    supply : (B, N) flow put in at the junctions. [m³/s]
    head_scale, flow_scale : (B, 1) what is large here. [m], [m³/s]
    floor : (B, 1) least slope in the matrix. [m/(m³/s)]
    about : (B, K) flows to start from. [m³/s]
    """

    shape: Topology
    laws: tuple[Law, ...]
    fixed: Array
    ends: Array
    supply: Array
    head_scale: Array
    flow_scale: Array
    floor: Array
    about: Array

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

    def rows(self, index: Index) -> Equations:
        """The same of some plants only."""
        return Equations(
            self.shape,
            tuple(law.rows(index) for law in self.laws),
            pick(self.fixed, index),
            pick(self.ends, index),
            pick(self.supply, index),
            pick(self.head_scale, index),
            pick(self.flow_scale, index),
            pick(self.floor, index),
            pick(self.about, index),
        )


class Point(NamedTuple):
    """Flows of B plants with the laws' answers there.

    Attributes
    ----------
    flow : (B, K) of the branches. [m³/s]
    drop, steep : (B, C) head drop and slope of every column. [m] [m/(m³/s)]
    loss, slope : (B, K) the same added up along the branches.
    """

    flow: Array
    drop: Array
    steep: Array
    loss: Array
    slope: Array

    def rows(self, index: Index) -> Point:
        """The same of some plants only."""
        return Point(*(part[index] for part in self))


def at(equations: Equations, flow: Array) -> Point:
    """Evaluate all laws once, and add them up along the branches."""
    drop, steep = equations.elements(flow)
    return Point(flow, drop, steep, drop @ equations.shape.chain, steep @ equations.shape.size)
