"""The commonest slips in a value, and what to say of them."""

from __future__ import annotations

import re
from typing import Any

from loadfirst.plant.near import nearest


def nearest_choice(value: object, choices: list[Any]) -> str:
    """The choice that was probably meant: 4 for 4.0 and for "4", linear for lineal."""
    if isinstance(value, float):
        return next((str(choice) for choice in choices if choice == value), "")
    return nearest(value, [str(choice) for choice in choices]) if isinstance(value, str) else ""


def place_hint(where: str, near: str = "") -> str:
    """Point at the entry of a list in words, or at the nearest choice."""
    if near:
        return f"Did you mean {near}?"
    index = re.search(r"\[(\d+)\]$", where)
    return f"It is number {int(index[1]) + 1} of the list." if index else ""


def quoted_hint(value: object, choices: list[Any]) -> str:
    """A word of digits written as a number looks like the word itself: say what is missing."""
    if not isinstance(value, int) or isinstance(value, bool):
        return ""
    words = (word for word in choices if isinstance(word, str) and word.isdecimal() and int(word) == value)
    return next((f'Write it in quotation marks: "{word}".' for word in words), "")


def number_hint(value: object) -> str:
    """A number written as text is the commonest slip: say how to write it."""
    if not isinstance(value, str):
        return ""
    if re.fullmatch(r"\s*[-+]?[\d.]+(e[-+]?\d+)?\s*", value, re.IGNORECASE):
        return "Write it without quotation marks."
    if re.fullmatch(r"\s*[-+]?\d+,\d+\s*", value):
        return "Write it with a decimal point and without quotation marks."
    return ""
