"""What a further check is expected to tell: bits about the cause, and about the group it belongs to.

The mutual information of what the check may show and of what has happened, as
the readings so far leave it: I = sum over causes of P times the integral of
p(y|cause) log2 (p(y|cause) / p(y)) dy. One bit halves what is in doubt. The
cheapest check that leaves no doubt is not always the best one to begin with;
minutes are a puzzle's business.

Sources
-------
C. E. Shannon, "A mathematical theory of communication", 1948 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import numpy as np

from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.errors import InputError
from loadfirst.evidence.cloud import clouds, one_set
from loadfirst.evidence.likelihood import ON_SCALE, expected
from loadfirst.evidence.seen import Seen, joined
from loadfirst.evidence.tail import log_above
from loadfirst.evidence.weigh import Posterior, shows_chance
from loadfirst.physics.law import Array, Index

NEGLIGIBLE = 1e-6
"""Points of less than the square of this probability are left out. [-]"""
NEAR = 0.5
"""Predictions so near each other, over their standard deviation, are made one. [-]"""
ACROSS = np.linspace(-5, 5, 21)
"""Where stretches of a scale end, in standard deviations round each prediction."""
MOST = 600
"""Stretches of a scale, at most."""
SURE = 7.0
"""Standard deviations from which a reading is surely above or below: the rest is 1e-12. [-]"""


class Worth(NamedTuple):
    """What a check is expected to tell. [bit]

    Attributes
    ----------
    check : id of an instrument, or of an observation.
    cause, group : about which cause it is, and about its group.
    """

    check: str
    cause: float
    group: float


def worth(posterior: Posterior, checks: Iterable[str] | None = None, row: int = 0) -> tuple[Worth, ...]:
    """Expected information of each check, the most telling first.

    Parameters
    ----------
    checks : ids of instruments and of observations; left out: all instruments that have not been read
        today, and all observations that show one of the hypotheses and have not been made.
    row : which set of readings.

    Raises
    ------
    InputError
        For a check that is neither.
    """
    predictions = posterior.predictions
    asked = _on_offer(posterior, row) if checks is None else list(checks)
    for id in asked:
        if id not in predictions.instruments and id not in OBSERVATIONS:
            raise InputError("check", id, "the id of an instrument or of an observation", rule="lookup")
    chance = posterior.probability[row]
    groups = [one.group for one in predictions.hypotheses]
    member = np.array([groups.index(group) for group in groups])
    points = _points(posterior, row)
    found = []
    for id in asked:
        if id in predictions.instruments:
            told = _reading(posterior, row, points, predictions.instruments.index(id))
        else:
            shows = shows_chance(predictions.hypotheses, id)
            told = np.stack([shows, 1 - shows], axis=1)
        found.append(Worth(id, information(chance, told), information(*_merged(chance, told, member))))
    return tuple(sorted(found, key=lambda one: -one.cause))


def _on_offer(posterior: Posterior, row: int) -> list[str]:
    predictions = posterior.predictions
    shown = {id for one in predictions.hypotheses for id in one.shown_by}
    unread = np.isnan(posterior.today[row])
    return [
        *(id for id, blank in zip(predictions.instruments, unread, strict=True) if blank),
        *(id for id in OBSERVATIONS if id in shown and id not in posterior.observed),
    ]


def information(chance: Array, told: Array) -> float:
    """Mutual information of hypotheses and outcomes. [bit]

    Parameters
    ----------
    chance : ndarray (H,), adds up to 1.
    told : ndarray (H, Y)
        Chance of each outcome under each hypothesis; each row adds up to 1.
    """
    may_be = chance > NEGLIGIBLE**2
    chance, told = chance[may_be], told[may_be]
    mixed = chance @ told
    with np.errstate(divide="ignore", invalid="ignore"):
        ratio = np.where((told > 0) & (mixed > 0), np.log2(told) - np.log2(mixed), 0.0)
    return float(max(chance @ (told * ratio).sum(axis=1), 0.0))


def _merged(chance: Array, told: Array, member: Index) -> tuple[Array, Array]:
    """Chances and outcomes of groups, from those of their members."""
    count = int(member.max()) + 1
    total, both = np.zeros(count), np.zeros((count, told.shape[1]))
    np.add.at(total, member, chance)
    np.add.at(both, member, chance[:, None] * told)
    return total, both / np.maximum(total, 1e-300)[:, None]


class _Points(NamedTuple):
    """All that may be, as points: which hypothesis, how likely within it, and what is sensed."""

    owner: Index
    weight: Array
    seen: Seen


def _points(posterior: Posterior, row: int) -> _Points:
    owner, weight, seen = [], [], []
    for number, cloud in enumerate(clouds(posterior, row)):
        kept = cloud.weight * posterior.probability[row, number] > NEGLIGIBLE**2
        kept |= cloud.weight == cloud.weight.max()
        owner.append(np.full(int(kept.sum()), number))
        weight.append(cloud.weight[kept] / cloud.weight[kept].sum())
        seen.append(cloud.seen.rows(kept))
    return _Points(
        np.concatenate(owner), np.concatenate(weight),
        joined(seen, np.concatenate),
    )  # fmt: skip


def _reading(posterior: Posterior, row: int, points: _Points, number: int) -> Array:
    """Chances of what one instrument may show, (H, Y): the lower stop, stretches of its scale, the upper."""
    scale = posterior.predictions.scales[number]
    _, known = one_set(posterior, row)
    mean, spread = (x[0] for x in expected(points.seen, known, number))
    owner, weight, mean, spread = _thinned(points.owner, points.weight, mean, spread)
    edges = _edges(mean, spread, scale.low, scale.high)
    below = _below(mean, spread, edges)
    even = (1 - ON_SCALE) / 2 + ON_SCALE * (edges - scale.low) / (scale.high - scale.low)
    below = np.where(np.isnan(mean)[:, None], even, below)
    between = np.diff(below, prepend=0.0, append=1.0) * weight[:, None]
    told = np.zeros((len(posterior.predictions.hypotheses), len(edges) + 1))
    first = np.flatnonzero(np.diff(owner, prepend=-1))  # those of one hypothesis stand together
    told[owner[first]] = np.add.reduceat(between, first)
    return told


def _below(mean: Array, spread: Array, edges: Array) -> Array:
    """Chance to be below each edge, reckoned where that is in doubt: most points are far from most edges."""
    far = (mean[:, None] - edges) / spread[:, None]
    below = (far < 0).astype(float)
    near = np.abs(far) < SURE
    below[near] = np.exp(log_above(far[near]))
    return below


def _thinned(owner: Index, weight: Array, mean: Array, spread: Array) -> tuple[Index, Array, Array, Array]:
    """Neighbours that one instrument cannot tell apart made one."""
    moved = np.nan_to_num(np.abs(np.diff(mean)), nan=np.inf) / np.minimum(spread[1:], spread[:-1])
    far = np.concatenate([[0.0], np.where(owner[1:] != owner[:-1], np.inf, moved)])
    first = np.flatnonzero(_begins(far))
    total = np.add.reduceat(weight, first)
    centre, wide = (np.add.reduceat(weight * part, first) / total for part in (mean, spread))
    return owner[first], total, centre, wide


def _begins(far: Array) -> Array:
    """Where a new heap begins: at the first point, and where the way since the last is long enough."""
    leap = ~np.isfinite(far)
    way = np.floor(np.cumsum(np.where(leap, 0.0, far)) / NEAR)
    return np.asarray(np.concatenate([[True], (np.diff(way) > 0) | leap[1:]]))


def _edges(mean: Array, spread: Array, low: float, high: float) -> Array:
    """Where the stretches of a scale end, close where predictions are."""
    sure = ~np.isnan(mean)
    every = np.sort((mean[sure, None] + spread[sure, None] * ACROSS).ravel())
    inside = every[(every > low) & (every < high)]
    return np.unique(np.concatenate([[low], inside[:: len(inside) // MOST + 1], [high]]))
