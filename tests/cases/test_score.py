"""What a play is worth: own choices, held to what they are meant to say."""

from __future__ import annotations

import pytest

from loadfirst.cases.score import GRACE, score


def test_a_right_verdict_that_is_borne_out_at_the_best_price_is_worth_all() -> None:
    """Seventy for the verdict, thirty for the action."""
    best = score("right", "fits", 0.95, 12.0, 12.0)
    assert (best.verdict, best.action, best.points) == (70.0, 30.0, 100.0)


def test_a_guess_is_worth_less_than_the_same_verdict_after_a_look() -> None:
    """What had been seen has to bear it out."""
    guess = score("right", "fits", 0.1, 0.0, 12.0)
    look = score("right", "fits", 0.9, 12.0, 12.0)
    assert guess.support < 0.5 and guess.points < 0.7 * look.points


def test_one_check_too_many_costs_nothing_and_a_strip_down_nearly_all() -> None:
    """A careful person is not punished; four hours of fitters are."""
    careful = score("right", "fits", 0.99, 12.0 + GRACE, 12.0)
    stripped = score("right", "fits", 0.99, 260.0, 12.0)
    assert careful.points == 100.0
    assert stripped.points < 20.0


@pytest.mark.parametrize(("outcome", "points"), [("fits", 10.0), ("idle", 10.0), ("needless", 0.0)])
def test_the_right_remedy_for_the_wrong_reason_is_luck(outcome: str, points: float) -> None:
    """It counts as one that does no harm."""
    assert score("wrong", outcome, 1.0, 0.0, 0.0).points == points  # type: ignore[arg-type]


def test_a_part_of_the_truth_is_worth_half_the_verdict_and_its_remedy_counts() -> None:
    """One of two things is found and seen to; the other goes on."""
    part = score("part", "fits", 0.95, 12.0, 12.0)
    assert (part.verdict, part.action, part.points) == (35.0, 30.0, 65.0)


def test_the_right_group_is_worth_half_the_verdict() -> None:
    """The side is found, the cause is not."""
    assert score("group", "idle", 1.0, 0.0, 0.0).verdict == score("right", "idle", 1.0, 0.0, 0.0).verdict / 2
