"""Players of fixed habits, and one that is led by information: what each of them would earn at a case.

A collection in which a habit earns nearly as much as looking does teaches the habit.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Literal, NamedTuple, get_args

from loadfirst.cases.bit_by_bit import Pieces, Stage, at_once
from loadfirst.cases.case import Check, Choice
from loadfirst.cases.looks import Looks
from loadfirst.cases.safety import DISMANTLES, harmful
from loadfirst.cases.score import Score, score
from loadfirst.cases.truth import LOAD_GROUPS, groups_of, rightness
from loadfirst.cases.weighing import Weighing
from loadfirst.causes.group import Group
from loadfirst.causes.remedy import GROUPS as USUAL
from loadfirst.causes.remedy import Action, fitting, judge
from loadfirst.evidence.weigh import Posterior
from loadfirst.instruments.generator import bits, stream
from loadfirst.physics.law import Array

SURE = 0.9
"""Probability of a verdict from which the led player decides. [-]"""
LOT = 3
"""Checks whose information is reckoned in one piece."""
LEAST = 0.02
"""Information that is still worth a check. [bit]"""
Habit = Literal["blames-load", "dismantles", "contradicts", "checks-all", "guesses"]
HABITS: tuple[Habit, ...] = get_args(Habit)


class Played(NamedTuple):
    """One play: the checks taken, verdict and action."""

    checks: tuple[Check, ...]
    choice: Choice
    action: Action

    @property
    def cost(self) -> float:
        """Time and money of the checks. [min]"""
        return sum(check.minutes + check.money for check in self.checks)


def led(weighing: Weighing, look: Looks) -> Played:
    """Take what tells most for its cost, until one verdict is sure or nothing tells more.

    Parameters
    ----------
    look : one look at the case.
    """
    return at_once(leading(weighing, look, Stage("plays", 0, 1)))


def leading(weighing: Weighing, look: Looks, stage: Stage) -> Pieces[Played]:
    """`led`, some of the checks left a piece; `stage` is what is said between them."""
    taken = list[Check]()
    while True:
        ids = [check.id for check in taken]
        posterior = weighing.weigh(look, ids)
        if sure(weighing, posterior):
            break
        best, bits = yield from telling(weighing, posterior, ids, stage)
        if best is None or bits < LEAST:
            break
        taken.append(best)
    return Played(tuple(taken), *_decided(weighing, weighing.of_choices(posterior)[0], posterior))


def sure(weighing: Weighing, posterior: Posterior) -> bool:
    """Whether one verdict is likely enough to decide."""
    return bool(weighing.of_choices(posterior)[0].max() >= SURE)


def tells_most(
    weighing: Weighing, posterior: Posterior, taken: Collection[str]
) -> tuple[Check | None, float]:
    """The check left that tells most for its cost, and how much; None where none is left. [bit]"""
    return at_once(telling(weighing, posterior, taken, Stage("plays", 0, 1)))


def telling(
    weighing: Weighing, posterior: Posterior, taken: Collection[str], stage: Stage
) -> Pieces[tuple[Check | None, float]]:
    """`tells_most` in pieces; `stage` is what is said between them."""
    left = [check for check in weighing.allowed if check.id not in taken]
    if not left:
        return None, 0.0
    told = dict[str, float]()
    for at in range(0, len(left), LOT):
        told |= weighing.told(posterior, left[at : at + LOT])
        yield stage
    best = max(left, key=lambda check: told[check.id] / weighing.cost(check))
    return best, told[best.id]


def _decided(weighing: Weighing, of_choices: Array, posterior: Posterior) -> tuple[Choice, Action]:
    """The likeliest verdict, and what helps against the likeliest thing that it may mean."""
    choice = weighing.proven.case.choices[int(of_choices.argmax())]
    chance = posterior.probability[0] * weighing.right_if[:, int(of_choices.argmax())]
    likeliest = weighing.predictions.hypotheses[int(chance.argmax())]
    harm = harmful(weighing.proven.days.today)
    actions = [action for one in likeliest.causes for action in fitting(one.id)]
    return choice, next((action for action in actions if not (harm and action == "leave")), "stop")


def plays(habit: Habit, weighing: Weighing, look: Looks, seed: int) -> Played:
    """What somebody of a fixed habit does."""
    case, allowed = weighing.proven.case, weighing.allowed
    if habit == "blames-load":
        return _blames(case.choices, "discharge-side", (), "leave")
    if habit == "dismantles":
        opened = tuple(check for check in allowed if check.observes in DISMANTLES)
        return _blames(case.choices, "machine", opened, "overhaul")
    if habit == "contradicts":
        other: Group = "machine" if case.teller in LOAD_GROUPS | {"nothing"} else "discharge-side"
        return _blames(case.choices, other, (), USUAL[other][0])
    if habit == "checks-all":
        posterior = weighing.weigh(look, [check.id for check in allowed])
        return Played(tuple(allowed), *_decided(weighing, weighing.of_choices(posterior)[0], posterior))
    state = stream(seed, "guesses", case.title)
    actions: tuple[Action, ...] = get_args(Action)
    some = tuple(check for number, check in enumerate(allowed) if bits(state, number) % 2)
    return Played(
        some, case.choices[bits(state, 90) % len(case.choices)], actions[bits(state, 91) % len(actions)]
    )


def _blames(choices: tuple[Choice, ...], group: Group, checks: tuple[Check, ...], action: Action) -> Played:
    """The first verdict that blames a group; the first of all where none does."""
    found = next((choice for choice in choices if groups_of(choice) == {group}), choices[0])
    return Played(checks, found, action)


def earned(weighing: Weighing, look: Looks, played: Played, best: float) -> Score:
    """The points of a play; `best` is what the led player spends. [min]"""
    proven = weighing.proven
    right = rightness(played.choice, proven.truth)
    posterior = weighing.weigh(look, [check.id for check in played.checks])
    if right == "part":  # the rest need not have been seen
        believed = weighing.of_groups(posterior, groups_of(played.choice))
    else:
        believed, _ = weighing.of_truth(posterior)
    judged = judge(played.action, proven.truth.causes, harmful(proven.days.today))
    return score(right, judged.outcome, float(believed[0]), played.cost, best)
