"""Long work in small pieces: between them it says how far it is, and others get their turn."""

from __future__ import annotations

from collections.abc import Callable, Generator, Hashable
from typing import Generic, NamedTuple, TypeVar

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


class Made(NamedTuple, Generic[T]):
    """What a work has come to."""

    it: T


class UnderWay(Generic[T]):
    """The work that was asked about last, as far as it is; one that is lost begins anew and ends the same."""

    def __init__(self) -> None:
        self._works = dict[Hashable, Pieces[T]]()

    def piece(self, key: Hashable, begin: Callable[[], Pieces[T]]) -> Stage | Made[T]:
        """Do one piece more of the work of that key."""
        work = self._works.pop(key, None) or begin()
        self._works.clear()
        try:
            stage = next(work)
        except StopIteration as end:
            return Made(end.value)
        self._works[key] = work
        return stage
