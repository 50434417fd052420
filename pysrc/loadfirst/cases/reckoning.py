"""What every suspect would show on one plant: reckoned little by little, and kept."""

from __future__ import annotations

import json
from collections.abc import Hashable, Iterable
from functools import cached_property, lru_cache
from time import perf_counter
from typing import Any

from loadfirst.cases.case import Check
from loadfirst.cases.proof import Proven
from loadfirst.cases.suppose import right_if
from loadfirst.cases.two_at_once import pairs_of
from loadfirst.causes.catalogue import CAUSES, cause
from loadfirst.days.two_days import flat
from loadfirst.evidence.predict import Predicting, Predictions
from loadfirst.evidence.seen import Test
from loadfirst.physics.law import Array
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data

FEW = 4
"""Sizes of suspects that are solved together at first, until it is known how long they take."""

Pairs = tuple[tuple[str, str], ...]
"""Ids of two causes each."""
Tests = tuple[tuple[str, str, tuple[str, ...]], ...]
"""Of each test: its name, its edits as a text, the instruments read."""


class Reckoning:
    """What every suspect would show on one plant: reckoned in lots, kept once it is done."""

    def __init__(self, yesterday: str, pairs: Pairs, tests: Tests) -> None:
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
            self._judged[named] = right_if(choices, every, proven.days.yesterday)
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
def _kept(yesterday: str, pairs: Pairs, tests: Tests) -> Reckoning:
    return Reckoning(yesterday, pairs, tests)


def reckoning(yesterday: dict[str, Any], checks: Iterable[Check], pairs: Pairs = ()) -> Reckoning:
    """What every suspect would show on a plant, and in the tests among some checks.

    Parameters
    ----------
    yesterday : the plant as plain data; which errors its instruments have says nothing of what they predict.
    checks : those that somebody would do.
    pairs : ids of causes that may have happened both.
    """
    tests = tuple((check.id, json.dumps(flat(check.does)), check.reads) for check in checks if check.does)
    return _kept(json.dumps(apply_edits(yesterday, {"meters.seed": 0})), pairs, tests)


def reckoning_of(proven: Proven) -> Reckoning:
    """The same of a case that holds, with the two causes at once that its verdicts name."""
    allowed = [check for check in proven.case.checks if check.id not in proven.refusals]
    return reckoning(proven.days.yesterday.data, allowed, pairs_of(proven.truth, proven.case.choices))


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
    work = reckoning_of(proven)
    followed = work.predicting.done == work.predicting.of
    if followed:
        work.right_if(proven)
    done, of = work.advance(seconds)
    return done + followed, of + 1
