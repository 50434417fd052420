"""What a pump has left of its head when the suction gives it too little.

The measure is the NPSH available over NPSH3, the NPSH at which 3 % of the head
is lost: that is what the maker's curve of required NPSH shows. Far above it
nothing is lost; at it 3 %, by definition; below it vapour fills the eye of the
impeller and the head collapses. With r the ratio of the two NPSH

    factor = 1 / (1 + (0.03 / 0.97) (r^-20 - 2^-20) / (1 - 2^-20)):

never falling with r, 0.97 at r = 1 exactly, and 1 exactly from r = 2 on, where
the bubbles are few. The exponent is our choice: it leaves 99.5 % at r = 1.1 and
half at r = 0.84, a knee like those of tests at constant flow. The little that is
taken away at 2, without which the factor would be 1 - 3e-8 there, lets a pump with
enough NPSH be solved without regard to it.

Noise and damage begin well above NPSH3: bubbles first appear at two to five
times NPSH3 (`INCEPTION`), without any sign on the gauges.

Why the head in place never rises with flow
-------------------------------------------
The pump in its place gives H(q) F(r(q)). Where H does not rise with q and is not
negative, F is not negative and never falls with r, the product falls as long
as r does not rise with q: as long as the available NPSH does not rise with the
flow (a suction line's never does) and the required one does not fall. Some
makers' curves of required NPSH fall a little at small flow; `rising` lifts them
to their rising envelope. Where the head is negative (a pump forced far beyond
its last point is a resistance) it is left as it is.

Sources
-------
ISO 9906: NPSH3 is the NPSH at which 3 % of the head of the first stage is lost
(from memory). ANSI/HI 9.6.1 says that cavitation begins at a multiple of NPSH3
(from memory); the range of 2 to 5 is common practice.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.law import Array

if TYPE_CHECKING:  # costs a page that starts more than it says
    from numpy.typing import ArrayLike

LOST_AT_NPSH3 = 0.03  # [-] of the head, by definition
KNEE = 20.0  # exponent: the larger, the sharper the collapse
INCEPTION = (2.0, 5.0)  # [-] times NPSH3
ENOUGH = 2.0  # [-] ratio from which nothing is lost
_FAR = 1e3  # [-] ratio that stands for all above it
_TAKEN = ENOUGH**-KNEE
_ODDS = LOST_AT_NPSH3 / (1 - LOST_AT_NPSH3) / (1 - _TAKEN)


def npsh_ratio(available: ArrayLike, required: ArrayLike) -> Array:
    """NPSH available over required, finite for any two.

    Parameters
    ----------
    available : array_like
        Of any sign: below 0 the liquid boils before the pump. [m]
    required : array_like, broadcast against `available`
        NPSH3, from 0. [m]

    Returns
    -------
    ratio : ndarray, broadcast shape
        From 0 to 1000, which stands for everything above it. [-]
    """
    available, required = np.asarray(available, dtype=float), np.asarray(required, dtype=float)
    least = np.maximum(required, np.maximum(available, 0.0) / _FAR)
    return np.asarray(np.maximum(available, 0.0) / np.where(least > 0, least, 1.0))


def head_factor(ratio: ArrayLike) -> tuple[Array, Array]:
    """Share of the head that is left, and how fast it grows with the ratio.

    Parameters
    ----------
    ratio : array_like
        NPSH available over NPSH3, from 0. [-]

    Returns
    -------
    factor : ndarray, same shape
        From 0 at ratio 0, 0.97 at 1, to 1 from 2 on. [-]
    slope : ndarray, same shape
        d(factor)/d(ratio), never negative. [-]
    """
    r = np.clip(np.asarray(ratio, dtype=float), 0.0, ENOUGH)
    grown = r ** (KNEE - 1)
    whole = grown * r * (1 - _ODDS * _TAKEN) + _ODDS
    slope = KNEE * grown / whole * (_ODDS / whole)
    return np.where(r < ENOUGH, grown * r / whole, 1.0), np.where(r < ENOUGH, slope, 0.0)


def in_place(
    head: Array, head_slope: Array, available: tuple[Array, Array], required: tuple[Array, Array]
) -> tuple[Array, Array]:
    """Head of a pump in its place, and its slope over the flow.

    Parameters
    ----------
    head, head_slope : ndarray
        Of the pump with plenty of NPSH. [m], d/d(flow) [m/(m³/s)]
    available, required : pairs of ndarray
        NPSH [m] and its slope over the flow [m/(m³/s)].

    Returns
    -------
    head : ndarray
        Never above `head`; unchanged where that is negative. [m]
    slope : ndarray
        Never positive where `head` and `available` do not rise and `required`
        does not fall. [m/(m³/s)]
    """
    ratio = npsh_ratio(available[0], required[0])
    factor, per_ratio = head_factor(ratio)
    live = (ratio > 0) & (ratio < ENOUGH)
    divisor = np.where(live, required[0], 1.0)
    turning = np.where(live, (available[1] - ratio * required[1]) / divisor, 0.0)
    gives = head > 0
    slope = head_slope * factor + head * per_ratio * turning
    return np.where(gives, head * factor, head), np.where(gives, slope, head_slope)


def rising(required: ArrayLike) -> Array:
    """The lowest curve over a maker's points of required NPSH that never falls with the flow.

    Parameters
    ----------
    required : array_like (…, K)
        NPSH3 at rising flows. [m]

    Returns
    -------
    ndarray (…, K) [m]
    """
    return np.maximum.accumulate(np.asarray(required, dtype=float), axis=-1)
