"""An instrument: what stands between the truth and the number that a person reads.

A sound one passes the truth on and is limited only by the ends of its scale.
A fault is a change made to the truth on its way here, before the scale cuts it.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from msgspec import Struct

from loadfirst.instruments.uncertainty import class_limit, reading_limit

Quantity = Literal["pressure", "flow", "current", "speed", "height"]


class Reading(Struct, frozen=True):
    """What one instrument shows. SI units: Pa (gauge), m³/s, A, rad/s, m above the floor.

    Attributes
    ----------
    id : str
        Which instrument: ``gauge-discharge``.
    quantity : str
        What it measures.
    value : float or None
        What its pointer stands at; None where there is nothing to be read.
    low, high : float
        Ends of its scale.
    accuracy : float or None
        Greatest error of a sound instrument here, either way; None without a value.
    off_scale : "low", "high" or None
        Set when the truth lies beyond an end by more than the instrument may
        err: `value` is that end, and the truth is somewhere past it. Nearer,
        a sound instrument might show the end by itself.
    """

    id: str
    quantity: Quantity
    value: float | None
    low: float
    high: float
    accuracy: float | None
    off_scale: Literal["low", "high"] | None


Shown = tuple[Reading, ...]
"""All that a person can read at a plant: never the true state itself."""


class Instrument(NamedTuple):
    """A scale with two stops.

    Attributes
    ----------
    id, quantity : str
        As in `Reading`.
    low, high : float
        Ends of the scale, `low` < `high`. [SI]
    span_percent : float
        Greatest error in per cent of the span, as an accuracy class states it. [%]
    reading_percent : float
        Greatest error in per cent of the reading, added to the other. [%]
    """

    id: str
    quantity: Quantity
    low: float
    high: float
    span_percent: float = 0.0
    reading_percent: float = 0.0

    def show(self, truth: float | None) -> Reading:
        """What a person reads when the quantity is `truth` [SI]; None: there is nothing to measure.

        The pointer rests on its stop where the truth is beyond the scale.
        """
        if truth is None:
            return Reading(self.id, self.quantity, None, self.low, self.high, None, None)
        value = min(max(truth, self.low), self.high)
        accuracy = class_limit(self.span_percent, self.low, self.high)
        accuracy += reading_limit(self.reading_percent, value)
        off: Literal["low", "high"] | None = None
        if abs(truth - value) > accuracy:
            off = "low" if truth < value else "high"
        return Reading(self.id, self.quantity, value, self.low, self.high, accuracy, off)
