"""What want of NPSH does to a pump, for the checker: plain numbers, one pump at a time."""

from __future__ import annotations

from typing import NamedTuple

from scipy.interpolate import CubicHermiteSpline
from tests.checker_laws import Law

NOTHING = 1e-6
"""Static head above the vapour's at a flange that boils, found by a root: as good as none. [m]"""

SLIGHT = 1e-7
"""What the NPSH, a difference of heads, may be off: a collapse turns it into more head. [m]"""

NONE = 1e-7
"""What leaks through steep lines. [m³/s]"""


class Pump(NamedTuple):
    """Minus the head of a pump with plenty of NPSH, and what it requires, if it loses head for want.

    One that pumps `backward` draws from behind; of one that `droops` the head rises with the flow somewhere.
    """

    loss: Law
    required: Law | None = None
    backward: bool = False
    droops: bool = False


class Has(NamedTuple):
    """What a pump has.

    Attributes
    ----------
    available : NPSH at its inlet. [m]
    spare : of it beyond the velocity head in the suction line. [m]
    rest : NPSH of the suction line without flow. [m]
    line : flow of the suction line. [m³/s]
    """

    available: float
    spare: float
    rest: float
    line: float

    @property
    def boils(self) -> bool:
        """Whether the liquid boils in front of it, and no more comes; or does not get there at all."""
        return (self.line > 0 and abs(self.spare) < NOTHING) or (
            abs(self.line) < NONE and self.spare < NOTHING
        )


def required_npsh(q: list[float], n: list[float], s: list[float]) -> Law:
    """The most required at any point up to a flow; on along a line that does not fall. [m³/s] -> [m]"""
    inside = CubicHermiteSpline(q, n, s)

    def required(at: float) -> float:
        before = [value for point, value in zip(q, n, strict=True) if point <= at]
        own = n[0] if at < 0 else float(inside(min(at, q[-1]))) + max(s[-1], 0.0) * max(at - q[-1], 0.0)
        return max([own, *before])

    return required


def in_place(pump: Pump, has: Has, gap: float) -> Law:
    """A pump with that NPSH: 3 % of its head are lost where it has what it requires, nothing at twice that.

    With nothing to spare the liquid boils in front of it, or does not get there: then any
    head below its own is right. `gap` is what was found to be lost from its inlet to its outlet. [m]
    """

    def left(at: float, available: float = has.available) -> float:
        whole = pump.loss(at)
        if pump.required is None:  # displacement: filled or not, but dry it pushes nothing
            return whole if has.rest > 0 or pump.backward else whole - pump.loss(0.0)
        if whole >= 0:
            return whole
        least = pump.required(at)
        if available <= 0:
            return 0.0
        if available >= 2 * least:
            return whole
        ratio, none = least / available, 2.0**-20
        return whole / (1 + 0.03 / 0.97 * (ratio**20 - none) / (1 - none))

    assert has.boils or has.line < NONE or has.spare > 0, "no more flows than passes before the liquid boils"
    if has.boils:
        return lambda at: max(left(at), gap)
    less, more = has.available - SLIGHT, has.available + SLIGHT
    return lambda at: min(max(gap, left(at, more)), left(at, less))
