"""A worked case, step by step: what the led player would do next, and why.

Told before the verdict, so of worked cases alone. It names what still fits what was seen so far, and
nothing of what happened.
"""

from __future__ import annotations

from msgspec import Struct

from loadfirst.cases.debrief import Standing, standing
from loadfirst.cases.moves import Play
from loadfirst.cases.players import LEAST, SURE, sure, tells_most
from loadfirst.cases.weighing import Weighing


class NextStep(Struct, frozen=True):
    """What to do next.

    Attributes
    ----------
    check : the check that tells most for its cost; None where it is time for the verdict.
    bits : what it is expected to tell of the cause. [bit]
    sure : whether one verdict is likely enough by now.
    standing : suspects that fit so far, the likeliest first: what the check is to part.
    enough : probability of a verdict that makes it so. [-]
    """

    check: str | None
    bits: float
    sure: bool
    standing: list[Standing]
    enough: float = SURE


def next_step(weighing: Weighing, play: Play) -> NextStep:
    """The next step from where a play has come to."""
    taken = [check.id for check in play.checks]
    posterior = weighing.weigh(weighing.looks([weighing.proven.case.seed]), taken)
    if sure(weighing, posterior):
        return NextStep(None, 0.0, True, standing(posterior))
    check, bits = tells_most(weighing, posterior, taken)
    if check is None or bits < LEAST:
        return NextStep(None, 0.0, False, standing(posterior))
    return NextStep(check.id, bits, False, standing(posterior))
