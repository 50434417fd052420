"""What every cause would make the instruments show, at every size: reckoned once for a plant.

The sizes of a cause are spread evenly over the room that the plant leaves, on
the cause's own scale (equal factors where that is logarithmic): that is how
likely they are beforehand. They stand as close as the instruments can tell
them apart, so that a sum over them is as good as an integral.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np

from loadfirst.causes.catalogue import CAUSES, NOTHING
from loadfirst.causes.cause import Cause
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.evidence.seen import Eye, Scale, Seen, Test, joined
from loadfirst.evidence.surface import Surface, surfaces
from loadfirst.evidence.track import Track, along, look_at_some
from loadfirst.physics.law import Array, Index
from loadfirst.plant.pumps import ResolvedPlant

APART = 1.0
"""How far apart sizes may stand, over what repeats of a difference of readings. [-]

The sum over a normal density at steps of its standard deviation is right to 1e-8 (trapezium rule)."""
WIDER = 0.25
"""So much wider scatter, as a logarithm, counts as such a step too. [-]"""
EVEN = 24
"""Sizes that a cause has besides, evenly spread."""
ALL = 1_000_000
"""More sizes than are ever asked for together."""
PROBE = 1025
"""Sizes at which it is measured how readings go."""


class Predictions(NamedTuple):
    """What H hypotheses make I instruments show, at G sizes altogether. Arrays are SI.

    Attributes
    ----------
    plant : as it was, not settled.
    scales : the instruments, in the order of the last axis of all arrays of readings.
    before : what is sensed yesterday, (I,).
    hypotheses : single causes first, then pairs.
    start : ndarray (S,) of int
        Where the sizes of each of the S single causes begin among the G.
    share : ndarray (G,)
        Size, as a share of the room of its cause. [-]
    weight : ndarray (G,)
        How likely the size is beforehand if its cause has happened; those of one cause add up to 1.
        [-] 0 where no steady state was found.
    seen : what is sensed, (G, I).
    pairs : how readings go with two sizes, one for each pair.
    left_out : causes that can happen here and for which no steady state was found at any size.
    """

    plant: ResolvedPlant
    scales: tuple[Scale, ...]
    before: Seen
    hypotheses: tuple[Hypothesis, ...]
    start: Index
    share: Array
    weight: Array
    seen: Seen
    pairs: tuple[Surface, ...]
    left_out: tuple[Hypothesis, ...]

    @property
    def instruments(self) -> tuple[str, ...]:
        """Their ids."""
        return tuple(scale.id for scale in self.scales)

    def sizes(self, number: int) -> slice:
        """Where those of a single cause stand among the G."""
        ends = [*self.start, len(self.share)]
        return slice(int(ends[number]), int(ends[number + 1]))


class Predicting:
    """The work of `predict` in small steps, for somebody who cannot wait for all of it.

    Attributes
    ----------
    of : how many causes there are to be followed.
    """

    def __init__(
        self,
        plant: ResolvedPlant,
        causes: Iterable[Cause] = CAUSES,
        tests: Sequence[Test] = (),
    ) -> None:
        self._eye = Eye(plant, tests)
        if not self._eye.state.converged:
            steady = "one that comes to a steady state"
            raise InputError("the plant", self._eye.state.why, steady, rule="together")
        asked = {one.id for one in causes} | {NOTHING.id}
        wanted = [one for one in CAUSES if one.id in asked and one.applies(plant) is None]
        self._tracks = [Track(Hypothesis((one,)), self._eye.scales) for one in wanted]
        self.of = len(self._tracks)
        self._left = self._tracks

    @property
    def done(self) -> int:
        """How many causes have been followed by now."""
        return self.of - len(self._left)

    def step(self, most: int) -> None:
        """Solve so many sizes more, of the causes in their order."""
        if self._left:
            self._left = look_at_some(self._eye, self._left, most)

    def finish(self, pairs: Iterable[tuple[Cause, Cause]] = ()) -> Predictions:
        """Follow what is left, and lay it all out, two causes at once too: as of `predict`."""
        while self.done < self.of:
            self.step(ALL)
        eye, tracks = self._eye, self._tracks
        found = [track for track in tracks if track.seen.solved.any()]
        laid = [_laid(track, eye.scales) for track in found]
        doubled = surfaces(eye, found, pairs)
        before = eye.look([eye.plant], [False]).rows(0)
        eye.forget()
        return Predictions(
            plant=eye.plant,
            scales=eye.scales,
            before=before,
            hypotheses=(*(track.hypothesis for track in found), *(one.hypothesis for one in doubled)),
            start=np.cumsum([0, *(len(share) for share, _, _ in laid[:-1])]),
            share=np.concatenate([share for share, _, _ in laid]),
            weight=np.concatenate([weight for _, weight, _ in laid]),
            seen=joined([seen for _, _, seen in laid], np.concatenate),
            pairs=doubled,
            left_out=tuple(track.hypothesis for track in tracks if not track.seen.solved.any()),
        )


def predict(
    plant: ResolvedPlant,
    causes: Iterable[Cause] = CAUSES,
    pairs: Iterable[tuple[Cause, Cause]] = (),
    tests: Sequence[Test] = (),
) -> Predictions:
    """Reckon what the instruments of a plant would show, for each thing that may have changed.

    Parameters
    ----------
    plant : ResolvedPlant
        As it was known yesterday, not settled.
    causes : Cause
        Those to be weighed; the ones that cannot happen here are left out, `nothing` is always there.
    pairs : two causes each
        To be weighed as having happened both; those that touch the same keys, or cannot happen, are left out.
    tests : what a hand does for a while, and what is read then.

    Raises
    ------
    InputError
        Where the plant comes to no steady state.
    """
    return Predicting(plant, causes, tests).finish(pairs)


def _laid(track: Track, scales: Sequence[Scale]) -> tuple[Array, Array, Seen]:
    """Sizes of one cause, their weights, and what is sensed there."""
    if not track.hypothesis.sizes:
        return np.ones(1), np.ones(1), track.seen
    share = _spaced(track)
    seen = along(track.share, track.seen, share)
    weight = np.zeros_like(share)
    weight[1:] += np.diff(share) / 2
    weight[:-1] += np.diff(share) / 2
    weight = np.where(seen.solved, weight, 0.0)
    return share, weight / weight.sum(), seen


def _spaced(track: Track) -> Array:
    """Shares from 0 to 1 that stand no farther apart than the instruments tell."""
    probe = np.linspace(0, 1, PROBE)
    seen = along(track.share, track.seen, probe)
    moved = np.diff(np.nan_to_num(track.cut(seen)), axis=0)
    repeats = np.sqrt(2) * (seen.passing[1:] + seen.passing[:-1]) / 2
    wider = np.diff(np.log(seen.passing), axis=0) / WIDER
    steps = np.sqrt((np.square(moved / repeats) + np.square(wider)).sum(axis=-1)) / APART + EVEN / (PROBE - 1)
    way = np.concatenate([[0.0], np.cumsum(steps)])
    return np.interp(np.linspace(0, way[-1], int(way[-1]) + 2), way, probe)
