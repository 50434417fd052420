"""Volumes that are kept to the last digit: every amount is taken from one account and put into another.

An account is a pair, the number and what rounding left over from it; together they
hold some thirty digits. A day of steps then balances to the round-off of one sum.

Source: D. E. Knuth, "The Art of Computer Programming" 2, 4.2.2, the exact sum of two
numbers (from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from math import fsum

Account = tuple[float, float]

EMPTY: Account = (0.0, 0.0)


def add(account: Account, amount: float) -> Account:
    """The account with an amount put in, negative: taken out."""
    value, rest = account
    total, lost = _exact(value, amount)
    return _exact(total, rest + lost)


def total(accounts: Iterable[Account]) -> float:
    """All accounts together, rounded once."""
    return fsum(part for account in accounts for part in account)


def _exact(first: float, second: float) -> Account:
    """The sum of two numbers, and what rounding lost of it."""
    whole = first + second
    back = whole - first
    return whole, (first - (whole - back)) + (second - back)
