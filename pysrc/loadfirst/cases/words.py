"""Prose with placeholders: split into words and quantities, never into formatted numbers.

A placeholder is ``{day.source}``: the day is ``yesterday`` or ``today``, the
source a reading (``gauge-discharge``), one of a test (``shut-in:gauge-discharge``)
or a numeric plant key (``valve.opening``). The page formats each quantity in the reader's units.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import NamedTuple

from msgspec import Struct

from loadfirst.days.two_days import DayName
from loadfirst.errors import InputError

_BRACE = re.compile(r"\{([^{}]*)\}|[{}]")
_PLACEHOLDER = re.compile(r"(yesterday|today)\.([a-z0-9_.:-]{1,60})")
SHOWN = 40
"""Letters that are quoted from a brace that is no placeholder."""
TYPED_UNITS = (
    "bar", "mbar", "Pa", "kPa", "MPa", "psi", "kgf/cm²", "kgf/cm2", "m³/h", "m3/h", "m^3/h", "m³/s", "m3/s",
    "m^3/s", "l/s", "L/s", "l/min", "L/min", "l/h", "L/h", "gpm", "A", "amp", "amps", "ampere", "amperes",
    "rpm", "1/min", "min⁻¹", "°C", "°F",
)  # fmt: skip
"""Units before which no number may be typed. Others are free: m and mm are also those of a walk or a rung, kW
and V those of a name plate, % and Hz those to which a test sets something."""
_SPOKEN = r"(?:lit(?:re|er)s?|cubic met(?:re|er)s?) (?:per|an?) (?:second|minute|hour)"
_TYPED_NUMBER = re.compile(rf"\d\s?(?:{'|'.join(map(re.escape, TYPED_UNITS))}|{_SPOKEN})(?!\w)")


class Words(Struct, frozen=True, tag_field="part", tag="words"):
    """A piece of prose as it stands."""

    text: str


class Quantity(Struct, frozen=True, tag_field="part", tag="quantity"):
    """A number of the model in a piece of prose.

    Attributes
    ----------
    quantity : str
        What is measured: ``pressure``, ``flow``, ``current``, ``opening`` …
    value : float
        In SI units.
    source : str
        Where it comes from: a reading or a plant key.
    day : str
        ``yesterday`` or ``today``.
    """

    quantity: str
    value: float
    source: str
    day: DayName


Prose = list[list[Words | Quantity]]
"""Paragraphs, each a list of parts."""


class Placeholder(NamedTuple):
    """One placeholder as written."""

    day: DayName
    source: str

    def __str__(self) -> str:
        return f"{self.day}.{self.source}"


Fill = Callable[[DayName, str], tuple[str, float] | None]
"""Gives kind and SI value of what a day has at a source, None for an unknown one."""


def placeholders(text: str, where: str) -> list[Placeholder]:
    """Every placeholder of a text.

    Raises
    ------
    InputError
        Where a brace is no placeholder.
    """
    return [piece for piece in _pieces(text, where) if isinstance(piece, Placeholder)]


def refuse_typed_numbers(
    text: str, where: str, hint: str = "Write a placeholder: {today.gauge-discharge}."
) -> None:
    """Refuse a number with a unit of a reading: it would not follow the model or the reader's units.

    Raises
    ------
    InputError
    """
    found = _TYPED_NUMBER.search(text)
    if found:
        start = max(found.start() - 12, 0)
        raise InputError(
            where,
            text[start : found.end()],
            "free of numbers with the unit of a reading",
            hint,
            rule="typed-number",
        )


def filled(text: str, where: str, fill: Fill) -> Prose:
    """The text as paragraphs of words and quantities.

    Parameters
    ----------
    text : str
        Blank lines part paragraphs; other line ends are spaces.
    where : str
        Path of the text in its file, for the error.
    fill : callable
        Gives the quantity of a placeholder.

    Raises
    ------
    InputError
        For a placeholder that stands for nothing.
    """
    return [_paragraph(part, where, fill) for part in re.split(r"\n\s*\n", text.strip())]


def _paragraph(text: str, where: str, fill: Fill) -> list[Words | Quantity]:
    parts: list[Words | Quantity] = []
    for piece in _pieces(" ".join(text.split()), where):
        if isinstance(piece, str):
            parts.append(Words(piece))
            continue
        found = fill(piece.day, piece.source)
        if found is None:
            raise InputError(
                where, f"{{{piece}}}", "a placeholder for a reading or a numeric plant key", rule="lookup"
            )
        parts.append(Quantity(*found, piece.source, piece.day))
    return parts


def _pieces(text: str, where: str) -> Iterator[str | Placeholder]:
    start = 0
    for found in _BRACE.finditer(text):
        if found.start() > start:
            yield text[start : found.start()]
        yield _placeholder(found, where)
        start = found.end()
    if start < len(text):
        yield text[start:]


def _placeholder(found: re.Match[str], where: str) -> Placeholder:
    inside = _PLACEHOLDER.fullmatch(found.group(1) or "")
    if inside is None:
        raise InputError(
            where,
            found.group(0) if found.group(1) else found.string[found.start() :][:SHOWN],
            "a placeholder such as {today.gauge-discharge}",
            "Braces serve placeholders only.",
            rule="syntax",
        )
    day: DayName = "today" if inside.group(1) == "today" else "yesterday"
    return Placeholder(day, inside.group(2))
