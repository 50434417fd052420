"""What somebody believes has happened: a cause, or two, with the sizes that would explain what is known."""

from __future__ import annotations

from typing import NamedTuple

from loadfirst.cases.truth import family
from loadfirst.causes.cause import Cause
from loadfirst.causes.group import Group
from loadfirst.evidence.suspects import Suspect


class Guess(NamedTuple):
    """A suspect as a case speaks of it.

    Attributes
    ----------
    sizes : of each cause; None: as it usually is, or none.
    probability : by what stood open when it was guessed. [-]
    """

    causes: tuple[Cause, ...]
    sizes: tuple[float | None, ...]
    probability: float = 0.0

    @property
    def id(self) -> str:
        """Of the only cause; no case has more than one pair."""
        return self.causes[0].id if len(self.causes) == 1 else "two-at-once"

    @property
    def group(self) -> Group:
        """Where its first cause sits."""
        return self.causes[0].group

    @property
    def key(self) -> tuple[tuple[str, float | None], ...]:
        """What it changes, and how far."""
        return tuple((cause.id, size) for cause, size in zip(self.causes, self.sizes, strict=True))

    @property
    def families(self) -> frozenset[str]:
        """What no reading tells from it."""
        return frozenset(family(cause.id) for cause in self.causes)

    @property
    def usual(self) -> Guess:
        """The same as large as it usually is."""
        return self._replace(sizes=(None,) * len(self.causes))


def guessed(one: Suspect) -> Guess:
    """A suspect of the evidence engine, as large as the readings have it."""
    causes = one.hypothesis.causes
    sizes = (None if cause.size is None else fit.best for cause, fit in zip(causes, one.fitted, strict=True))
    return Guess(causes, tuple(sizes), one.probability)


def usually(*causes: Cause) -> Guess:
    """Causes as large as they usually are."""
    return Guess(causes, (None,) * len(causes))
