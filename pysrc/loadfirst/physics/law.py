"""What every element of a plant has to be: one law, head drop over flow.

Elements of one kind share one law object, so that many plants of one shape
are evaluated by a handful of array operations: axis 0 is the plant (the
batch), axis 1 the element of this kind.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Protocol

import numpy as np

if TYPE_CHECKING:  # costs a page that starts more than it says
    from numpy.typing import ArrayLike

Array = np.ndarray[tuple[Any, ...], np.dtype[np.float64]]
Flags = np.ndarray[tuple[Any, ...], np.dtype[np.bool_]]
Index = np.ndarray[tuple[Any, ...], np.dtype[np.intp]]
Counts = np.ndarray[tuple[Any, ...], np.dtype[np.int64]]

SHUT = 1e10
"""Slope of anything shut. [m/(m³/s)] Not infinity: at 100 m it leaks 1e-8 m³/s,
far below any flow that is shown; a steeper line stalls the solver."""


class Law(Protocol):
    """M elements of one kind in a batch of B plants.

    The drop never falls as the flow rises; `slope` is its derivative, never
    negative. A pump's drop is minus the head it adds.
    """

    @property
    def count(self) -> int:
        """How many elements of this kind one plant has (M)."""
        ...

    def head_drop(self, flow: Array) -> tuple[Array, Array]:
        """Head lost from inlet to outlet, and how fast it grows.

        Parameters
        ----------
        flow : ndarray (B, M)
            Volume flow, positive from inlet to outlet. [m³/s]

        Returns
        -------
        drop : ndarray (B, M) [m]
        slope : ndarray (B, M), >= 0 [m/(m³/s)]
        """
        ...

    def corners(self) -> Array | None:
        """Flows at which the slope jumps, (B or 1, M), NaN where there is none.

        None when every element is smooth. The line search tries them first.
        """
        ...

    def shut(self, flow: Array) -> Flags:
        """Where an element holds: it is on its steep line at this flow. (B, M)"""
        ...

    def rows(self, index: Index) -> Law:
        """The same elements of some of the plants only."""
        ...


def pick(values: Array, index: Index) -> Array:
    """Rows `index` of a parameter; a single row serves every plant and is kept."""
    return values[index] if len(values) > 1 else values


def column(value: ArrayLike) -> Array:
    """A parameter as (B, M): a scalar is one plant with one element, a list one plant."""
    return np.atleast_2d(np.asarray(value, dtype=float))
