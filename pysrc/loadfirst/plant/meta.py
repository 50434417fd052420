"""How a key of a file is declared: unit, range and one sentence, all on its type.

The decoder, the author's guide, the schema and the page's controls read these
same declarations, so none of them can disagree.
"""

from __future__ import annotations

from msgspec import Meta, Struct

TURNING = r"\u202a-\u202e\u2066-\u2069"
"""Characters that turn the direction of writing: a text with them can look like another."""

PLAIN = f"^[^{TURNING}]*$"
FILLED = rf"^(?=[\s\S]*\S)[^{TURNING}]*$"
"""The same, and more than blanks."""


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
    """A text for people, with a limit on its length; it may be empty."""
    return Meta(max_length=longest, pattern=PLAIN, description=says)


def name(says: str, longest: int) -> Meta:
    """A text that must say something."""
    return Meta(min_length=1, max_length=longest, pattern=FILLED, description=says)


def choice(says: str, unit: str = "") -> Meta:
    """One of a few words or numbers, or yes or no."""
    return Meta(description=says, extra_json_schema={"unit": unit} if unit else {})
