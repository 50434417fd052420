"""What `[proof]` claims of the readings, beside what is computed."""

from __future__ import annotations

from collections.abc import Iterator

from loadfirst.cases.happened import Happened
from loadfirst.cases.numbers import numbers
from loadfirst.cases.proof_hints import small_per_cent
from loadfirst.days.shift import Shift
from loadfirst.errors import InputError

MOVES = {"rises": "up", "falls": "down", "same": "same"}
"""How a claim is written, and which way the reading then moved."""


def claims_hold(what: Happened) -> None:
    """Every line of the proof.

    Raises
    ------
    InputError
        At the first line that does not hold; it names the others too.
    """
    wrong = list(_wrong(what))
    if not wrong:
        return
    id, claim, shift = wrong[0]
    others = [f"{other} = {_computed(one)}" for other, _, one in wrong[1:]]
    told = "; ".join(f"{other} {_told(one)}" for other, _, one in wrong[1:])
    hint, facts = small_per_cent(what.case)
    also = f"Wrong as well: {told}. " if told else ""
    raise InputError(
        f"proof.{id}", claim, f"what is computed: {_told(shift)}", f"{also}{hint}".rstrip(),
        rule="proof", computed=_computed(shift), **({"also": others} if others else {}), **facts,
    )  # fmt: skip


def _wrong(what: Happened) -> Iterator[tuple[str, str, Shift]]:
    for id, claim in what.case.proof.items():
        shift = what.shift(id)
        if shift.moved != MOVES[claim]:
            yield id, claim, shift


def _computed(shift: Shift) -> str:
    return next((word for word, way in MOVES.items() if way == shift.moved), "no reading")


def _told(shift: Shift) -> str:
    return f"{_computed(shift)} ({numbers(shift)})"
