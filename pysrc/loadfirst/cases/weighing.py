"""What the evidence engine makes of a play: how likely each thing that may have happened is, step by step."""

from __future__ import annotations

import json
from collections.abc import Collection, Hashable, Iterable, Sequence
from functools import cached_property, lru_cache
from time import perf_counter
from typing import Any

import numpy as np

from loadfirst.cases.case import Check
from loadfirst.cases.looks import Looks, looks
from loadfirst.cases.proof import Proven
from loadfirst.cases.scope import seen_at_first
from loadfirst.cases.suppose import right_if
from loadfirst.cases.truth import family
from loadfirst.cases.two_at_once import lift, pairs_of
from loadfirst.causes.catalogue import CAUSES, cause
from loadfirst.days.two_days import flat
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.evidence.predict import Predicting, Predictions
from loadfirst.evidence.seen import Test
from loadfirst.evidence.weigh import Posterior, weigh
from loadfirst.evidence.worth import worth
from loadfirst.physics.law import Array
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data

FEW = 4
"""Sizes of suspects that are solved together at first, until it is known how long they take."""
ATTENTION = 2.0
"""What a check costs at least. Own choice. [min]"""


class Weighing:
    """A case that holds, and what every suspect would have shown.

    Parameters
    ----------
    proven : the case.
    """

    def __init__(self, proven: Proven) -> None:
        self.proven = proven
        self.predictions = _job(proven).predictions

    def looks(self, seeds: Iterable[int]) -> Looks:
        """Looks at the case with each of the seeds."""
        return looks(self.proven.happened, self.predictions, list(seeds))

    def weigh(self, seen: Looks, taken: Collection[str]) -> Posterior:
        """What the story, what stands open at first and the checks taken say, for each look.

        Parameters
        ----------
        seen : N looks.
        taken : ids of checks.
        """
        case = self.proven.case
        checks = [
            check for check in case.checks if check.id in taken and check.id not in self.proven.refusals
        ]
        open_now = {*seen_at_first(case), *(id for check in checks for id in _asks(check))}
        blank = np.array([id not in open_now for id in self.predictions.instruments])
        today, yesterday = (np.where(blank, np.nan, day) for day in (seen.today, seen.yesterday))
        observed = {check.observes: seen.showed[check.id] for check in checks if check.observes is not None}
        return self._lifted(weigh(self.predictions, today, yesterday, observed))

    def _lifted(self, at_a_plant: Posterior) -> Posterior:
        """The same to a reader of the verdicts, who knows which two things may have happened at once."""
        chance = at_a_plant.probability * self._lift
        return at_a_plant._replace(probability=chance / chance.sum(axis=1, keepdims=True))

    def of_truth(self, posterior: Posterior) -> tuple[Array, Array]:
        """Probability of the true groups, and of the true causes or what cannot be told from them, (N,)."""
        truth = self.proven.truth
        families = {family(id) for id in truth.causes}
        groups = [{one.group for one in each.causes} == set(truth.groups) for each in self._all]
        causes = [{family(one.id) for one in each.causes} == families for each in self._all]
        chance = posterior.probability
        return chance @ np.array(groups, dtype=float), chance @ np.array(causes, dtype=float)

    def of_groups(self, posterior: Posterior, groups: Collection[str]) -> Array:
        """Probability that something happened in each of these groups, whatever else did, (N,)."""
        among = [{one.group for one in each.causes} >= set(groups) for each in self._all]
        return np.asarray(posterior.probability @ np.array(among, dtype=float))

    def of_choices(self, posterior: Posterior) -> Array:
        """Probability that each verdict on offer is right, (N, C)."""
        return np.asarray(posterior.probability @ self.right_if)

    @property
    def right_if(self) -> Array:
        """Which verdicts would be right if another suspect had happened, (H, C)."""
        return _job(self.proven).right_if(self.proven)

    @property
    def allowed(self) -> list[Check]:
        """Checks on offer that somebody would do."""
        return [check for check in self.proven.case.checks if check.id not in self.proven.refusals]

    @cached_property
    def nothing_read(self) -> Posterior:
        """What may have happened, before anything is read."""
        return self._lifted(weigh(self.predictions, np.full((1, len(self.predictions.instruments)), np.nan)))

    def told(self, posterior: Posterior, checks: Sequence[Check]) -> dict[str, float]:
        """What each check is expected to tell of the cause, for the first look; each reading alone. [bit]"""
        asked = {id for check in checks for id in _asks(check)}
        bits = {one.check: one.cause for one in worth(posterior, sorted(asked))}
        return {check.id: sum(bits[id] for id in _asks(check)) for check in checks}

    @cached_property
    def _lift(self) -> Array:
        return lift(self._all)

    @staticmethod
    def cost(check: Check) -> float:
        """Time and money of a check, and the attention that it takes at least. [min]"""
        return max(check.minutes + check.money, ATTENTION)

    @property
    def _all(self) -> tuple[Hypothesis, ...]:
        return self.predictions.hypotheses


