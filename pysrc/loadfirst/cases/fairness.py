"""Whether a case is fair: the truth can be found from what is on offer, and nothing else explains it as well.

Played with many draws of chance, by the evidence engine. What is found wrong is
said with its place and a remedy; a case whose claims hold may still be unfair.
"""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

import numpy as np
from msgspec import Struct

from loadfirst.cases.bit_by_bit import Pieces, Stage, at_once
from loadfirst.cases.looks import Looks
from loadfirst.cases.players import HABITS, Habit, earned, leading, plays
from loadfirst.cases.safety import DISMANTLES
from loadfirst.cases.truth import right_choice
from loadfirst.cases.weighing import Weighing
from loadfirst.causes.catalogue import cause
from loadfirst.errors import InputError
from loadfirst.physics.law import Array

DRAWS = 100
"""Draws of chance that the truth has to be found in."""
LOT = 10
"""Draws weighed in one piece."""
PLAYS = 12
"""Draws that every player plays; the led one takes its time."""
ENOUGH = 0.9
"""Median probability of the truth that makes it found. [-]"""
RIVAL = 0.5
"""Of the right verdict's probability: a wrong one with as much is a rival. [-]"""

DECIDED = 0.5
"""Least share of the led player's verdicts that are right. [-]

That player is content with less than certainty, and so is wrong now and then. Where it is more often than
not, looking does not pay. The page's three plays tell no finer.
"""


class Fairness(Struct, frozen=True):
    """What many draws of a case say.

    Attributes
    ----------
    group, cause : median probability of the true groups, and of the true causes, after all checks but
        those that take the pump apart. [-]
    told : whether something on offer shows the true cause itself, so that it has to be found too.
    right : median probability of the right verdict then. [-]
    rivals : wrong verdicts, by id, with their median probability then. [-]
    checks, cost : median number and price of the led player's checks. [-], [min]
    decided : share of the led player's verdicts that are right. [-]
    led : mean points of the led player.
    habits : mean points of the players of fixed habits.
    """

    group: float
    cause: float
    told: bool
    right: float
    rivals: dict[str, float]
    checks: float
    cost: float
    decided: float
    led: float
    habits: dict[Habit, float]


def fairness(weighing: Weighing, draws: int = DRAWS, plays_each: int = PLAYS) -> Fairness:
    """Play a case many times."""
    return at_once(judging(weighing, draws, plays_each))


def judging(weighing: Weighing, draws: int = DRAWS, plays_each: int = PLAYS) -> Pieces[Fairness]:
    """`fairness` in pieces: lots of draws, then plays."""
    proven = weighing.proven
    case = proven.case
    group, found, rivals = yield from _medians(weighing, draws)
    true = right_choice(case, proven.truth)
    right = rivals.pop(true.id)
    looked = [weighing.looks([seed]) for seed in range(1, plays_each + 1)]
    ways = []
    for number, look in enumerate(looked):
        ways.append((yield from leading(weighing, look, Stage("plays", number, plays_each))))
    best = median(way.cost for way in ways)
    habits = dict[Habit, float]()
    for habit in HABITS:
        habits[habit] = _habit(habit, weighing, looked, best)
        yield Stage("plays", plays_each, plays_each)
    return Fairness(
        group=group, cause=found, told=_told(weighing), right=right, rivals=rivals,
        checks=median(len(way.checks) for way in ways), cost=best,
        decided=sum(way.choice is true for way in ways) / len(ways),
        led=_mean(earned(weighing, look, way, best).points for look, way in zip(looked, ways, strict=True)),
        habits=habits,
    )  # fmt: skip


def _medians(weighing: Weighing, draws: int) -> Pieces[tuple[float, float, dict[str, float]]]:
    """How likely the true groups, the true causes and each verdict are, in the median of the draws; more than
    one verdict may be right. [-]"""
    case = weighing.proven.case
    cheap = [check.id for check in case.checks if check.observes not in DISMANTLES]
    parts: tuple[list[Array], ...] = ([], [], [])
    for first in range(1, draws + 1, LOT):
        last = min(first + LOT - 1, draws)
        posterior = weighing.weigh(weighing.looks(range(first, last + 1)), cheap)
        for part, one in zip(
            parts, (*weighing.of_truth(posterior), weighing.of_choices(posterior)), strict=True
        ):
            part.append(one)
        yield Stage("chance", last, draws)
    group, found, choices = (np.median(np.concatenate(part), axis=0) for part in parts)
    named = zip((one.id for one in case.choices), choices, strict=True)
    return float(group), float(found), {id: float(chance) for id, chance in named}


def _habit(habit: Habit, weighing: Weighing, looked: list[Looks], best: float) -> float:
    played = [plays(habit, weighing, look, seed) for seed, look in enumerate(looked, start=1)]
    return _mean(earned(weighing, look, one, best).points for look, one in zip(looked, played, strict=True))


def _mean(points: Iterator[float]) -> float:
    return float(np.mean(list(points)))


def _told(weighing: Weighing) -> bool:
    proven = weighing.proven
    offered = {check.observes for check in proven.case.checks if check.observes not in DISMANTLES}
    return all(offered.intersection(cause(id).shown_by) for id in proven.truth.causes)


def unfair(found: Fairness, weighing: Weighing) -> Iterator[InputError]:
    """What is wrong with a case that was played, each with a remedy."""
    proven = weighing.proven
    groups = " and ".join(proven.truth.groups)
    if found.group < ENOUGH:
        yield InputError(
            "checks", f"{found.group:.2f}", f"such that {groups} is found with a probability of {ENOUGH}",
            "Offer a reading or an observation that parts it from what else fits, or make the cause larger.",
            rule="fair", of="group",
        )  # fmt: skip
    if found.told and found.cause < ENOUGH:
        yield InputError(
            "checks", f"{found.cause:.2f}",
            f"such that {' and '.join(proven.truth.causes)} is found with a probability of {ENOUGH}",
            "The observation that shows it errs too often beside these suspects: offer a second one.",
            rule="fair", of="cause",
        )  # fmt: skip
    if found.checks < 1:
        yield InputError(
            "shown.at_first", f"{found.checks:g}", "such that at least one check is needed",
            "Story and what stands open at first tell all: show less, or tell another reading.",
            rule="fair", of="open",
        )  # fmt: skip
    if found.decided < DECIDED:
        yield InputError(
            "checks", f"{found.decided:.2f}",
            f"such that who takes what tells most for its cost decides rightly in {DECIDED:.0%} of the plays",
            "What is cheap speaks for another verdict: make dearer what misleads, or cheaper what tells.",
            rule="fair", of="led",
        )  # fmt: skip
    for number, choice in enumerate(proven.case.choices):
        chance = found.rivals.get(choice.id, 0.0)
        if chance > RIVAL * found.right:
            yield InputError(
                f"choices[{number}]", choice.id, "less well borne out than the right verdict",
                f"It keeps a probability of {chance:.2f}: offer what speaks against it.",
                rule="fair", of="rival", chance=f"{chance:.2f}",
            )  # fmt: skip
