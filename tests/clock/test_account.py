"""Accounts lose nothing, however many amounts go through them."""

from __future__ import annotations

from fractions import Fraction
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from loadfirst.clock.account import EMPTY, add, total

amounts = st.lists(
    st.floats(-1e9, 1e9).filter(lambda number: abs(number) > 1e-12 or number == 0), max_size=60
)


@given(amounts)
def test_an_account_is_the_exact_sum_to_thirty_digits(parts: list[float]) -> None:
    """Against rational arithmetic."""
    account = EMPTY
    for part in parts:
        account = add(account, part)
    exact = sum(map(Fraction, parts), Fraction(0))
    largest = max(map(abs, parts), default=0.0)
    assert abs(Fraction(account[0]) + Fraction(account[1]) - exact) <= Fraction(
        largest * len(parts)
    ) * Fraction(1e-30)


def test_what_a_million_steps_move_between_two_accounts_stays_the_same() -> None:
    """A plain sum of these loses some 1e-11."""
    dice, one, other = Random(1), (1000.0, 0.0), (0.1, 0.0)
    for _ in range(200_000):
        amount = dice.uniform(-1e-3, 1e-3)
        one, other = add(one, -amount), add(other, amount)
    assert total([one, other]) == 1000.1