def _asks(check: Check) -> tuple[str, ...]:
    """What a check tells of, as the evidence engine calls it."""
    if check.observes:
        return (check.observes,)
    return tuple(f"{check.id}:{id}" if check.does else id for id in check.reads)


Tests = tuple[tuple[str, str, tuple[str, ...]], ...]
"""Of each test: its name, its edits as a text, the instruments read."""


class Job:
    """What every suspect would show on one plant: reckoned in lots, kept once it is done."""

    def __init__(self, yesterday: str, pairs: tuple[tuple[str, str], ...], tests: Tests) -> None:
        self._pairs = [(cause(first), cause(second)) for first, second in pairs]
        made = [Test(name, json.loads(edits), reads) for name, edits, reads in tests]
        self.predicting: Predicting = (
            _kept(yesterday, (), tests).predicting  # single causes are the same, whatever happened together
            if pairs
            else Predicting(resolve_data(json.loads(yesterday)), CAUSES, made)
        )
        self._judged = dict[Hashable, Array]()
        self._most = FEW

    @cached_property
    def predictions(self) -> Predictions:
        return self.predicting.finish(self._pairs)

    def lay_out(self) -> None:
        """Do what is left to be done; that takes a while, so that it is a step of its own."""
        _ = self.predictions

    def right_if(self, proven: Proven) -> Array:
        """Of each suspect, which of the verdicts it would make right: as of `Weighing`."""
        choices = proven.case.choices
        named = tuple((choice.blames, choice.load) for choice in choices)
        if named not in self._judged:
            every = self.predictions.hypotheses
            self._judged[named] = right_if(choices, every, proven.days.yesterday.data)
        return self._judged[named]

    def advance(self, seconds: float) -> tuple[int, int]:
        """Go on for about so long [s]. Returns how many suspects are followed, and how many there are."""
        work, began = self.predicting, perf_counter()
        work.step(self._most)
        took = perf_counter() - began
        if took < seconds / 2 and work.done < work.of:
            self._most *= 2  # many together take less time each
        elif took > seconds:
            self._most = max(self._most // 2, 1)
        return work.done, work.of


@lru_cache(maxsize=8)
def _kept(yesterday: str, pairs: tuple[tuple[str, str], ...], tests: Tests) -> Job:
    return Job(yesterday, pairs, tests)


def job(yesterday: dict[str, Any], checks: Iterable[Check], pairs: tuple[tuple[str, str], ...] = ()) -> Job:
    """What every suspect would show on a plant, and in the tests among some checks.

    Parameters
    ----------
    yesterday : the plant as plain data; which errors its instruments have says nothing of what they predict.
    checks : those that somebody would do.
    pairs : ids of causes that may have happened both.
    """
    tests = tuple((check.id, json.dumps(flat(check.does)), check.reads) for check in checks if check.does)
    return _kept(json.dumps(apply_edits(yesterday, {"meters.seed": 0})), pairs, tests)


def _job(proven: Proven) -> Job:
    allowed = [check for check in proven.case.checks if check.id not in proven.refusals]
    return job(proven.days.yesterday.data, allowed, pairs_of(proven.truth, proven.case.choices))


def prepare(proven: Proven, seconds: float) -> tuple[int, int]:
    """Reckon a little more of what a `Weighing` of this case needs.

    Parameters
    ----------
    proven : the case.
    seconds : for about how long. [s]

    Returns
    -------
    How many have been followed by now, and how many there are; which verdicts they would make right counts
    as one more.
    """
    work = _job(proven)
    followed = work.predicting.done == work.predicting.of
    if followed:
        work.right_if(proven)
    done, of = work.advance(seconds)
    return done + followed, of + 1
