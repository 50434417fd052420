"""How likely each thing that may have changed is, given what was read and seen.

Bayes' rule: chance beforehand times how well the readings agree, summed over
the sizes of a cause as likely as each is; then what was looked at, each with
its chances of a hit and of a false alarm.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import Hypothesis, priors
from loadfirst.evidence.likelihood import Bias, bias, log_likelihood
from loadfirst.evidence.pairs import log_evidence
from loadfirst.evidence.predict import Predictions
from loadfirst.instruments.instrument import Reading
from loadfirst.physics.law import Array, Flags

AT_ONCE = 100_000
"""Numbers worked on at once, as a processor keeps near; more sets of readings are taken in turns."""


class Posterior(NamedTuple):
    """What N sets of readings say of H hypotheses.

    Attributes
    ----------
    predictions : that the readings were held against.
    today : ndarray (N, I)
        Readings: nan where not read, -inf or inf on a stop. [SI]
    known : of the instruments' lasting errors.
    probability : ndarray (N, H), each row adds up to 1.
    observed : ids of the observations that were made.
    """

    predictions: Predictions
    today: Array
    known: Bias
    probability: Array
    observed: tuple[str, ...] = ()

    @property
    def groups(self) -> dict[str, Array]:
        """Probability of each group, (N,); a pair across two has one of its own."""
        found: dict[str, Array] = {}
        for number, one in enumerate(self.predictions.hypotheses):
            found[one.group] = found.get(one.group, 0.0) + self.probability[:, number]
        return found


def row(predictions: Predictions, shown: Mapping[str, Reading | float | None]) -> Array:
    """Readings as `weigh` takes them.

    Parameters
    ----------
    shown : by id of the instrument; any of them may be left out.
        A reading, or what a pointer stands at [SI]: at or beyond an end of its scale it is on the stop.

    Returns
    -------
    ndarray (1, I)

    Raises
    ------
    InputError
        For an instrument that the plant has not.
    """
    known = predictions.instruments
    found = np.full((1, len(known)), np.nan)
    for id, one in shown.items():
        if id not in known:
            raise InputError(
                id, None, "an instrument of the plant", f"Known here: {', '.join(known)}.", rule="unknown"
            )
        value = one.value if isinstance(one, Reading) else one
        if value is not None:
            scale = predictions.scales[known.index(id)]
            at_end = np.inf if value >= scale.high else -np.inf if value <= scale.low else value
            found[0, known.index(id)] = at_end
    return found


def weigh(
    predictions: Predictions,
    today: Array,
    yesterday: Array | None = None,
    observed: Mapping[str, bool | Flags] | None = None,
    *,
    fresh: tuple[str, ...] = (),
    weights: Mapping[str, float] | None = None,
) -> Posterior:
    """Weigh everything that may have changed against what was read and seen.

    Parameters
    ----------
    predictions : of the plant as it was known yesterday.
    today, yesterday : ndarray (N, I) or (1, I)
        Readings as `row` makes them. Yesterday's left out: the plant is known, its instruments' own errors
        are not.
    observed : by id of an observation, whether it showed something; of N sets at once an array (N,) of bool.
    fresh : ids of instruments replaced since yesterday.
    weights : by id of a cause, how many times likelier it is beforehand than another; 0: ruled out.

    Raises
    ------
    InputError
        For an unknown observation, or weights that leave nothing.
    """
    count = len(today) if yesterday is None else max(len(today), len(yesterday))
    today = np.broadcast_to(today, (count, len(predictions.scales)))
    blank = np.full_like(today, np.nan)
    earlier = blank if yesterday is None else np.broadcast_to(yesterday, today.shape)
    known = bias(predictions.before, predictions.scales, earlier, fresh)
    chance = _given(predictions.hypotheses, weights) + _agreement(predictions, today, known)
    for id, positive in (observed or {}).items():
        chance = chance + _seen(predictions.hypotheses, id, np.broadcast_to(positive, count))
    chance = np.exp(chance - chance.max(axis=1, keepdims=True))
    chance /= chance.sum(axis=1, keepdims=True)
    return Posterior(predictions, today, known, chance, tuple(observed or ()))


def _given(hypotheses: tuple[Hypothesis, ...], weights: Mapping[str, float] | None) -> Array:
    """Logarithm of how likely each is beforehand, (H,)."""
    for id, weight in (weights or {}).items():
        if not 0 <= weight < np.inf:
            raise InputError(f"weights.{id}", weight, "0 or more", low=0)
    ids = {cause.id for one in hypotheses for cause in one.causes}
    if weights and not any(weights.get(id, 1.0) for id in ids):
        raise InputError("weights", 0, "above 0 for some cause that can happen here", rule="together")
    with np.errstate(divide="ignore"):
        return np.asarray(np.log(priors(hypotheses, weights)))


def _agreement(predictions: Predictions, today: Array, known: Bias) -> Array:
    """Logarithm of the chance of the readings under each hypothesis, (N, H)."""
    step = max(1, AT_ONCE // len(predictions.share))
    rows = range(0, len(today), step)
    single = [
        _single(predictions, today[at : at + step], Bias(*(x[at : at + step] for x in known))) for at in rows
    ]
    pairs = [log_evidence(one, predictions.scales, known, today) for one in predictions.pairs]
    return np.column_stack([np.concatenate(single), *pairs])


def _single(predictions: Predictions, today: Array, known: Bias) -> Array:
    with np.errstate(divide="ignore"):
        weight = np.log(predictions.weight)
    chance = log_likelihood(predictions.seen, predictions.scales, known, today) + weight
    most = np.maximum.reduceat(chance, predictions.start, axis=1)
    lengths = np.diff([*predictions.start, chance.shape[1]])
    share = np.exp(chance - np.repeat(most, lengths, axis=1))
    return np.asarray(most + np.log(np.add.reduceat(share, predictions.start, axis=1)))


def _seen(hypotheses: tuple[Hypothesis, ...], id: str, positive: Flags) -> Array:
    """Logarithm of the chance of what an observation said, (N, H)."""
    shows = shows_chance(hypotheses, id)
    return np.asarray(np.where(positive[:, None], np.log(shows), np.log1p(-shows)))


def shows_chance(hypotheses: tuple[Hypothesis, ...], id: str) -> Array:
    """Chance that an observation shows something, under each hypothesis, (H,).

    Raises
    ------
    InputError
        Where there is no such observation.
    """
    if id not in OBSERVATIONS:
        raise InputError(
            "observation", id, "the id of an observation", "`python -m loadfirst causes` prints them.",
            rule="choice", choices=list(OBSERVATIONS),
        )  # fmt: skip
    one = OBSERVATIONS[id]
    return np.array([one.hit if id in each.shown_by else one.false_alarm for each in hypotheses])
