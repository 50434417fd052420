"""Every error Loadfirst raises on purpose.

LoadfirstError
├── InputError        a value the caller gave cannot be used
│   └── FileError         ... and it came from a file
└── StalePage         page and Python come from different builds

A solver that gives up is not an error: its result says so, and why.
"""

from __future__ import annotations

from typing import Any

LONGEST_SHOWN = 60  # [characters] of a value quoted in a sentence


class LoadfirstError(Exception):
    """The root: anything below it was foreseen and is worded for a person."""

    code = "bug"


class InputError(LoadfirstError):
    """A value cannot be used: says where it is, what it was and what would do.

    Attributes
    ----------
    where : str
        Dotted path of the value, as it stands in a file: ``valve.opening``.
    got : object
        What was found there; None where nothing was.
    rule : str
        Which rule it broke, a word the page has a sentence for:
        ``range``, ``choice``, ``type``, ``unknown``, ``missing``, ``points``,
        ``together``, ``syntax``, ``lookup``, ``unreadable``, ``version``, ``pump``, ``turns``; of cases
        also ``order``, ``days``, ``truth``, ``proof``, ``typed-number``, ``too-early``.
    allowed : str
        What would do, in words for the command line: ``from 0 to 1``.
    hint : str
        A way out, where one is known: the nearest known key.
    facts : dict
        The numbers and names behind `allowed`, for the page to word itself:
        ``low``, ``high``, ``unit``, ``choices``, ``nearest``, ``line`` …
    """

    code = "input"

    def __init__(
        self, where: str, got: object, allowed: str, hint: str = "", *, rule: str = "range", **facts: Any
    ) -> None:
        self.where, self.got, self.allowed, self.hint = where, got, allowed, hint
        self.rule, self.facts = rule, facts
        super().__init__(self.text)

    @property
    def text(self) -> str:
        """The sentence a person reads."""
        return f"{self._sentence()} {self.hint}".rstrip()

    def _sentence(self) -> str:
        where = _one_line(self.where)
        if self.rule == "missing":
            return f"{where} is not there, but must be {self.allowed}."
        if self.rule == "unknown":
            return f"{where} is not a known key."
        if self.rule == "unreadable":
            return f"{where} cannot be read: {_one_line(str(self.got))}."
        if self.rule == "pump":
            return f"{where} is {self.got}, but must be {self.allowed}."
        return f"{where} is {quoted(self.got)}, but must be {self.allowed}."


class FileError(InputError):
    """A value in a file cannot be used; the sentence starts with the file's name."""

    code = "file"

    def __init__(self, file: str, cause: InputError) -> None:
        self.file = file
        super().__init__(cause.where, cause.got, cause.allowed, cause.hint, rule=cause.rule, **cause.facts)

    @property
    def text(self) -> str:
        """The sentence a person reads, file first."""
        return f"{_printable(self.file)}: {super().text}"


class StalePage(LoadfirstError):
    """The page and its Python are of different age: a reload mends it."""

    code = "stale"


def quoted(got: object) -> str:
    """A stranger's value, short enough for a sentence: never a whole table, never a page of digits."""
    if isinstance(got, dict):
        return "a table"
    if isinstance(got, list | tuple):
        return f"a list of {len(got)}"
    if got is None:
        return "empty"
    if isinstance(got, bool):
        return "true" if got else "false"
    if isinstance(got, int) and abs(got) >= 10**LONGEST_SHOWN:
        return "a number of very many digits"  # its repr may be refused by Python itself
    return f"'{_one_line(got)}'" if isinstance(got, str) else _one_line(str(got))


def _one_line(text: str) -> str:
    """A stranger's text without line ends and control characters, cut where it grows long."""
    text = text if len(text) <= LONGEST_SHOWN else f"{text[:LONGEST_SHOWN]}…"
    return _printable(text)


def _printable(text: str) -> str:
    return "".join(letter if letter.isprintable() else "·" for letter in text)
