"""How well two causes at once explain the readings: summed over both sizes, ever nearer to the best."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from loadfirst.evidence.likelihood import Bias, log_likelihood
from loadfirst.evidence.seen import Scale
from loadfirst.evidence.surface import Surface
from loadfirst.physics.law import Array

ACROSS = 65
"""Sizes of each cause at once."""
DROP = 25.0
"""How far below the best a logarithm still counts: e^-25 of it."""
CLOSER = 6
"""How often it looks closer at most."""


class Patch(NamedTuple):
    """A rectangle of both sizes, as shares of the room, with the weights and logarithms of its points.

    Attributes
    ----------
    first, second : ndarray (a,), (b,)
    chance : ndarray (a, b), logarithm of likelihood times weight.
    """

    first: Array
    second: Array
    chance: Array


def log_evidence(pair: Surface, scales: Sequence[Scale], known: Bias, today: Array) -> Array:
    """Logarithm of the chance of N sets of readings when both have happened, (N,)."""
    return np.array(
        [
            total(patch(pair, scales, Bias(*(x[[at]] for x in known)), today[[at]]).chance)
            for at in range(len(today))
        ]
    )


def total(chance: Array) -> float:
    """Logarithm of the sum."""
    most = float(chance.max())
    return most + float(np.log(np.exp(chance - most).sum())) if np.isfinite(most) else most


def patch(pair: Surface, scales: Sequence[Scale], known: Bias, today: Array) -> Patch:
    """The patch in which nearly all of the chance lies, for one set of readings."""
    ends = [(0.0, 1.0), (0.0, 1.0)]
    found = _looked(pair, scales, known, today, ends)
    for _ in range(CLOSER):
        nearer = [_around(found, axis) for axis in (0, 1)]
        if all((b - a) > 0.7 * (d - c) for (a, b), (c, d) in zip(nearer, ends, strict=True)):
            break
        ends = nearer
        found = _looked(pair, scales, known, today, ends)
    return found


def _looked(
    pair: Surface, scales: Sequence[Scale], known: Bias, today: Array, ends: Sequence[tuple[float, float]]
) -> Patch:
    first, second = (
        np.linspace(*end, ACROSS) if len(nodes) > 1 else nodes
        for end, nodes in zip(ends, (pair.first, pair.second), strict=True)
    )
    seen = pair.at(first, second)
    chance = log_likelihood(seen.flat(), scales, known, today).reshape(len(first), len(second))
    with np.errstate(divide="ignore"):
        weight = np.log(_weights(first)[:, None] * _weights(second) * seen.solved / pair.solved_share)
    return Patch(first, second, chance + weight)


def _weights(share: Array) -> Array:
    """Of the trapezium rule."""
    if len(share) == 1:
        return np.ones(1)
    step = (share[-1] - share[0]) / (len(share) - 1)
    weight = np.full(len(share), step)
    weight[[0, -1]] /= 2
    return weight


def _around(found: Patch, axis: int) -> tuple[float, float]:
    """Where on one axis the chance is not next to nothing, and one point more on either side."""
    share = (found.first, found.second)[axis]
    if len(share) == 1:
        return 0.0, 1.0
    worth = np.flatnonzero((found.chance > found.chance.max() - DROP).any(axis=1 - axis))
    return float(share[max(worth[0] - 1, 0)]), float(share[min(worth[-1] + 1, len(share) - 1)])
