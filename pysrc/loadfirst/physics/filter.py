"""A filter: liquid creeps through its medium and its cake, and rushes through its housing.

    Δp = μ R (1 + fouling) q + K q|q|

Through the medium the flow is laminar, so the drop goes with flow and viscosity:
a filter on cold oil looks like a fouled one. Cake adds its resistance to the
medium's; `fouling` is the one over the other. The housing adds a square law.
As a head, with the kinematic viscosity ν: (ν/g) R (1 + fouling) q + k q|q|.

Sources
-------
Darcy's law for the medium; cake and medium in series as in Ruth's filtration
equation, Δp = μ (α c V / A + R_m) q / A (from memory). The square term for the
housing is common practice.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array, Flags, Index, column, pick
from loadfirst.physics.ranges import require
from loadfirst.units import G

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def medium_resistance(drop: ArrayLike, flow: ArrayLike, viscosity: ArrayLike) -> Array:
    """Resistance of a clean medium from one known drop.

    Parameters
    ----------
    drop : array_like
        Across the clean medium, from 0. [Pa]
    flow : array_like
        At which it was measured, above 0. [m³/s]
    viscosity : array_like
        *Dynamic* viscosity of the liquid then, above 0. [Pa s]

    Returns
    -------
    resistance : ndarray, broadcast shape [1/m³]

    Raises
    ------
    InputError
        For a value outside these ranges.
    """
    drop, flow, viscosity = (np.asarray(x, dtype=float) for x in (drop, flow, viscosity))
    require("filter.clean_drop", drop, drop >= 0, "0 Pa or more")
    require("filter.clean_flow", flow, flow > 0, "above 0 m³/s")
    require("filter.viscosity", viscosity, viscosity > 0, "above 0 Pa s")
    return np.asarray(drop / (flow * viscosity))


class Filters:
    """M filters in a batch of plants.

    Parameters
    ----------
    resistance : array_like (B or 1, M)
        Of the clean medium, from 0. [1/m³]
    fouling : array_like (B or 1, M)
        Resistance of the cake over that of the clean medium, from 0. [-]
    viscosity : array_like (B or 1, M)
        *Kinematic* viscosity of the liquid, above 0. [m²/s]
    k_head : array_like (B or 1, M)
        Head lost in the housing over flow squared, from 0. [s²/m⁵]

    Raises
    ------
    InputError
        When made with a value outside these ranges.

    Notes
    -----
    The same both ways; real cake would be washed off by reversed flow.
    """

    def __init__(
        self,
        resistance: ArrayLike,
        fouling: ArrayLike,
        viscosity: ArrayLike,
        k_head: ArrayLike = 0.0,
    ) -> None:
        resistance, fouling, viscosity, k_head = map(column, (resistance, fouling, viscosity, k_head))
        require("filter.resistance", resistance, resistance >= 0, "0 1/m³ or more")
        require("filter.fouling", fouling, fouling >= 0, "0 or more")
        require("filter.viscosity", viscosity, viscosity > 0, "above 0 m²/s")
        require("filter.k_head", k_head, k_head >= 0, "0 s²/m⁵ or more")
        self._line = viscosity / G * resistance * (1 + fouling)
        self._square = k_head

    @property
    def count(self) -> int:
        """How many filters one plant has (M)."""
        return int(np.broadcast_shapes(self._line.shape, self._square.shape)[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost, and how fast it grows; see `Law`. Odd in the flow."""
        bent = self._square * np.abs(flow)
        return (self._line + bent) * flow, self._line + 2 * bent

    def corners(self) -> None:
        """None: the law is smooth."""
        return None

    def shut(self, flow: Array) -> Flags:
        """Nowhere: even a blocked filter seeps. (B, M)"""
        shape = np.broadcast_shapes(self._line.shape, self._square.shape, flow.shape)
        return np.zeros(shape, dtype=bool)

    def rows(self, index: Index) -> Filters:
        """The same filters of some of the plants only."""
        some = object.__new__(Filters)
        some._line, some._square = pick(self._line, index), pick(self._square, index)
        return some
