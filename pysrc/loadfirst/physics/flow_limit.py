"""A place that lets no more than a certain flow through: it costs nothing below, and whatever is left above.

So a place answers where the liquid boils: a choked valve (`physics.choking`), a
suction line at vapour pressure (`physics.suction`). Pressure downstream of it no
longer matters; the head that the load does not ask for is lost in vapour.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from loadfirst.physics.law import SHUT, Array, Flags, column, pick
from loadfirst.physics.ranges import require


class FlowLimits:
    """M limits in a batch of plants.

    Parameters
    ----------
    most : array_like (B or 1, M)
        The most flow that passes forward, from 0. [m³/s]
        Backward it is not limited.

    Raises
    ------
    InputError
        When made with a flow that is negative or not a number.

    Notes
    -----
    Above the limit one steep line (`SHUT`) from there. It belongs in series with
    an element that costs something: alone it has no slope below the limit.
    """

    def __init__(self, most: npt.ArrayLike) -> None:
        self._most = column(most)
        require("limit.most", self._most, self._most >= 0, "0 m³/s or more")

    @property
    def count(self) -> int:
        """How many limits one plant has (M)."""
        return int(self._most.shape[1])

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost, and how fast it grows; see `Law`."""
        over = flow > self._most
        return np.where(over, SHUT * (flow - self._most), 0.0), np.where(over, SHUT, 0.0)

    def corners(self) -> Array:
        """The limits themselves."""
        return self._most

    def shut(self, flow: Array) -> Flags:
        """Where the limit holds the flow back: head downstream is no longer set from upstream. (B, M)"""
        return np.asarray(flow > self._most)

    def rows(self, index: npt.NDArray[np.intp]) -> FlowLimits:
        """The same limits of some of the plants only."""
        return FlowLimits(pick(self._most, index))
