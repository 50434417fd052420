"""How readings go with the size of one cause: solved where it matters, smooth curves in between.

Sizes are halved where a curve through those solved so far missed the next one
by more than a share of what the instruments repeat to.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.evidence.seen import Eye, Scale, Seen, joined
from loadfirst.physics.interpolate import monotone_slopes
from loadfirst.physics.law import Array, Flags, Index

FIRST = 5
"""How many sizes are solved at first, from end to end."""
MISS = 0.1
"""How far a curve may miss a size solved later, over what repeats of a difference. [-]"""
OTHERWISE = 0.1
"""How far the standard deviation of what changes from look to look may be missed, of itself. [-]"""
DEEPEST = 8
"""How often an interval is halved at most, where something leaps."""
BEYOND = 10.0
"""How many standard deviations beyond an end of a scale still count."""


class Track:
    """The readings along the sizes of one hypothesis.

    Attributes
    ----------
    hypothesis : a single cause.
    share : ndarray (K,), rising
        Sizes solved, as shares of the room that the plant leaves. [-]
    seen : what is sensed there, (K, I).
    """

    def __init__(self, hypothesis: Hypothesis, scales: Sequence[Scale]) -> None:
        self.hypothesis = hypothesis
        self.low, self.high = (np.array([getattr(one, end) for one in scales]) for end in ("low", "high"))
        self.share = np.empty(0)
        blank, no = np.empty((0, len(scales))), np.empty((0, len(scales)), dtype=bool)
        self.seen = Seen(blank, blank, blank, no, no[:, 0])
        self.asked = np.linspace(0, 1, FIRST) if hypothesis.sizes else np.ones(1)
        self.depth = 0
        self._found = list[Seen]()

    @property
    def waiting(self) -> list[float]:
        """Sizes asked for that have not been put yet."""
        left: list[float] = self.asked[sum(len(part.solved) for part in self._found) :].tolist()
        return left

    def put(self, found: Seen) -> None:
        """What was found at the first of the sizes that wait; the last of them lets it ask for others."""
        self._found.append(found)
        if not self.waiting:
            every, self._found = joined(self._found, np.concatenate), []
            self.take(every)

    def take(self, found: Seen) -> None:
        """Keep what was found at the sizes asked for, and ask for those between that are worth it."""
        worth = self._missed(found) if len(self.share) else np.ones(len(self.asked), dtype=bool)
        asked, order = self.asked, np.argsort(np.concatenate([self.share, self.asked]))
        self.share = np.concatenate([self.share, asked])[order]
        self.seen = joined([self.seen, found], np.concatenate).rows(order)
        middles = (self.share[1:] + self.share[:-1]) / 2
        ends = np.isin(self.share, asked[worth])
        self.depth += 1
        self.asked = middles[ends[1:] | ends[:-1]] if self.depth < DEEPEST else np.empty(0)

    def _missed(self, found: Seen) -> Flags:
        """Where the curve so far says something else than was found."""
        guess = along(self.share, self.seen, self.asked)
        far = np.abs(self.cut(guess) - self.cut(found)) > MISS * found.passing * np.sqrt(2)
        far |= np.abs(guess.passing - found.passing) > OTHERWISE * found.passing
        odd = (far & ~np.isnan(found.value)) | (np.isnan(found.value) != np.isnan(guess.value))
        return np.asarray((odd & ~found.keeps).any(axis=-1) | (found.solved != guess.solved))

    def cut(self, seen: Seen) -> Array:
        """Values as far as they matter: a stop hides what is far beyond it."""
        spare = BEYOND * (seen.lasting + seen.passing)
        return np.clip(seen.value, self.low - spare, self.high + spare)


def look_at_some(eye: Eye, tracks: Sequence[Track], most: int) -> list[Track]:
    """Solve so many of the sizes that they ask for, together. Returns those that ask for more."""
    asked = list[tuple[Track, list[float]]]()
    room = most
    for track in tracks:
        if not room:
            break
        asked.append((track, track.waiting[:room]))
        room -= len(asked[-1][1])
    plants = [one.hypothesis.at(eye.plant, [share]) for one, shares in asked for share in shares]
    hunts = [one.hypothesis.hunts() for one, shares in asked for _ in shares]
    found, start = eye.look(plants, hunts), 0
    for track, shares in asked:
        track.put(found.rows(slice(start, start + len(shares))))
        start += len(shares)
    return [track for track in tracks if len(track.asked)]


def along(share: Array, seen: Seen, at: Array) -> Seen:
    """What is sensed at shares between those solved: values by monotone cubics, flags of the nearest.

    Parameters
    ----------
    share : ndarray (K,), rising.
    seen : at these shares, along the first axis.
    at : ndarray (A,)
    """
    if len(share) == 1:
        return seen.rows(np.zeros(len(at), dtype=np.intp))
    nearest = np.abs(at[:, None] - share).argmin(axis=1)
    value = cubic(share, _filled(share, seen.value), at)
    return Seen(
        value=np.where(np.isnan(seen.value[nearest]), np.nan, value),
        lasting=straight(share, seen.lasting, at),
        passing=straight(share, seen.passing, at),
        keeps=seen.keeps[nearest],
        solved=seen.solved[nearest],
    )


def _filled(share: Array, values: Array) -> Array:
    """Gaps bridged straight, so that curves reach the edge of what is known."""
    if not np.isnan(values).any():
        return values
    columns = values.reshape(len(share), -1).T
    filled = [
        np.interp(share, share[known], column[known]) if known.any() else np.zeros_like(column)
        for column, known in zip(columns, ~np.isnan(columns), strict=True)
    ]
    return np.column_stack(filled).reshape(values.shape)


def _place(share: Array, at: Array, axes: int) -> tuple[Index, Array, Array]:
    """Piece, how far into it as a share, and its length, for values of so many axes."""
    piece = np.clip(np.searchsorted(share, at, side="right") - 1, 0, len(share) - 2)
    wide = (len(at), *(1,) * (axes - 1))
    step = share[piece + 1] - share[piece]
    return piece, ((at - share[piece]) / step).reshape(wide), step.reshape(wide)


def straight(share: Array, values: Array, at: Array) -> Array:
    """Straight lines through values (K, ...), at shares (A,): (A, ...)."""
    piece, t, _ = _place(share, at, values.ndim)
    return np.asarray(values[piece] + t * (values[piece + 1] - values[piece]))


def cubic(share: Array, values: Array, at: Array) -> Array:
    """Monotone cubics through values (K, ...), at shares (A,): (A, ...)."""
    slopes = np.moveaxis(monotone_slopes(share, np.moveaxis(values, 0, -1)), -1, 0)
    piece, t, step = _place(share, at, values.ndim)
    left, right = values[piece], values[piece + 1]
    rise, fall = slopes[piece] * step, slopes[piece + 1] * step
    bent = 3 * (right - left) - 2 * rise - fall + t * (2 * (left - right) + rise + fall)
    return np.asarray(left + t * (rise + t * bent))
