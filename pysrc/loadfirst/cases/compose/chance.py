"""Chance by counting, as everywhere: each choice has a name, and none depends on another."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple, TypeVar

from loadfirst.instruments.generator import bits, stream, uniform

T = TypeVar("T")


class Chance(NamedTuple):
    """All the choices of one draw.

    Attributes
    ----------
    seed : from 0.
    about : what they are about.
    """

    seed: int
    about: tuple[str | int, ...]

    def pick(self, name: str, some: Sequence[T]) -> T:
        """One of several, each as likely."""
        return some[self.whole(name, len(some))]

    def whole(self, name: str, below: int) -> int:
        """A whole number from 0."""
        return bits(self._stream(name), 0) % below

    def share(self, name: str) -> float:
        """From 0 to below 1."""
        return uniform(self._stream(name))

    def mixed(self, name: str, some: Sequence[T]) -> list[T]:
        """The same things in another order."""
        state = self._stream(name)
        order = sorted(range(len(some)), key=lambda number: bits(state, number))
        return [some[number] for number in order]

    def _stream(self, name: str) -> int:
        return stream(self.seed, *self.about, name)
