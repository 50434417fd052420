"""Whether a composed file holds and is fair, in the middle and at every end of its sizes."""

from __future__ import annotations

from loadfirst.cases.bit_by_bit import Pieces, Stage
from loadfirst.cases.case import Case
from loadfirst.cases.compose.refused import Refused, TooWide
from loadfirst.cases.compose.subject import Subject
from loadfirst.cases.draw import at_ends, drawn
from loadfirst.cases.fairness import DRAWS, judging, unfair
from loadfirst.cases.players import SURE, leading
from loadfirst.cases.proof import Proven, prove
from loadfirst.cases.read import decode_case
from loadfirst.cases.weighing import Weighing
from loadfirst.errors import InputError

LEAST_CHECKS = 2
"""That the player needs who is led by information, above the first steps."""
PLAYS = 1
"""Draws of chance that the players play, besides the case's own, in the middle and at each end."""
AT_ENDS = 40
"""Draws of chance at each end of the sizes."""
OTHERS = (2, 30, 444)
"""Other seeds of the case with which it has to hold."""


def judge(text: str, about: Subject) -> Pieces[None]:
    """Prove a file, and play it, in pieces.

    Raises
    ------
    TooWide
        Where it holds with its own seed, and not at an end of its sizes.
    Refused
        Where it does not hold, is not fair or too easy.
    """
    case = decode_case(text, "practice.toml")
    weighing = Weighing(_proven(case, about.seed))
    yield Stage("plays", 0, 1)
    look = weighing.looks([about.seed])
    if weighing.of_choices(weighing.weigh(look, []))[0].max() >= SURE:
        raise Refused("what stands open at first tells all")
    if about.level != "first-steps":  # what is refused most often is asked first
        way = yield from leading(weighing, look, Stage("plays", 0, 1))
        if len(way.checks) < LEAST_CHECKS:
            raise Refused(f"it is too easy: {len(way.checks)} checks are enough")
    yield from _is_fair(weighing, DRAWS, PLAYS)
    yield from _at_ends(case, about)


def _proven(case: Case, seed: int) -> Proven:
    try:
        proven = prove("practice", drawn(case, seed))
    except InputError as error:
        raise Refused(f"it does not hold: {error.text}") from error
    if proven.refusals:
        raise Refused(f"a test would do harm today: {', '.join(proven.refusals.values())}")
    return proven


def _is_fair(weighing: Weighing, draws: int, plays: int) -> Pieces[None]:
    found = yield from judging(weighing, draws, plays)
    for fault in unfair(found, weighing):
        raise Refused(f"it is not fair: {fault.text}")


def _at_ends(case: Case, about: Subject) -> Pieces[None]:
    try:
        for seed in OTHERS:
            _proven(case, seed)
            yield Stage("plays", 0, 1)
        if any(change.between for change in case.today):
            for end in at_ends(case):
                yield from _is_fair(Weighing(_proven(end, about.seed)), AT_ENDS, PLAYS)
    except Refused as why:
        raise TooWide(f"at an end of its sizes: {why}") from why
