"""Whether the claims of a case hold for other seeds too: at every end of its sizes, in many draws of chance.

`prove` tests a case as one seed draws it. An author is told here what a learner with another seed would meet.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from loadfirst.cases.bit_by_bit import Pieces, Stage
from loadfirst.cases.case import Case
from loadfirst.cases.claims import MOVES
from loadfirst.cases.direction_words import contradictions
from loadfirst.cases.draw import at_ends, instrument_seed
from loadfirst.cases.happened import Happened, happened
from loadfirst.cases.looks import both
from loadfirst.cases.proof import Proven, one_choice_is_right
from loadfirst.cases.scope import texts
from loadfirst.cases.truth import right_choice, truth_of
from loadfirst.causes.catalogue import cause
from loadfirst.days.shift import Shift, shift
from loadfirst.errors import InputError
from loadfirst.instruments.piece import same_piece

DRAWS = 100
"""Draws of the instruments' errors at each end of the sizes."""
LOT = 20
"""Draws in one piece."""
LEAST = 0.8
"""Share of the draws at an end in which all claims have to hold. [-]

A reading that did not move keeps within its scatter in 95 of 100 draws or more, so that a claim that holds
loses a few draws; who meets one draws again. One that fails in more than one of five does not hold there.
"""


class Line(NamedTuple):
    """A line that claims something: its place, what stands there, the way in which it is mended."""

    where: str
    says: str
    mend: str


class Held(NamedTuple):
    """What other draws say of the claims.

    Attributes
    ----------
    share : of the draws in which all of them hold, at the end of the sizes at which it is least. [-]
    faults : lines that hold too seldom, and a verdict that is another one at an end of the sizes.
    """

    share: float
    faults: list[InputError]


class _End(NamedTuple):
    """How often each line failed at one end of the sizes."""

    case: Case
    failed: Counter[Line]
    broken: int


def holding(proven: Proven, draws: int = DRAWS) -> Pieces[Held]:
    """Test the claims at each end of the sizes, in pieces.

    Parameters
    ----------
    proven : the case, as any seed draws it.
    draws : of the instruments' errors, at each end.
    """
    ends, faults = list[_End](), list[InputError]()
    corners = at_ends(proven.case)
    for number, case in enumerate(corners):
        yield Stage("claims", number, len(corners))
        try:
            what = happened(case)
            _same_verdict(proven, what)
        except InputError as fault:
            faults.append(_at(fault, case))
            continue
        ends.append((yield from _tried(what, draws)))
    faults += _too_seldom(ends, draws)
    return Held(min((1 - end.broken / draws for end in ends), default=0.0), faults)


def _same_verdict(proven: Proven, what: Happened) -> None:
    """The verdict that is right with one seed is right with another, so that its reply fits."""
    right = right_choice(proven.case, proven.truth).id
    truth = truth_of(what.case, what.days)
    one_choice_is_right(what.case, truth)
    now = right_choice(what.case, truth).id
    if now != right:
        raise InputError(
            "choices", now, f"wrong whatever the size, as {right} is right", "Narrow the range.", rule="truth"
        )


def _tried(what: Happened, draws: int) -> Pieces[_End]:
    failed, broken = Counter[Line](), 0
    for seed in range(1, draws + 1):
        lines = set(_failing(what, _shifts(what, instrument_seed(seed))))
        failed.update(lines)
        broken += bool(lines)
        if seed % LOT == 0:
            yield Stage("claims", seed, draws)
    return _End(what.case, failed, broken)


def _shifts(what: Happened, seed: int) -> dict[str, Shift]:
    """Each instrument on both days, those of tests too, with errors of that seed."""
    yesterday, today = both(what, seed, what.tested_readings)
    plants = what.days.yesterday.settled.plant, what.days.today.settled.plant
    return {
        id: shift(yesterday.get(id), today.get(id), same_piece(id.rpartition(":")[2], *plants))
        for id in {**yesterday, **today}
    }


def _failing(what: Happened, shifts: dict[str, Shift]) -> Iterator[Line]:
    for id, claim in what.case.proof.items():
        if shifts[id].moved != MOVES[claim]:
            yield Line(f"proof.{id}", claim, "Narrow the range, or claim nothing of this reading.")
    for text in texts(what.case):
        for found in contradictions(text.text, lambda id: shifts[id].change if id in shifts else None):
            yield Line(
                text.where, found.passage, f"Tell both readings without {found.word!r}, or narrow the range."
            )


def _too_seldom(ends: list[_End], draws: int) -> Iterator[InputError]:
    """Every line that fails too often, with the end at which it fails most; if none does alone, the worst."""
    worst = dict[Line, tuple[int, Case]]()
    for end in ends:
        if end.broken <= (1 - LEAST) * draws:
            continue
        for line, times in end.failed.most_common():
            alone = times > (1 - LEAST) * draws or line == end.failed.most_common(1)[0][0]
            if alone and times > worst.get(line, (0, end.case))[0]:
                worst[line] = times, end.case
    for line, (times, case) in worst.items():
        share, sizes = f"{1 - times / draws:.0%}", _sizes(case)
        yield InputError(
            line.where, line.says,
            f"what holds in {LEAST:.0%} of the draws, whatever the size; it does in {share}{_with(sizes)}",
            line.mend, rule="proof", of="draws", share=share, sizes=sizes,
        )  # fmt: skip


def _at(fault: InputError, case: Case) -> InputError:
    """The same fault, with the sizes at which it is one."""
    hint = f"{fault.hint} So it is{_with(_sizes(case))}.".strip()
    return InputError(fault.where, fault.got, fault.allowed, hint, rule=fault.rule, **fault.facts)


def _sizes(case: Case) -> str:
    """What was drawn between two sizes, or given: `worn 11 %`."""
    sized = ((change.size, cause(change.cause)) for change in case.today)
    return " and ".join(
        f"{one.id} {size:.4g} {one.size.unit}".removesuffix(" -")
        for size, one in sized
        if size is not None and one.size
    )


def _with(sizes: str) -> str:
    return f" with {sizes}" if sizes else ""
