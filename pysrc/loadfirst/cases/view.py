"""What the page is told of a case: exactly what the learner may see now.

Codes, quantities in SI units and the author's prose; every other word is the
page's own. The truth stands in `Reveal` alone, which exists only once the
verdict is committed.
"""

from __future__ import annotations

from typing import Any, Literal

from msgspec import Struct

from loadfirst.cases.case import Direction, LoadChange
from loadfirst.cases.safety import Refusal
from loadfirst.cases.truth import Rightness
from loadfirst.cases.words import Prose
from loadfirst.causes.group import Group
from loadfirst.causes.remedy import Action, Outcome
from loadfirst.days.reason import Reason

Stage = Literal["predict", "check", "done"]
StripDown = Literal["avoided", "needless", "warranted", "missed"]


class Heading(Struct, frozen=True):
    """What a list of cases shows of one."""

    id: str
    title: str
    level: str
    family: str
    worked: bool
    after: tuple[str, ...]
    plant: str


class Pointer(Struct, frozen=True):
    """What an instrument shows on one day.

    `value` in SI units: the end of the scale where it is off it, None where there is nothing to read.
    """

    value: float | None
    off_scale: str | None


class ReadingView(Struct, frozen=True):
    """One instrument on both days.

    `low`, `high` are the ends of its scale and `accuracy` its greatest error, all in SI
    units. `explained` is the change that it can make by itself; `moved` is ``same`` where the
    difference is within that, None where a day has no reading.
    """

    id: str
    quantity: str
    low: float
    high: float
    accuracy: float
    explained: float | None
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
    """A further check. What it shows stands empty until it was taken.

    Attributes
    ----------
    care : what has to be minded: the pump is taken apart, or something is opened.
    refused : why nobody did it, once the learner wanted to.
    showed : whether what was looked at showed something; None for readings.
    result : the author's words for that.
    found : what seems to be so inside a pump that was taken apart; as right as what it showed.
    tested : what its instruments read while its test was on.
    """

    id: str
    says: Prose
    minutes: float
    money: float
    reads: tuple[str, ...]
    test: bool
    observes: str | None
    care: Literal["dismantle", "open"] | None
    taken: bool
    refused: Refusal | None = None
    showed: bool | None = None
    result: Prose | None = None
    found: Literal["sound", "at-fault"] | None = None
    tested: list[ReadingView] = []


class ChoiceView(Struct, frozen=True):
    """A verdict on offer; its explanation comes with the verdict."""

    id: str
    says: Prose
    blames: tuple[str, ...]


class Verdict(Struct, frozen=True):
    """What the learner decided, with the explanation that it deserves, and what came of it.

    `minutes` is what the action costs, harm that goes on among it. [min]
    """

    choice: str
    rightness: Rightness
    reply: Prose
    action: Action
    outcome: Outcome
    minutes: float


class Happening(Struct, frozen=True):
    """One cause that happened, and how large it was, in its unit."""

    cause: str
    group: Group
    size: float | None
    unit: str


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
    money: float


class Path(Struct, frozen=True):
    """How the learner got there.

    `minutes` were spent on checks; `lost` are those that a needless strip-down took or, by
    the verdict, would still take, and `strip_minutes` what any strip-down takes here. [min]
    """

    steps: list[Step]
    refused: list[str]
    minutes: float
    money: float
    lost: float
    strip_minutes: float
    suspected: Group
    suspicion_right: bool
    strip_down: StripDown


class Reveal(Struct, frozen=True):
    """What really happened: both days' whole answers, and what differs between them."""

    happened: list[Happening]
    load: LoadChange | None
    """How the load changed at yesterday's flow, None where it did not."""
    differences: list[Difference]
    right_choice: str
    fitting: list[Action]
    """What helps, the best first."""
    why: Prose
    """The explanation of the right verdict."""
    readings: list[ReadingView]
    """Every instrument of the plant."""
    reasons: dict[str, Reason]
    """Why each instrument moved that did."""
    telling: list[str]
    """Checks that look at something which shows what happened, unless it is missed."""
    yesterday: Any
    today: Any
    plant: dict[str, Any]
    """Today's plant with the keys that its file gives, to be opened in the rig."""
    path: Path


class CaseView(Struct, frozen=True):
    """A case in the middle of play."""

    id: str
    seed: int
    title: str
    level: str
    family: str
    worked: bool
    teaches: tuple[str, ...]
    leaves_out: tuple[str, ...]
    stage: Stage
    story: Prose
    plant: dict[str, Any]
    """Yesterday's plant with every key that its drawing shows."""
    told: list[ReadingView]
    """Instruments that the story names, on the days that it tells."""
    prediction: PredictionView
    readings: list[ReadingView]
    """Instruments read so far, in the order in which they were read."""
    to_see: list[str]
    """Readings of which the learner has yet to say what they show, before the verdict."""
    saw: list[Saw]
    checks: list[CheckView]
    choices: list[ChoiceView]
    actions: tuple[Action, ...]
    hints: list[Prose]
    """Hints asked for so far."""
    hints_left: int
    minutes: float
    """Spent so far. [min]"""
    money: float
    """The same in money. [-]"""
    verdict: Verdict | None = None
    reveal: Reveal | None = None
