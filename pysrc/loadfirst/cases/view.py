"""What the page is told of a case: exactly what the learner may see now.

Codes, quantities in SI units and the author's prose; every other word is the
page's own. The truth stands in `Reveal` alone, which exists only once the
verdict is committed.
"""

from __future__ import annotations

from typing import Any, Literal

from msgspec import Struct

from loadfirst.cases.case import Direction, LoadChange
from loadfirst.cases.words import Prose
from loadfirst.causes.group import Group

Stage = Literal["predict", "check", "done"]
StripDown = Literal["avoided", "needless", "warranted", "missed"]


class Heading(Struct, frozen=True):
    """What a list of cases shows of one."""

    id: str
    title: str
    level: str


class Pointer(Struct, frozen=True):
    """What an instrument shows on one day.

    `value` in SI units: the end of the scale where it is off it, None where there is nothing to read.
    """

    value: float | None
    off_scale: str | None


class ReadingView(Struct, frozen=True):
    """One instrument on both days.

    `low`, `high` are the ends of its scale and `accuracy` its greatest error, all in SI
    units. `moved` is ``same`` where the difference is no more than two looks at it may differ
    by themselves, None where a day has no reading.
    """

    id: str
    quantity: str
    low: float
    high: float
    accuracy: float
    yesterday: Pointer
    today: Pointer
    moved: Direction | None


class PredictionView(Struct, frozen=True):
    """The prediction: asked, then committed, then (once its instrument was read) beside the outcome."""

    reading: str
    asks: Prose
    suspects: list[Group]
    """Groups on offer as a first suspicion."""
    says: Direction | None = None
    suspected: Group | None = None
    outcome: Direction | None = None


class Saw(Struct, frozen=True):
    """What the learner saw an instrument do, beside what it did."""

    reading: str
    says: Direction
    moved: Direction | None


class CheckView(Struct, frozen=True):
    """A further check. `result` and `found` are None until it was taken."""

    id: str
    says: Prose
    minutes: float
    reads: tuple[str, ...]
    strips_down: bool
    taken: bool
    result: Prose | None = None
    found: Literal["sound", "at-fault"] | None = None


class ChoiceView(Struct, frozen=True):
    """A verdict on offer; its explanation comes with the verdict."""

    id: str
    says: Prose
    blames: Group


class Verdict(Struct, frozen=True):
    """What the learner decided, with the explanation that it deserves."""

    choice: str
    right: bool
    reply: Prose


class Difference(Struct, frozen=True):
    """One plant key that differs between the days.

    With a `quantity` the two values are numbers in SI units, None where it was left out; without one they
    are as in a file.
    """

    key: str
    quantity: str | None
    yesterday: Any
    today: Any


class Step(Struct, frozen=True):
    """One check that was taken, and what it cost. [min]"""

    id: str
    minutes: float


class Path(Struct, frozen=True):
    """How the learner got there.

    `minutes` were spent on checks; `lost` are those that a needless strip-down took or, by
    the verdict, would still take. [min]
    """

    steps: list[Step]
    minutes: float
    lost: float
    suspected: Group
    suspicion_right: bool
    strip_down: StripDown


class Reveal(Struct, frozen=True):
    """What really happened: both days' whole answers, and what differs between them."""

    truth: Group
    load: LoadChange | None
    """How the load changed at yesterday's flow, None where it did not."""
    differences: list[Difference]
    right_choice: str
    why: Prose
    """The explanation of the right verdict."""
    readings: list[ReadingView]
    """Every instrument of the plant."""
    yesterday: Any
    today: Any
    plant: dict[str, Any]
    """Today's plant with the keys that its file gives, to be opened in the rig."""
    path: Path


class CaseView(Struct, frozen=True):
    """A case in the middle of play."""

    id: str
    title: str
    level: str
    teaches: tuple[str, ...]
    leaves_out: tuple[str, ...]
    stage: Stage
    story: Prose
    prediction: PredictionView
    readings: list[ReadingView]
    """Instruments read so far, in the order in which they were read."""
    to_see: list[str]
    """Readings of which the learner has yet to say what they show, before the verdict."""
    saw: list[Saw]
    checks: list[CheckView]
    choices: list[ChoiceView]
    hints: list[Prose]
    """Hints asked for so far."""
    hints_left: int
    minutes: float
    """Spent so far. [min]"""
    verdict: Verdict | None = None
    reveal: Reveal | None = None
