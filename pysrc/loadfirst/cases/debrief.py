"""After the verdict: what each check told, what still fitted, and what the play is worth.

Told in bits, and in how likely each suspect was after each step, by the
evidence engine. Everything is reckoned with what this learner was shown.
"""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from loadfirst.cases.bit_by_bit import Pieces, Stage, at_once
from loadfirst.cases.moves import Play
from loadfirst.cases.players import Played, earned, leading, telling
from loadfirst.cases.score import Score
from loadfirst.cases.weighing import Weighing
from loadfirst.evidence.suspects import Suspect, suspects
from loadfirst.evidence.weigh import Posterior

STANDING = 0.03
"""Probability from which a suspect is still named. Own choice. [-]"""
NAMED = 5
"""Suspects named at most, after each step."""
LARGE = 3.0
"""Standard deviations from which a reading speaks against a verdict. Common practice."""


class Standing(Struct, frozen=True):
    """A suspect that still fits: its causes, their groups, and how likely it is. [-]"""

    causes: tuple[str, ...]
    groups: tuple[str, ...]
    probability: float


class Told(Struct, frozen=True):
    """What one step told.

    Attributes
    ----------
    check : its id; None for what stands open before the first.
    bits : by which the doubt about the cause shrank; below 0 where it grew. [bit]
    truth : probability of the true groups after it. [-]
    standing : suspects that fit then, the likeliest first.
    """

    check: str | None
    bits: float
    truth: float
    standing: list[Standing]


class Misfit(Struct, frozen=True):
    """A reading that the verdict's best suspect does not explain. SI.

    Attributes
    ----------
    reading, measured, predicted : which, what it showed, and what it should have.
    off : by how many standard deviations.
    """

    reading: str
    measured: float
    predicted: float
    off: float


class Debrief(Struct, frozen=True):
    """What a play is worth.

    Attributes
    ----------
    steps : what stood open at first, then each check.
    chosen : how likely the learner's verdict is, from what had been seen. [-]
    misfits : what speaks against it, the strongest first.
    next : the check left that would have told most for its cost, and how much. [bit]
    way : checks of a player who always takes what tells most for its cost, and their cost. [min]
    score : points.
    """

    steps: list[Told]
    chosen: float
    misfits: list[Misfit]
    next: str | None
    next_bits: float
    way: list[str]
    way_cost: float
    score: Score


def debrief(weighing: Weighing, play: Play) -> Debrief:
    """Weigh a play that came to its verdict."""
    return at_once(debriefing(weighing, play))


def debriefing(weighing: Weighing, play: Play) -> Pieces[Debrief]:
    """`debrief` in pieces: the play's own stages, what it has left out, then the best way."""
    assert play.verdict is not None and play.action is not None
    case = weighing.proven.case
    look = weighing.looks([case.seed])
    taken = [check.id for check in play.checks]
    stages = [weighing.weigh(look, taken[:count]) for count in range(len(taken) + 1)]
    said = Stage("plays", 0, 1)
    yield said
    left, bits = yield from telling(weighing, stages[-1], taken, said)
    best = yield from leading(weighing, look, said)
    mine = Played(tuple(play.checks), play.verdict, play.action)
    number = case.choices.index(play.verdict)
    return Debrief(
        steps=_steps(weighing, stages, taken),
        chosen=float(weighing.of_choices(stages[-1])[0, number]),
        misfits=_misfits(weighing, stages[-1], number),
        next=left.id if left else None, next_bits=bits,
        way=[check.id for check in best.checks], way_cost=best.cost,
        score=earned(weighing, look, mine, best.cost),
    )  # fmt: skip


def _steps(weighing: Weighing, stages: list[Posterior], taken: list[str]) -> list[Told]:
    doubts = [_doubt(weighing.nothing_read), *(_doubt(stage) for stage in stages)]
    return [
        Told(id, doubts[number] - doubts[number + 1], float(weighing.of_truth(stage)[0][0]), standing(stage))
        for number, (id, stage) in enumerate(zip([None, *taken], stages, strict=True))
    ]


def _doubt(posterior: Posterior) -> float:
    """Entropy of what may have happened. [bit]"""
    chance = posterior.probability[0]
    return float(-(chance * np.log2(np.maximum(chance, 1e-300))).sum())


def standing(posterior: Posterior) -> list[Standing]:
    """Suspects that still fit, the likeliest first."""
    chance = posterior.probability[0]
    order = [int(number) for number in np.argsort(-chance, kind="stable")[:NAMED]]
    every = posterior.predictions.hypotheses
    return [
        Standing(
            tuple(cause.id for cause in every[number].causes),
            tuple(cause.group for cause in every[number].causes), float(chance[number]),
        )
        for number in order
        if chance[number] >= STANDING
    ]  # fmt: skip


def _misfits(weighing: Weighing, posterior: Posterior, number: int) -> list[Misfit]:
    """Against the likeliest suspect that the verdict may mean; none where it means none here."""
    meant = {
        one.id
        for one, right in zip(weighing.predictions.hypotheses, weighing.right_if[:, number], strict=True)
        if right
    }
    best: Suspect | None = next((one for one in suspects(posterior) if one.hypothesis.id in meant), None)
    found = [
        Misfit(one.id, one.measured, one.predicted, abs(one.off))
        for one in (best.readings if best else ())
        if one.off is not None and one.predicted is not None and abs(one.off) > LARGE
    ]
    return sorted(found, key=lambda one: -one.off)
