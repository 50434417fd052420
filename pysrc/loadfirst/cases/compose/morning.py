"""Both days of what was drawn, and what the evidence engine makes of its readings before there is a case."""

from __future__ import annotations

from collections.abc import Collection
from functools import cached_property

import numpy as np

from loadfirst.cases.compose.refused import Refused
from loadfirst.cases.compose.subject import Subject, tests_at
from loadfirst.cases.happened import overnight, yesterday_of
from loadfirst.cases.weighing import Job, job
from loadfirst.causes.cause import Cause
from loadfirst.days.shift import Shift, shift
from loadfirst.days.two_days import Days, two_days
from loadfirst.errors import InputError
from loadfirst.evidence.suspects import Suspect
from loadfirst.evidence.weigh import Posterior, row, weigh
from loadfirst.instruments.piece import same_piece
from loadfirst.plant.edits import apply_edits

CLEAR = 1.3
"""A reading has moved clearly, or clearly not, where it is so far off what its instrument explains. [-]"""


def job_at(plant: str) -> Job:
    """What every suspect would show at a plant and in its tests: the same for every case there."""
    return job(yesterday_of(plant, 1), tests_at(plant))


class Morning:
    """What a person finds who comes in on the second day.

    Parameters
    ----------
    subject : what has happened.

    Raises
    ------
    Refused
        Where there is no steady state, or nothing happens.
    """

    def __init__(self, subject: Subject) -> None:
        self.subject = subject
        self._data = yesterday_of(subject.plant, subject.seed)
        try:
            today, _ = overnight(self._data, [subject.change])
            self.days = two_days(self._data, today)
        except InputError as error:
            raise Refused(f"it cannot happen so: {error.text}") from error
        self.predictions = job_at(subject.plant).predictions
        known = [one.id for one in self.predictions.hypotheses]
        if subject.cause.id not in known:
            raise Refused("no steady state is known of it at this plant")

    @cached_property
    def shifts(self) -> dict[str, Shift]:
        """Every instrument on both days."""
        return _shifts(self.days)

    def clear(self, id: str) -> bool:
        """Whether another look would say the same of this reading."""
        one = self.shifts[id]
        if one.moved is None or one.change is None or not one.explained:
            return False
        far = abs(one.change) / one.explained
        return far > CLEAR or far < 1 / CLEAR

    def after(self, open_now: Collection[str], observed: dict[str, bool] | None = None) -> Posterior:
        """What may have happened, by the readings that stand open."""
        blank = np.array([id not in open_now for id in self.predictions.instruments])
        days = (self.days.today.readings, self.days.yesterday.readings)
        today, yesterday = (np.where(blank, np.nan, row(self.predictions, one)) for one in days)
        return weigh(self.predictions, today, yesterday, observed)

    def suppose(self, one: Suspect, usual: bool = False) -> dict[str, Shift]:
        """What the instruments would show if this had happened, as large as what is known has it.

        Parameters
        ----------
        usual : as large as it usually is instead.

        Raises
        ------
        Refused
            Where there is no steady state then.
        """
        data, plant = self._data, self.days.yesterday.resolved
        cause: Cause = one.hypothesis.causes[0]
        size = None if usual or cause.size is None else one.fitted[0].best
        try:
            after = apply_edits(data, cause.edits(plant, size))
            return _shifts(two_days(data, after))
        except InputError as error:
            raise Refused(f"{cause.id} cannot be supposed: {error.text}") from error


def _shifts(days: Days) -> dict[str, Shift]:
    plants = days.yesterday.settled.plant, days.today.settled.plant
    before, after = days.yesterday.readings, days.today.readings
    return {id: shift(before[id], after.get(id), same_piece(id, *plants)) for id in before}
