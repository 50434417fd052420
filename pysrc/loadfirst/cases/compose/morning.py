"""Both days of what was drawn, and what the evidence engine makes of its readings before there is a case."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from functools import cached_property
from itertools import product

import numpy as np
from msgspec.structs import replace

from loadfirst.cases.case import Change
from loadfirst.cases.compose.guess import Guess
from loadfirst.cases.compose.place import place_of
from loadfirst.cases.compose.plausible import unread
from loadfirst.cases.compose.refused import Refused, TooWide
from loadfirst.cases.compose.subject import Subject, tests_at
from loadfirst.cases.draw import instrument_seed
from loadfirst.cases.happened import overnight, yesterday_of
from loadfirst.cases.reckoning import Reckoning, reckoning
from loadfirst.cases.truth import family
from loadfirst.cases.two_at_once import lift
from loadfirst.days.shift import Direction, Shift, shift
from loadfirst.days.two_days import Days, Shown, read_both, two_days
from loadfirst.errors import InputError
from loadfirst.evidence.weigh import Posterior, row, weigh
from loadfirst.instruments.piece import same_piece
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data

CLEAR = 1.3
"""A reading has moved clearly, or clearly not, where it is so far off what its instrument explains. [-]"""
LOOKS = 16
"""Draws of chance, at every end of the sizes, that have to say the same of a reading that is spoken of."""


def reckoning_at(plant: str, pairs: tuple[tuple[str, str], ...] = ()) -> Reckoning:
    """What every suspect would show at a plant and in its tests: the same for every case there."""
    return reckoning(yesterday_of(plant, 1), tests_at(plant), pairs)


class Morning:
    """What a person finds who comes in on the second day.

    Parameters
    ----------
    subject : what has happened; it is looked at in the middle of its sizes.

    Raises
    ------
    Refused
        Where there is no steady state, or nothing happens.
    """

    def __init__(self, subject: Subject) -> None:
        self.subject = subject
        self.place = place_of(subject.plant)
        self._data = yesterday_of(subject.plant, subject.seed)
        self._supposed = dict[tuple[tuple[str, float | None], ...], dict[str, Shift]]()
        self.days = self._two_days([None if one is None else one.middle for one in subject.sizes])
        self.predictions = reckoning_at(subject.plant, subject.pairs).predictions
        if not any(self._true):
            raise Refused("no steady state is known of it at this plant")

    def _two_days(self, sizes: Sequence[float | None]) -> Days:
        causes = self.subject.causes
        changes = [Change(cause=cause.id, size=size) for cause, size in zip(causes, sizes, strict=True)]
        try:
            today, _ = overnight(self._data, changes)
            return two_days(self._data, today)
        except InputError as error:
            raise Refused(f"it cannot happen so: {error.text}") from error

    @cached_property
    def shifts(self) -> dict[str, Shift]:
        """Every instrument that somebody would read, on both days."""
        missing = unread(self.subject.plant)
        return {id: one for id, one in _shifts(self.days).items() if id not in missing}

    def clear(self, id: str) -> bool:
        """Whether another look, at the same sizes, would say the same of this reading."""
        one = self.shifts[id]
        if one.moved is None or one.change is None or not one.explained:
            return False
        far = abs(one.change) / one.explained
        return far > CLEAR or far < 1 / CLEAR

    @cached_property
    def sure(self) -> dict[str, Direction]:
        """Which way a reading went, of those of which every look at all ends of the sizes says the same."""
        corners = [self.days, *self._at_ends()]
        found = [
            _shifts(days, read)
            for days in corners
            for read in (None, *(_read(days, seed) for seed in range(1, LOOKS)))
        ]
        ways = {id: {one[id].moved for one in found} for id in self.shifts}
        return {id: self.shifts[id].moved for id, some in ways.items() if len(some) == 1 and None not in some}  # type: ignore[misc]

    def _at_ends(self) -> list[Days]:
        ends = [(None,) if one is None else tuple(dict.fromkeys(one)) for one in self.subject.sizes]
        corners = list(product(*ends))
        try:
            return [self._two_days(corner) for corner in corners if corner != tuple(_middle(self.subject))]
        except Refused as why:
            raise TooWide(str(why)) from why

    def after(self, open_now: Collection[str], observed: dict[str, bool] | None = None) -> Posterior:
        """What may have happened, by the readings that stand open, to a reader of the verdicts."""
        blank = np.array([id not in open_now for id in self.predictions.instruments])
        days = (self.days.today.readings, self.days.yesterday.readings)
        today, yesterday = (np.where(blank, np.nan, row(self.predictions, one)) for one in days)
        known = weigh(self.predictions, today, yesterday, observed)
        chance = known.probability * lift(self.predictions.hypotheses)
        return known._replace(probability=chance / chance.sum(axis=1, keepdims=True))

    def of_groups(self, known: Posterior) -> float:
        """Probability of the true groups. [-]"""
        groups = self.subject.groups
        true = [{cause.group for cause in one.causes} == groups for one in self.predictions.hypotheses]
        return float(known.probability[0] @ np.array(true, dtype=float))

    def of_causes(self, known: Posterior) -> float:
        """Probability of what happened, or of what no reading tells from it. [-]"""
        return float(known.probability[0] @ np.array(self._true, dtype=float))

    @cached_property
    def _true(self) -> list[bool]:
        families = self.subject.families
        return [{family(cause.id) for cause in one.causes} == families for one in self.predictions.hypotheses]

    def suppose(self, guess: Guess) -> dict[str, Shift]:
        """What the instruments would show if this had happened.

        Raises
        ------
        Refused
            Where there is no steady state then.
        """
        if guess.key not in self._supposed:
            after = self._data
            try:
                for cause, size in zip(guess.causes, guess.sizes, strict=True):
                    after = apply_edits(after, cause.edits(resolve_data(after), size))
                self._supposed[guess.key] = _shifts(two_days(self._data, after))
            except InputError as error:
                raise Refused(f"{guess.id} cannot be supposed: {error.text}") from error
        return self._supposed[guess.key]


def _middle(subject: Subject) -> list[float | None]:
    return [None if one is None else one.middle for one in subject.sizes]


def _read(days: Days, seed: int) -> tuple[Shown, Shown]:
    both = days.yesterday, days.today
    plants = [day.settled.plant for day in both]
    drawn = [replace(one, meters=replace(one.meters, seed=instrument_seed(seed))) for one in plants]
    return read_both(drawn, [day.state for day in both])


def _shifts(days: Days, read: tuple[Shown, Shown] | None = None) -> dict[str, Shift]:
    plants = days.yesterday.settled.plant, days.today.settled.plant
    before, after = read or (days.yesterday.readings, days.today.readings)
    return {id: shift(before[id], after.get(id), same_piece(id, *plants)) for id in before}
