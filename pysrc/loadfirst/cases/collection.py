"""Whether many puzzles together teach to look: no group, no teller and no habit is right too often."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from loadfirst.cases.case import Case
from loadfirst.cases.fairness import Fairness
from loadfirst.cases.players import HABITS, Habit
from loadfirst.cases.truth import LOAD_GROUPS, Truth
from loadfirst.errors import InputError

COLLECTION = 12
"""From so many puzzles on they are judged as a collection. Own choice."""
LARGEST = 0.35
"""Greatest share of one group of causes. [-]"""
TELLER = 1 / 3
"""Greatest share of the stories blaming the machine that are right. [-]"""
EARNED = 0.6
"""Greatest share of what looking earns that a habit may earn. [-]"""


class Played(NamedTuple):
    """A puzzle that holds, and what many draws of it said."""

    id: str
    case: Case
    truth: Truth
    found: Fairness


def groups(every: Sequence[Played]) -> dict[str, int]:
    """How often each group of causes is the truth; two at once count for themselves."""
    return dict(Counter(" and ".join(sorted(one.truth.groups)) for one in every).most_common())


def machine_blamed(every: Sequence[Played]) -> tuple[int, int]:
    """In how many stories the teller blames the machine, and in how many of them rightly."""
    blamed = [one for one in every if one.case.teller == "machine"]
    return len(blamed), sum("machine" in one.truth.groups for one in blamed)


def shares(every: Sequence[Played]) -> dict[Habit, float]:
    """What each habit earns, over what the player earns who is led by information. [-]"""
    led = sum(one.found.led for one in every)
    return {habit: sum(one.found.habits[habit] for one in every) / max(led, 1e-9) for habit in HABITS}


def faults(every: Sequence[Played]) -> Iterator[InputError]:
    """What is wrong with a collection, each with a remedy."""
    for group, number in groups(every).items():
        if number > LARGEST * len(every):
            yield _fault(f"{group} in {number} of {len(every)}", f"at most {LARGEST:.0%} of one group")
    blamed, right = machine_blamed(every)
    if right > TELLER * blamed:
        yield _fault(f"the machine blamed in {blamed}, rightly in {right}", "rightly in a third at most")
    if not any(one.case.teller in LOAD_GROUPS and "machine" in one.truth.groups for one in every):
        yield _fault("no teller who wrongly insists on the load", "one at least")
    for habit, share in shares(every).items():
        if share > EARNED:
            yield _fault(f"{habit} earns {share:.0%}", f"at most {EARNED:.0%} of what looking earns")


def _fault(got: str, allowed: str) -> InputError:
    return InputError("the collection", got, allowed, "Add cases in which it is otherwise.", rule="fair")
