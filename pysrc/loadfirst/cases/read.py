"""From a case file to a `Case`, with errors that say file, place, what was found and what would do."""

from __future__ import annotations

from typing import Any

from loadfirst.cases.case import LEVELS, Case
from loadfirst.cases.view import Heading
from loadfirst.errors import FileError, InputError
from loadfirst.plant import library
from loadfirst.plant.decode import decode
from loadfirst.plant.toml_text import parse

LONGEST = 100_000
"""Characters of the longest case file that is read at all."""


def decode_case(text: str, file: str) -> Case:
    """The case in a TOML text; its form only, not yet proven.

    Raises
    ------
    FileError
        For text that is no TOML, or for the first key that cannot be used.
    """
    if len(text) > LONGEST:
        allowed = f"at most {LONGEST} characters long"
        cause = InputError("the file", len(text), allowed, high=LONGEST, unit="bytes")
        raise FileError(file, cause)
    return decode(Case, lifted(parse(text, file)), file)


def lifted(data: dict[str, Any]) -> dict[str, Any]:
    """The data of a file of any older format as today's; those of a newer one as they are, to be refused.

    Format 0 was the one before the first that is stable: its keys are those of 1.
    """
    number = data.get("format")
    return data | {"format": 1} if number == 0 and type(number) is int else data


def catalogue() -> list[Heading]:
    """The packaged cases, easiest level first, then by title."""
    found = [heading(id, packaged(id)) for id in library.ids("cases")]
    return sorted(found, key=lambda each: (LEVELS.index(each.level), each.title))


def heading(id: str, case: Case) -> Heading:
    """What a list of cases shows of one."""
    plant = case.plant if isinstance(case.plant, str) else ""
    return Heading(id, case.title, case.level, case.family, case.worked, case.after, plant)


def packaged(id: str) -> Case:
    """A packaged case by its id.

    Raises
    ------
    InputError
        For an id that no packaged case bears.
    """
    path = library.path("cases", library.known("cases", id))
    return decode_case(path.read_text(encoding="utf-8"), path.name)
