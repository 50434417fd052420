"""A root valve that is shut, or a plugged line: the pointer stays where it was.

What it keeps is a place on the dial, whatever errors led to it. It does not
move when the load is changed, which is the best test of it (common practice).
"""

from __future__ import annotations

from typing import Protocol

from loadfirst.units import BAR


class Before(Protocol):
    """A reading from before, as `instrument.Reading`."""

    @property
    def value(self) -> float | None: ...
    @property
    def low(self) -> float: ...
    @property
    def high(self) -> float: ...


def kept(frozen_bar: float | None, before: Before | None, low: float, high: float) -> float:
    """Where the pointer of a gauge that is shut off stands.

    Parameters
    ----------
    frozen_bar : what it keeps on its own scale [bar]; None: what it showed before.
    before : the last reading of that gauge, None where nobody has read it.
    low, high : ends of its scale. [Pa]

    Returns
    -------
    float
        On its own scale; 0, as of a gauge that was vented, where nothing is known. [Pa]
    """
    if frozen_bar is not None:
        return frozen_bar * BAR
    if before is None or before.value is None:
        return 0.0
    share = (before.value - before.low) / (before.high - before.low)
    return low + share * (high - low)
