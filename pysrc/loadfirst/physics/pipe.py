"""What a pipe run costs: friction along its wall, and its fittings."""

from __future__ import annotations

from math import pi
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.friction import STILL, darcy_factor
from loadfirst.physics.law import Array, Flags, Index, column, pick
from loadfirst.physics.ranges import require
from loadfirst.units import G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def velocity_head(flow: ArrayLike, bore: ArrayLike) -> Array:
    """Head that the liquid has by its speed, v²/2g.

    Parameters
    ----------
    flow : array_like
        Volume flow, of any sign. [m³/s]
    bore : array_like, broadcast against `flow`
        Inside diameter, above 0. [m]

    Returns
    -------
    ndarray, broadcast shape
        Never negative. [m]
    """
    size = np.asarray(bore, dtype=float) ** 2
    return np.asarray(8 / (pi**2 * G) * (np.asarray(flow, dtype=float) / size) ** 2)


class Pipes:
    """M round, full pipe runs of one bore each, with their fittings, in a batch.

    Parameters
    ----------
    length : array_like (B or 1, M)
        Along the axis, from 0. [m]
    bore : array_like (B or 1, M)
        Inside diameter, above 0. [m]
    roughness : array_like (B or 1, M)
        Equivalent sand roughness of the wall, from 0 to bore/20. [m]
    k : array_like (B or 1, M)
        Sum of the loss coefficients of the fittings, each on the velocity
        head in this bore, from 0. [-]
    viscosity : array_like (B or 1, M)
        *Kinematic* viscosity of the liquid, above 0. [m²/s]
        A (B or 1, 1) array serves all pipes of a plant.

    Raises
    ------
    InputError
        When made with a value outside the ranges above.

    Notes
    -----
    A loss coefficient is taken as constant: true in turbulent flow, too
    little in laminar flow. Nothing is added for entrance or exit.

    Sources
    -------
    Darcy–Weisbach, h = (f L/D + K) v²/2g; the factor is `physics.friction`'s.
    """

    def __init__(
        self,
        length: ArrayLike,
        bore: ArrayLike,
        roughness: ArrayLike,
        k: ArrayLike,
        viscosity: ArrayLike,
    ) -> None:
        length, bore, roughness, k, viscosity = map(column, (length, bore, roughness, k, viscosity))
        require("pipe.length", length, length >= 0, "0 m or more")
        require("pipe.bore", bore, bore > 0, "above 0 m")
        smooth = roughness <= bore / 20 * (1 + 1e-9)  # bore/20 itself, whatever its last digit
        require("pipe.roughness", roughness, (roughness >= 0) & smooth, "from 0 to bore/20")
        require("pipe.k", k, k >= 0, "0 or more")
        require("pipe.viscosity", viscosity, viscosity > 0, "above 0 m²/s")
        per_flow2 = 8 / (pi**2 * G * bore**4)  # velocity head over flow²
        self._reynolds_per_flow = 4 / (pi * bore * viscosity)
        self._relative_roughness = roughness / bore
        self._friction_scale = per_flow2 * length / bore
        self._k_scale = per_flow2 * k

    @property
    def count(self) -> int:
        """How many pipe runs one plant has (M)."""
        return int(np.broadcast_shapes(self._friction_scale.shape, self._k_scale.shape)[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost in friction and fittings together; see `Law`.

        Odd in the flow. At no flow the slope is that of laminar flow: above 0
        wherever the pipe has a length.
        """
        friction, exponent = self._friction(flow)
        fittings = self._k_scale * np.abs(flow)
        return (friction + fittings) * flow, friction * (2 + exponent) + 2 * fittings

    def breakdown(self, flow: Array) -> tuple[Array, Array]:
        """The same head drop in its two parts.

        Parameters
        ----------
        flow : ndarray (B, M)
            Volume flow, positive from inlet to outlet. [m³/s]

        Returns
        -------
        friction : ndarray (B, M)
            Lost along the wall; its sign follows the flow. [m]
        fittings : ndarray (B, M)
            Lost in the fittings, likewise. [m]
        """
        return self._friction(flow)[0] * flow, self._k_scale * np.abs(flow) * flow

    def corners(self) -> None:
        """None: the law is smooth everywhere."""
        return None

    def shut(self, flow: Array) -> Flags:
        """Nowhere: a pipe is always open. (B, M)"""
        return np.zeros(np.broadcast_shapes(self._friction_scale.shape, flow.shape), dtype=bool)

    def rows(self, index: Index) -> Pipes:
        """The same pipes of some of the plants only."""
        some = object.__new__(Pipes)
        for name, values in vars(self).items():
            setattr(some, name, pick(values, index))
        return some

    def one(self, column: int) -> Pipes:
        """One of the pipe runs of each plant, M = 1."""
        some = object.__new__(Pipes)
        for name, values in vars(self).items():
            setattr(some, name, values[:, column : column + 1] if values.shape[1] > 1 else values)
        return some

    def _friction(self, flow: Array) -> tuple[Array, Array]:
        """Friction drop over flow, and the factor's exponent.

        Drop over flow is finite in still liquid, where the factor is not: the
        flow that stands in it is the one the (floored) factor was taken at.
        """
        reynolds = np.maximum(self._reynolds_per_flow * np.abs(flow), STILL)
        factor, exponent = darcy_factor(reynolds, self._relative_roughness)
        return self._friction_scale * factor * (reynolds / self._reynolds_per_flow), exponent
