"""The causes in the order of their probability: how large each would be, and what speaks for it."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from loadfirst.causes.cause import Cause
from loadfirst.evidence.cloud import Cloud, clouds, one_set
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.evidence.likelihood import expected
from loadfirst.evidence.predict import Predictions
from loadfirst.evidence.weigh import Posterior
from loadfirst.physics.law import Array

SURE = 0.95
"""Probability within an interval of a size, and among the causes that stand. Common practice. [-]"""
POOR = 3.0
"""A reading so many standard deviations off is not explained: instruments err rectangularly, and sound ones
never come there. [-]"""


class Fitted(NamedTuple):
    """How large a cause would be. In the unit of its size; 1 where it has none.

    Attributes
    ----------
    best : the size that agrees best with the readings.
    low, high : the sizes that explain them best hold 95 % between these.
    """

    cause: str
    best: float
    low: float
    high: float


class Agreement(NamedTuple):
    """One reading against what a cause at its best size predicts. [SI]

    Attributes
    ----------
    measured : what the pointer stood at, -inf or inf on a stop.
    predicted : with what yesterday's reading tells of the instrument's own error; None: not known.
    spread : standard deviation within which it should come; None likewise.
    """

    id: str
    measured: float
    predicted: float | None
    spread: float | None

    @property
    def off(self) -> float | None:
        """How many standard deviations the reading is off; None on a stop or where nothing is predicted."""
        if self.predicted is None or self.spread is None or not np.isfinite(self.measured):
            return None
        return (self.measured - self.predicted) / self.spread


class Suspect(NamedTuple):
    """One hypothesis, weighed.

    Attributes
    ----------
    stands : whether it is among the likeliest that hold 95 % of the probability together.
    fitted : one of each of its causes.
    readings : those of today.
    """

    hypothesis: Hypothesis
    probability: float
    stands: bool
    fitted: tuple[Fitted, ...]
    readings: tuple[Agreement, ...]


def suspects(posterior: Posterior, row: int = 0) -> tuple[Suspect, ...]:
    """All hypotheses, the likeliest first.

    Parameters
    ----------
    row : which set of readings.
    """
    chance = posterior.probability[row]
    order = np.argsort(-chance, kind="stable")
    before = np.cumsum(chance[order]) - chance[order]
    found = clouds(posterior, row)
    return tuple(
        _suspect(posterior, row, int(number), found[number], bool(held < SURE))
        for number, held in zip(order, before, strict=True)
    )


def unexplained(likeliest: Suspect) -> tuple[Agreement, ...]:
    """Readings that even the likeliest does not explain: they ask for another cause, or for two."""
    return tuple(one for one in likeliest.readings if one.off is not None and abs(one.off) > POOR)


def strangers(predictions: Predictions, yesterday: Array) -> tuple[str, ...]:
    """Instruments whose reading of yesterday does not fit the plant as it is said to have been then.

    Parameters
    ----------
    yesterday : ndarray (1, I), as `weigh.row` makes it.
    """
    before = predictions.before
    off = (yesterday[0] - before.value) / np.hypot(before.lasting, before.passing)
    odd = np.isfinite(yesterday[0]) & (np.abs(off) > POOR) & ~before.keeps
    return tuple(id for id, far in zip(predictions.instruments, odd, strict=True) if far)


def _suspect(posterior: Posterior, row: int, number: int, cloud: Cloud, stands: bool) -> Suspect:
    hypothesis = posterior.predictions.hypotheses[number]
    best = int(np.argmax(np.where(cloud.weight > 0, cloud.fit, -np.inf)))
    ends = [_interval(cloud, axis) for axis in range(cloud.share.shape[1])]
    plant = posterior.predictions.plant
    fitted = tuple(
        _sized(cause, [cause.at(plant, float(share)) for share in (cloud.share[best, axis], *ends[axis])])
        for axis, cause in enumerate(hypothesis.causes)
    )
    readings = _agreements(posterior, row, cloud, best)
    return Suspect(hypothesis, float(posterior.probability[row, number]), stands, fitted, readings)


def _sized(cause: Cause, sizes: list[float]) -> Fitted:
    return Fitted(cause.id, *sizes)


def _interval(cloud: Cloud, axis: int) -> tuple[float, float]:
    """Ends of the best fitting sizes that hold nearly all of the weight."""
    order = np.argsort(-np.where(cloud.weight > 0, cloud.fit, -np.inf))
    held = np.cumsum(cloud.weight[order])
    inside: Array = cloud.share[order[: int(np.searchsorted(held, SURE)) + 1], axis]
    return float(inside.min()), float(inside.max())


def _agreements(posterior: Posterior, row: int, cloud: Cloud, best: int) -> tuple[Agreement, ...]:
    today, known = one_set(posterior, row)
    seen = cloud.seen.rows(slice(best, best + 1))
    found = []
    for number, scale in enumerate(posterior.predictions.scales):
        if not np.isnan(today[0, number]):
            mean, spread = (float(x[0, 0]) for x in expected(seen, known, number))
            told = (None, None) if np.isnan(mean) else (mean, spread)
            found.append(Agreement(scale.id, float(today[0, number]), *told))
    return tuple(found)
