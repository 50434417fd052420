"""How well readings agree with what was predicted.

A reading is y = f + b + e: f the prediction, b the lasting error that one
instrument has on both days, e what changes from look to look. Both are taken
as normal with the standard deviations of the rectangular ones that the
instruments state. The plant of yesterday is known, so yesterday's reading
tells b as far as e lets it; that is used up here, before today's is judged.
A replaced gauge shares nothing, and its b is as wide as its class.

A pointer on a stop says only that what is sensed is there or beyond: a tail.
What is not known (the pressure between two shut elements) may be anywhere: half the chance on the
scale, a quarter at each stop. A gauge that is shut off shows yesterday's reading, as well as it can be
read. Own choices, all three.

Sources
-------
Rectangular errors as standard uncertainties, added in squares: JCGM 100:2008 (GUM), 4.3.7, 5.1.2.
Normal prior and normal reading: textbook. Moments of a normal number cut at one end: textbook (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from loadfirst.evidence.seen import Scale, Seen
from loadfirst.evidence.tail import log_above, log_density
from loadfirst.physics.law import Array

ON_SCALE = 0.5
"""Chance that what nobody knows lies on the scale. [-]"""


class Bias(NamedTuple):
    """What is known of the lasting errors before today's reading, N sets of I readings.

    Attributes
    ----------
    mean, variance : ndarray (N, I)
        Over the standard deviation of the lasting error, and over its square; 0 and 1 where nothing is.
    stood : ndarray (N, I)
        What a gauge that is shut off since keeps; nan where nobody has read it. [SI]
    """

    mean: Array
    variance: Array
    stood: Array


def bias(before: Seen, scales: Sequence[Scale], yesterday: Array, fresh: Sequence[str] = ()) -> Bias:
    """What yesterday's readings tell of the instruments' lasting errors.

    Parameters
    ----------
    before : what is sensed yesterday, (I,).
    scales : the I instruments.
    yesterday : ndarray (N, I)
        Readings; nan: not read; -inf, inf: on the lower or upper stop. [SI]
    fresh : ids of instruments replaced since.
    """
    shares = before.lasting / np.hypot(before.lasting, before.passing)
    with np.errstate(invalid="ignore"):
        score = (yesterday - before.value) / np.hypot(before.lasting, before.passing)
    mean, left = np.where(np.isfinite(score), score, 0.0), np.where(np.isfinite(score), 0.0, 1.0)
    for number, scale in enumerate(scales):
        spread = np.hypot(before.lasting[number], before.passing[number])
        for end, stop, sign in ((scale.high, np.inf, 1.0), (scale.low, -np.inf, -1.0)):
            on_stop = yesterday[:, number] == stop
            cut = sign * (end - before.value[number]) / spread
            if on_stop.any() and np.isfinite(cut):
                steep = float(np.exp(log_density(np.array(cut)) - log_above(np.array(cut))))
                mean[on_stop, number] = sign * steep
                left[on_stop, number] = 1 + cut * steep - steep**2
    known = ~np.isnan(before.value) & ~before.keeps & ~np.isin([one.id for one in scales], fresh)
    stood = np.where(np.isin([one.id for one in scales], fresh), np.nan, yesterday)
    return Bias(
        mean=np.where(known, mean * shares, 0.0),
        variance=np.where(known & ~np.isnan(yesterday), 1 - (1 - left) * shares**2, 1.0),
        stood=np.clip(stood, [one.low for one in scales], [one.high for one in scales]),
    )


def expected(seen: Seen, known: Bias, number: int) -> tuple[Array, Array]:
    """Mean and standard deviation of what one instrument shows, (N, G) each. [SI]

    Parameters
    ----------
    seen : what is sensed, (G, I).
    known : of N sets.
    number : which of the I instruments.
    """
    lasting, passing = seen.lasting[:, number], seen.passing[:, number]
    mean = seen.value[:, number] + lasting * known.mean[:, number, None]
    spread = np.sqrt(lasting**2 * known.variance[:, number, None] + passing**2)
    keeps = seen.keeps[:, number]
    if keeps.any():
        stood = known.stood[:, number, None]
        kept = keeps & ~np.isnan(stood)
        mean, spread = np.where(kept, stood, mean), np.where(kept, passing, spread)
    return mean, spread


def log_likelihood(seen: Seen, scales: Sequence[Scale], known: Bias, today: Array) -> Array:
    """Logarithm of the density (at a stop: of the chance) of today's readings.

    Parameters
    ----------
    seen : what is sensed, (G, I).
    scales : the I instruments.
    known : of the lasting errors, for N sets.
    today : ndarray (N, I)
        As `bias` has yesterday's.

    Returns
    -------
    ndarray (N, G)
    """
    total = np.zeros((len(today), len(seen.value)))
    for number, scale in enumerate(scales):
        shown = today[:, number]
        if np.isnan(shown).all():
            continue
        mean, spread = expected(seen, known, number)
        total += shown_chance(shown[:, None], mean, spread, scale)
    return total


def shown_chance(shown: Array, mean: Array, spread: Array, scale: Scale) -> Array:
    """Logarithm of the density of a value, of the chance of a stop; 0 where nothing was read."""
    on_scale = np.isfinite(shown)
    with np.errstate(invalid="ignore"):
        chance = log_density((shown - mean) / spread) - np.log(spread)
        nowhere = np.where(on_scale, np.log(ON_SCALE / (scale.high - scale.low)), np.log((1 - ON_SCALE) / 2))
        for end, stop, sign in ((scale.high, np.inf, 1.0), (scale.low, -np.inf, -1.0)):
            if (shown == stop).any():
                chance = np.where(shown == stop, log_above(sign * (end - mean) / spread), chance)
        chance = np.where(np.isnan(mean), nowhere, chance)
    return np.where(np.isnan(shown), 0.0, chance)
