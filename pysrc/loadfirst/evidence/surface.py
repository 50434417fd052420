"""How readings go with the sizes of two causes that happened both."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import product
from typing import NamedTuple

import numpy as np

from loadfirst.causes.cause import Cause
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.evidence.seen import Eye, Seen
from loadfirst.evidence.track import Track, along
from loadfirst.physics.law import Array

NODES = 9
"""Sizes of each of two causes that are solved, each with each."""


class Surface(NamedTuple):
    """What is sensed over two sizes.

    Attributes
    ----------
    hypothesis : a pair.
    first, second : ndarray (A,), (B,), rising
        Sizes solved, as shares of the room; of one that has no size a single one. [-]
    seen : what is sensed there, (A, B, I).
    """

    hypothesis: Hypothesis
    first: Array
    second: Array
    seen: Seen

    @property
    def solved_share(self) -> float:
        """Share of both rooms together in which a steady state was found. [-]"""
        return float(self.seen.solved.mean())

    def at(self, first: Array, second: Array) -> Seen:
        """What is sensed at each of the first shares (a,) with each of the second (b,): (a, b, I)."""
        across = along(self.first, self.seen, first).each(lambda part: part.swapaxes(0, 1))
        return along(self.second, across, second).each(lambda part: part.swapaxes(0, 1))


def surfaces(eye: Eye, tracks: Sequence[Track], pairs: Iterable[tuple[Cause, Cause]]) -> tuple[Surface, ...]:
    """Solve the pairs that can be, each of their sizes with each."""
    alone = {track.hypothesis.causes[0].id: track for track in tracks}
    found = []
    for first, second in pairs:
        if first.id in alone and second.id in alone and not {*first.keys} & {*second.keys}:
            found += _solved(eye, Hypothesis((first, second)))
    return tuple(found)


def _solved(eye: Eye, pair: Hypothesis) -> list[Surface]:
    """The pair at all its sizes; none where the first leaves the second no room, or nothing comes to rest."""
    nodes = [np.linspace(0, 1, NODES) if cause.size else np.ones(1) for cause in pair.causes]
    shares = list(product(*(node.tolist() for node in nodes)))
    try:
        plants = [
            pair.at(eye.plant, [each for each, cause in zip(both, pair.causes, strict=True) if cause.size])
            for both in shares
        ]
    except InputError:
        return []
    seen = eye.look(plants, [pair.hunts()] * len(plants))
    shape = len(nodes[0]), len(nodes[1])
    laid = seen.each(lambda part: part.reshape(*shape, *part.shape[1:]))
    return [Surface(pair, nodes[0], nodes[1], laid)] if seen.solved.any() else []
