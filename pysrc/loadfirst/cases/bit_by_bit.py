"""Long work in small pieces: between them it says how far it is, and others get their turn."""

from __future__ import annotations

from collections.abc import Generator
from typing import NamedTuple, TypeVar

T = TypeVar("T")


class Stage(NamedTuple):
    """How far a work is: what is being done, how much of it is done, and of how much."""

    doing: str
    done: int
    of: int


Pieces = Generator[Stage, None, T]
"""A work: each `next` does one piece; what it returns at its end is what was made."""


def at_once(work: Pieces[T]) -> T:
    """All of it, for somebody who can wait."""
    while True:
        try:
            next(work)
        except StopIteration as end:
            made: T = end.value
            return made
