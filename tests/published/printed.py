"""Values that a standard, handbook or textbook prints, each with where it was read.

A row stands in the test that uses it; nothing is read from outside.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import pytest

PROVENANCES = ("read", "quoted", "from memory", "common practice", "computed", "exact")


@dataclass(frozen=True)
class Printed:
    """One printed example.

    Attributes
    ----------
    name : str
        What the test run calls it.
    given, answer : Mapping
        Inputs and printed answers, units in the keys.
    within : float
        Relative tolerance, from the printed digits or as `why` says.
    source : str
        The document.
    provenance : str
        Starts with how the document was had: one of `PROVENANCES`.
    why : str
        Where the tolerance is more than half a unit of the last digit.
    """

    name: str
    given: Mapping[str, float]
    answer: Mapping[str, float]
    within: float
    source: str
    provenance: str
    why: str = ""

    def __post_init__(self) -> None:
        if not self.source or not self.provenance.startswith(PROVENANCES):
            raise ValueError(f"{self.name}: say where the numbers come from and how they were had")

    @property
    def expected(self) -> Any:
        """The printed answers with their tolerance, to compare a dict with."""
        return pytest.approx(dict(self.answer), rel=self.within, abs=0)


def each(*rows: Printed) -> pytest.MarkDecorator:
    """Run a test once for each row; it takes the row as `row`."""
    return pytest.mark.parametrize("row", rows, ids=[row.name for row in rows])
