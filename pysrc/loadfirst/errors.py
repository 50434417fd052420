"""Every error Loadfirst raises on purpose.

LoadfirstError
├── InputError        a value the caller gave cannot be used
│   └── FileError         ... and it came from a file
└── StalePage         page and Python come from different builds

A solver that gives up is not an error: its result says so, and why.
"""

from __future__ import annotations

from typing import Any


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
        ``together``, ``syntax``, ``lookup``, ``version``.
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
        found = "is not there" if self.rule == "missing" else f"is {self.got!r}"
        return f"{self.where} {found}, but must be {self.allowed}. {self.hint}".rstrip()


class FileError(InputError):
    """A value in a file cannot be used; the sentence starts with the file's name."""

    code = "file"

    def __init__(self, file: str, cause: InputError) -> None:
        self.file = file
        super().__init__(cause.where, cause.got, cause.allowed, cause.hint, rule=cause.rule, **cause.facts)

    @property
    def text(self) -> str:
        """The sentence a person reads, file first."""
        return f"{self.file}: {super().text}"


class StalePage(LoadfirstError):
    """The page and its Python are of different age: a reload mends it."""

    code = "stale"
