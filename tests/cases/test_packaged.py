"""Every case that comes with the program is fair, and all of them together teach to look."""

from __future__ import annotations

from functools import cache

import pytest

from loadfirst.cases.bit_by_bit import at_once
from loadfirst.cases.collection import Played, faults, groups
from loadfirst.cases.fairness import fairness, unfair
from loadfirst.cases.held import holding
from loadfirst.cases.load import load_case
from loadfirst.cases.read import catalogue, packaged
from loadfirst.cases.weighing import Weighing
from loadfirst.errors import InputError

pytestmark = pytest.mark.native

IDS = [heading.id for heading in catalogue()]


@cache
def played(id: str) -> tuple[Played, list[InputError]]:
    """A packaged case, played a little less often than `check` does, and what is unfair in it."""
    proven = load_case(id)
    weighing = Weighing(proven)
    found = fairness(weighing, draws=60, plays_each=3)
    return Played(id, proven.case, proven.truth, found), list(unfair(found, weighing))


@pytest.mark.parametrize("id", IDS)
def test_the_truth_of_a_packaged_case_can_be_found(id: str) -> None:
    """From what is on offer, better than anything else, and with something to do."""
    one, unfairness = played(id)
    assert [fault.text for fault in unfairness] == []
    assert one.found.checks >= 1


@pytest.mark.parametrize("id", IDS)
def test_the_claims_of_a_packaged_case_hold_for_other_seeds(id: str) -> None:
    """At both ends of its sizes."""
    assert [fault.text for fault in at_once(holding(load_case(id))).faults] == []


@pytest.mark.parametrize("id", [id for id in IDS if packaged(id).words])
def test_a_case_with_drawn_words_holds_with_other_seeds(id: str) -> None:
    """Sizes, words and noise of five others."""
    for seed in (2, 30, 444, 5000, 999_999):
        assert load_case(id, seed).case.seed == seed


def test_the_collection_teaches_to_look() -> None:
    """At least thirty cases on six plants and more, every group among them, and no habit that pays."""
    every = [played(id)[0] for id in IDS]
    assert [fault.text for fault in faults(every)] == []
    assert len(every) >= 30
    assert len({one.case.plant for one in every if isinstance(one.case.plant, str)}) >= 6
    single = {"discharge-side", "suction-side", "liquid", "drive", "machine", "instrument", "nothing"}
    assert single <= set(groups(every)) and any(" and " in group for group in groups(every))
