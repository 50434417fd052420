"""How a key of a file is declared: unit, range and one sentence, all on its type.

The decoder, the author's guide, the schema and the page's controls read these
same declarations, so none of them can disagree.
"""

from __future__ import annotations

from msgspec import Meta, Struct


class Part(Struct, frozen=True, forbid_unknown_fields=True):
    """A table of a file. Unknown keys are refused."""


def quantity(unit: str, low: float, high: float, says: str) -> Meta:
    """What a number means: its unit, its range (both ends included) and a sentence."""
    return Meta(ge=low, le=high, description=says, extra_json_schema={"unit": unit})


def entry(unit: str, low: float, high: float) -> Meta:
    """One number of a list; the list itself carries the sentence."""
    return Meta(ge=low, le=high, extra_json_schema={"unit": unit})


def points(says: str) -> Meta:
    """A list over the measured points of a pump: at least three of them, at most sixty."""
    return Meta(min_length=3, max_length=60, description=says)


def words(says: str, longest: int) -> Meta:
    """A text for people, with a limit on its length."""
    return Meta(max_length=longest, description=says)


def choice(says: str, unit: str = "") -> Meta:
    """One of a few words or numbers, or yes or no."""
    return Meta(description=says, extra_json_schema={"unit": unit} if unit else {})
