"""The sizes of each hypothesis, once the readings have been weighed: points with weights."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from loadfirst.evidence.likelihood import Bias, log_likelihood
from loadfirst.evidence.pairs import patch
from loadfirst.evidence.seen import Seen
from loadfirst.evidence.weigh import Posterior
from loadfirst.physics.law import Array


class Cloud(NamedTuple):
    """Sizes of one hypothesis.

    Attributes
    ----------
    share : ndarray (g, D)
        Sizes of its D causes, as shares of their rooms. [-]
    fit : ndarray (g,)
        Logarithm of how well the readings agree.
    weight : ndarray (g,), adds up to 1.
    seen : what is sensed, (g, I).
    """

    share: Array
    fit: Array
    weight: Array
    seen: Seen


def one_set(posterior: Posterior, row: int) -> tuple[Array, Bias]:
    """Today's readings and what is known of the errors, of one set: (1, I) each."""
    return posterior.today[[row]], Bias(*(part[[row]] for part in posterior.known))


def clouds(posterior: Posterior, row: int = 0) -> list[Cloud]:
    """One of each hypothesis, in their order.

    Parameters
    ----------
    row : which set of readings.
    """
    predictions = posterior.predictions
    today, known = one_set(posterior, row)
    fit = log_likelihood(predictions.seen, predictions.scales, known, today)[0]
    found = []
    for number in range(len(predictions.start)):
        place = predictions.sizes(number)
        weight = _normed(np.log(np.maximum(predictions.weight[place], 1e-300)) + fit[place])
        found.append(Cloud(predictions.share[place, None], fit[place], weight, predictions.seen.rows(place)))
    for pair in predictions.pairs:
        here = patch(pair, predictions.scales, known, today)
        seen = pair.at(here.first, here.second)
        flat = seen.flat()
        share = np.stack(np.meshgrid(here.first, here.second, indexing="ij"), axis=-1).reshape(-1, 2)
        fit = log_likelihood(flat, predictions.scales, known, today)[0]
        found.append(Cloud(share, fit, _normed(here.chance.ravel()), flat))
    return found


def _normed(chance: Array) -> Array:
    weight = np.exp(chance - chance.max())
    return np.asarray(weight / weight.sum())
