"""Printed answers beside computed ones: what the command line says of a published problem's plant."""

from __future__ import annotations

import io
import json
from collections.abc import Callable, Iterable
from contextlib import redirect_stdout
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from tests.published.printed import PROVENANCES
from tests.published.worked.conversions import UNITS, unit_of

PLANTS = Path(__file__).parent / "plants"

Output = dict[str, Any]
"""What ``read --json`` prints."""


@dataclass(frozen=True)
class Answer:
    """One answer that a book prints.

    Attributes
    ----------
    asks : str
        What it is.
    at : str or function
        Where the command line prints it: keys and names joined by a slash, ending
        with the unit that the key has; or a function of the whole output, in SI.
    printed : float
        The book's number, in `unit`.
    unit : str
        One of `conversions.UNITS`.
    within : float
        Half a unit of the last printed digit, in `unit`, unless `why` says.
    why : str
        Why more than that.
    """

    asks: str
    at: str | Callable[[Output], float]
    printed: float
    unit: str
    within: float
    why: str = ""

    def found(self, output: Output) -> float:
        """The computed answer, in the book's unit."""
        si = self.at(output) if callable(self.at) else _look(output, self.at)
        return si / UNITS[self.unit]


@dataclass(frozen=True)
class Problem:
    """One published problem, or one part of it: a plant file and what the book answers.

    Attributes
    ----------
    name : str
        What the test run calls it.
    file : str
        Name of the plant's file in `PLANTS`, without ending; its first lines state the problem.
    source, provenance : str
        As in `Printed`.
    answers : tuple of Answer
    settings : tuple of str
        Keys that this part sets otherwise, as ``--set`` takes them.
    """

    name: str
    file: str
    source: str
    provenance: str
    answers: tuple[Answer, ...]
    settings: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if not self.source or not self.provenance.startswith(PROVENANCES):
            raise ValueError(f"{self.name}: say where the numbers come from and how they were had")

    @property
    def published(self) -> bool:
        """Whether somebody else printed its answers."""
        return not self.provenance.startswith("computed")

    def output(self) -> Output:
        """What the command line prints for it."""
        return read(self.file, self.settings)


@lru_cache(maxsize=64)
def read(file: str, settings: tuple[str, ...] = ()) -> Output:
    """The output of ``python -m loadfirst read FILE --json``, run in this process."""
    from loadfirst.__main__ import main  # the browser's Python has no command line, but looks at this file

    said = io.StringIO()
    arguments = ["read", str(PLANTS / f"{file}.toml"), "--json"]
    for setting in settings:
        arguments += ["--set", setting]
    with redirect_stdout(said):
        code = main(arguments)
    if code != 0:
        raise ValueError(f"{file}: the command ended with {code}")
    output: Output = json.loads(said.getvalue())
    return output


def delivered(output: Output) -> float:
    """What comes out of the discharge line: less what leaves before its end or beside it. [m³/s]"""
    return _look(output, "duty/flow_m3h") - sum(
        _look(output, f"aside_m3h/{name}") for name in output["aside_m3h"]
    )


def junction_head(surface: float) -> Callable[[Output], float]:
    """Energy head behind the pump, from the supply's surface: less what the suction line takes. [m]"""

    def head(output: Output) -> float:
        return surface - _look(output, "head_breakdown/suction-line/head_m") + _look(output, "duty/head_m")

    return head


def lines(problems: Iterable[Problem]) -> str:
    """The whole table, for a person: printed beside computed, and how far apart they may be."""
    rows = [f"{'problem':<34}{'answer':<26}{'printed':>10}{'computed':>12}{'within':>10}  unit"]
    for problem in problems:
        for answer in problem.answers:
            found = answer.found(problem.output())
            mark = "" if abs(found - answer.printed) <= answer.within else "   <-- apart"
            rows.append(
                f"{problem.name:<34}{answer.asks:<26}{answer.printed:>10g}{found:>12.6g}{answer.within:>10g}"
                f"  {answer.unit}{mark}"
            )
    return "\n".join(rows)


def _look(output: Output, at: str) -> float:
    """The number at a path through tables and lists of named ones, in SI."""
    here: Any = output
    factor = 1.0
    for part in at.split("/"):
        if isinstance(here, list):
            here = next(one for one in here if part in (one.get("name"), one.get("id"), one.get("block")))
        else:
            here = here[part]
        if unit_of(part) != 1.0:
            factor = unit_of(part)
    return float(here) * factor
