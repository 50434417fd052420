"""The two ways in which a straight instrument goes wrong: it starts wrong, or it rises wrong."""

from __future__ import annotations

from loadfirst.units import PERCENT


def sensed(value: float, zero: float, span_percent: float) -> float:
    """What an instrument makes of a value: value (1 + span) + zero, in the unit of the value.

    Parameters
    ----------
    zero : what it shows where there is nothing.
    span_percent : part of the value that it shows too much. [%]

    Sources
    -------
    Common practice (calibration of zero, then of span).
    """
    return value * (1 + span_percent * PERCENT) + zero
