"""How many decimals a number needs on a terminal, so that something small does not look like nothing."""

from __future__ import annotations

import math

MOST = 6
"""Decimals, at most: what is smaller still is noise."""


def places(number: float, usual: int, digits: int = 2) -> int:
    """Decimals to print: the usual ones, or as many as show some digits of a small number.

    Parameters
    ----------
    number : what is printed; 0 takes the usual decimals.
    usual : decimals of numbers of ordinary size.
    digits : significant digits that a small number has at least.
    """
    if number == 0:
        return usual
    return max(usual, min(digits - 1 - math.floor(math.log10(abs(number))), MOST))


def fine(number: float, usual: int, digits: int = 2) -> str:
    """The number with its `places`, never a zero with a sign."""
    return f"{number:z.{places(number, usual, digits)}f}"
