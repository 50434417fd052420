"""How wrong a sound instrument may be, from its class and range."""

from __future__ import annotations

import math

from loadfirst.instruments.faults.own_error import REPEATABLE


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


def root_limit(percent: float, high: float, value: float) -> float:
    """Greatest error of a meter that takes the square root of what it senses.

    Parameters
    ----------
    percent : float
        Greatest error in per cent of the range of what is sensed. [%]
    high : float
        End of the scale, from 0.
    value : float
        What it reads, in the unit of `high`.

    Returns
    -------
    float
        In the unit of `high`. Well up the scale it is about percent/2 times
        high/value of `high`: at a quarter of the flow four times that at the end.

    Sources
    -------
    q ∝ √Δp (ISO 5167-1:2003), the greater of both ways.
    """
    share, error = abs(value) / high, percent / 100
    signal = share * share
    return high * max(math.sqrt(signal + error) - share, share - math.sqrt(max(signal - error, 0.0)))


def standard(limit: float, noise: float = 0.0) -> float:
    """Standard uncertainty of a reading whose error is as likely anywhere within a limit, and of its noise.

    Parameters
    ----------
    limit : float
        Greatest error either way: a rectangular distribution of that half-width.
    noise : float
        Standard deviation of what trembles, in the same unit.

    Sources
    -------
    JCGM 100:2008 (GUM), 4.3.7: the standard uncertainty of a rectangular
    distribution of half-width a is a/√3; 5.1.2: independent ones add in squares (both from memory).
    """
    return math.hypot(limit / math.sqrt(3), noise)


def repeatability(limit: float, noise: float = 0.0, changes: float = REPEATABLE) -> float:
    """Standard deviation of two looks at the same sound instrument, about their mean; as `standard`.

    `changes` is the share of its limit that changes from look to look. [-]
    """
    return standard(changes * limit, noise)


def of_difference(first: float, second: float, *, same: bool, changes: float = REPEATABLE) -> float:
    """Greatest error of a difference of two readings, from the greatest errors of both.

    Parameters
    ----------
    first, second : float
        Greatest error of each reading, in one unit.
    same : bool
        Whether one instrument gave both. Then its lasting error goes out of the difference.
    changes : float
        Share of its limit that changes from look to look. [-]

    Notes
    -----
    Instruments of different limits at both readings (a range that was changed)
    are not the same ones.
    """
    return (changes if same else 1.0) * (first + second)
