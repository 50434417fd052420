"""Damping: an instrument of first order follows late, and trembles less."""

from __future__ import annotations

import math

NOISE_TIME = 0.1
"""Time in which the noise of a pressure or a flow forgets itself: a few turns of a shaft. Own choice. [s]"""


def lagged(before: float, now: float, seconds: float, time_constant: float) -> float:
    """What a damped instrument shows a while after what it senses has leapt.

    Parameters
    ----------
    before, now : what it showed, and what it senses since; any one unit.
    seconds : time since then, from 0. [s]
    time_constant : of the damping, from 0. [s] 0: none.

    Returns
    -------
    float
        Between `before` and `now`; exactly as good in one step as in many.

    Sources
    -------
    Step answer of first order, 1 - exp(-t/τ): 63.2 % after one time constant.
    """
    if time_constant <= 0:
        return now
    return now + (before - now) * math.exp(-seconds / time_constant)


def quietened(noise: float, time_constant: float) -> float:
    """Standard deviation of noise behind a damping, from that before it; any one unit.

    Notes
    -----
    Noise whose correlation falls as exp(-t/T), T = `NOISE_TIME`, has behind a
    first order of time constant τ the variance T/(T + τ) of what it had.

    Sources
    -------
    Spectrum of first-order noise through a first-order lag, integrated (own derivation, textbook result).
    """
    return noise if time_constant <= 0 else noise * math.sqrt(NOISE_TIME / (NOISE_TIME + time_constant))
