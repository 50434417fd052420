"""How wrong a sound instrument may be, from its class and range."""

from __future__ import annotations


def class_limit(accuracy_class: float, low: float, high: float) -> float:
    """Greatest error of a dial of an accuracy class.

    Parameters
    ----------
    accuracy_class : float
        The class, 0.1 to 4: greatest error in per cent of the span. [%]
    low, high : float
        Ends of the dial, in any one unit, `low` < `high`.

    Returns
    -------
    float
        Greatest error either way, in the unit of the ends; the same anywhere on the dial.

    Notes
    -----
    Holds at the reference temperature of 20 °C, without the shift of 0.4 % of
    the span per 10 K that the standard grants besides.

    Sources
    -------
    EN 837-1:1996, table 11.
    """
    return accuracy_class / 100 * (high - low)


def reading_limit(percent: float, value: float) -> float:
    """Greatest error of a meter that is specified in per cent of what it reads. Unit of `value`."""
    return percent / 100 * abs(value)
