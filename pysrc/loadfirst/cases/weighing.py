"""What the evidence engine makes of a play: how likely each thing that may have happened is, step by step."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from functools import cached_property

import numpy as np

from loadfirst.cases.case import Check
from loadfirst.cases.looks import Looks, looks
from loadfirst.cases.proof import Proven
from loadfirst.cases.reckoning import reckoning_of
from loadfirst.cases.scope import seen_at_first
from loadfirst.cases.truth import family
from loadfirst.cases.two_at_once import lift
from loadfirst.evidence.hypothesis import Hypothesis
from loadfirst.evidence.weigh import Posterior, weigh
from loadfirst.evidence.worth import worth
from loadfirst.physics.law import Array

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
        self.predictions = reckoning_of(proven).predictions

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
        return reckoning_of(self.proven).right_if(self.proven)

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
