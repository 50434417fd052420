"""Many looks at one case: what its instruments and observations would show for other draws of chance.

The plants of both days are solved once; only the instruments' own errors and
the luck of whoever looks are drawn again.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import NamedTuple

import numpy as np
from msgspec.structs import replace

from loadfirst.cases.case import Check
from loadfirst.cases.draw import instrument_seed, shows
from loadfirst.cases.happened import TEST_LOOKS, Happened
from loadfirst.cases.scope import hits
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.days.two_days import Days, Shown, read_both
from loadfirst.evidence.predict import Predictions
from loadfirst.evidence.weigh import row
from loadfirst.physics.law import Array, Flags


class Looks(NamedTuple):
    """N looks at a case.

    Attributes
    ----------
    yesterday, today : ndarray (N, I)
        Readings of all instruments of the predictions. [SI]
    showed : by id of a check that observes, ndarray (N,) of bool
        Whether there was something to be seen.
    """

    yesterday: Array
    today: Array
    showed: dict[str, Flags]

    def only(self, index: slice | Sequence[int]) -> Looks:
        """Some of them."""
        return Looks(
            self.yesterday[index], self.today[index], {id: one[index] for id, one in self.showed.items()}
        )


def looks(what: Happened, predictions: Predictions, seeds: Sequence[int]) -> Looks:
    """Look at a case with each of the seeds.

    Parameters
    ----------
    what : both days, solved.
    predictions : of yesterday's plant; they say in which order instruments stand.
    seeds : from 1.
    """
    pairs = [both(what, instrument_seed(seed), predictions.instruments) for seed in seeds]
    yesterday, today = (np.concatenate([row(predictions, pair[day]) for pair in pairs]) for day in (0, 1))
    chances = {check.id: _chance(what, check) for check in what.case.checks if check.observes is not None}
    showed = {id: np.array([shows(seed, id, chance) for seed in seeds]) for id, chance in chances.items()}
    return Looks(yesterday, today, showed)


def both(what: Happened, seed: int, known: Collection[str]) -> tuple[Shown, Shown]:
    """Readings of both days with the instruments' errors of a seed.

    Parameters
    ----------
    what : both days, solved.
    seed : of the instruments.
    known : what tests read and is wanted too, as the evidence engine calls it: ``shut-in:gauge-discharge``.
    """
    yesterday, today = _read(what.days, seed)
    for number, check in enumerate(what.case.checks):
        if check.does:
            tested = _read(what.tests[check.id], seed, TEST_LOOKS + 2 * number, (yesterday, today))
            for shown, more in zip((yesterday, today), tested, strict=True):
                shown |= {name: more[id] for id in check.reads if (name := f"{check.id}:{id}") in known}
    return yesterday, today


def _read(
    days: Days, seed: int, first_look: int = 0, shown: tuple[Shown, Shown] | None = None
) -> tuple[Shown, Shown]:
    """Both days with another seed."""
    both = days.yesterday, days.today
    plants = [day.settled.plant for day in both]
    drawn = [replace(plant, meters=replace(plant.meters, seed=seed)) for plant in plants]
    return read_both(drawn, [day.state for day in both], first_look, shown)


def _chance(what: Happened, check: Check) -> float:
    observation = OBSERVATIONS[check.observes or ""]
    return observation.hit if hits(what.case, check) else observation.false_alarm
