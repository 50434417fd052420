"""What ``check`` says of a puzzle: its claims, whether it is fair, and what habits would earn at it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from loadfirst.cases.collection import Played, groups, machine_blamed, shares
from loadfirst.cases.fairness import Fairness, fairness, unfair
from loadfirst.cases.held import Held
from loadfirst.cases.load import load_case
from loadfirst.cases.proof import Proven
from loadfirst.cases.safety import Refusal
from loadfirst.cases.truth import rightness
from loadfirst.cases.weighing import Weighing
from loadfirst.cli.convert import printed
from loadfirst.cli.report import UNITS, reading_text
from loadfirst.days.shift import Shift
from loadfirst.errors import InputError
from loadfirst.instruments.panel import Reading

REFUSED: dict[Refusal, str] = {
    "starts-backward": "starts a pump that liquid turns backward",
    "shut-displacement": "shuts in a pump that displaces",
    "shut-propeller": "shuts in an axial or mixed-flow pump",
    "over-pressure": "raises the pressure above what casing and line are made for",
    "opens-under-pressure": "opens something under pressure",
}
"""Why play refuses a check, as the author's guide has it."""
VERDICTS = {"right": "right", "group": "right group", "part": "in part", "wrong": "wrong"}


def claims(path: Path) -> Proven:
    """A puzzle whose claims hold, read as the page reads it: on its own, whatever lies beside it."""
    return load_case((path.name, path.read_text(encoding="utf-8-sig")))


def judged(proven: Proven) -> tuple[Fairness, list[InputError]]:
    """A puzzle played many times, and what is unfair in it."""
    weighing = Weighing(proven)
    found = fairness(weighing)
    return found, list(unfair(found, weighing))


def case_lines(proven: Proven, everywhere: bool = True) -> Iterator[str]:
    """What it is, what happened, its verdicts, its claims and what play refuses.

    Parameters
    ----------
    proven : the puzzle, as its own seed draws it.
    everywhere : whether its claims hold for other seeds too.
    """
    yield f"a puzzle, {proven.case.title}. It holds{'' if everywhere else ' with its own seed'}."
    yield f"  happened       {derived(proven)}"
    yield f"  what differs   {', '.join(proven.days.differences) or 'nothing'}"
    for choice in proven.case.choices:
        blames = " and ".join(choice.blames) + ("" if choice.load is None else f", load {choice.load}")
        yield f"  {VERDICTS[rightness(choice, proven.truth)]:<15}{choice.id} ({blames})"
    for id, claim in proven.case.proof.items():
        yield f"  {claim:<15}{id}, {_days(proven.happened.shift(id))}"
    for id, why in proven.refusals.items():
        yield f"  refused        in play: {id}, which {REFUSED[why]}"


def held_lines(held: Held) -> Iterator[str]:
    """How far its claims hold for other seeds."""
    yield f"  other seeds    claims hold in at least {held.share:.0%} of the draws, at every end of the sizes"


def derived(proven: Proven) -> str:
    """The truth as it follows from the two days."""
    load = "" if proven.truth.load is None else f", load {proven.truth.load}"
    sizes = ["" if size is None else f" {size:.3g}" for size in proven.happened.sizes]
    causes = [f"{id}{size}" for id, size in zip(proven.truth.causes, sizes, strict=True)]
    return f"{' and '.join(causes)} ({' and '.join(proven.truth.groups)}{load})"


def _days(shift: Shift) -> str:
    """Both readings as an engineer would write them down."""
    return f"{_value(shift.yesterday)} yesterday, {_value(shift.today)} today"


def _value(reading: Reading | None) -> str:
    if reading is None:
        return "not there"
    shown = printed(reading)
    key = shown.__struct_fields__[1]
    unit, _ = UNITS[key]
    if reading.off_scale is not None:
        return "below the scale" if reading.off_scale == "low" else "above the scale"
    return "no reading" if reading.value is None else f"{reading_text(key, getattr(shown, key))} {unit}"


def fairness_lines(found: Fairness) -> Iterator[str]:
    """What many draws of it say."""
    seen = f"{found.group:.2f} for its group, {found.cause:.2f} for the cause itself"
    checks = "1 check" if found.checks == 1 else f"{found.checks:g} checks"
    yield f"  found          {seen}"
    yield f"  best way       {checks}, {found.cost:g} min, {found.led:.0f} points"
    yield f"  decides        rightly in {found.decided:.0%} of the plays, who goes the best way"
    earned = ", ".join(f"{habit} {points:.0f}" for habit, points in found.habits.items())
    yield f"  habits earn    {earned}"


def last_line(faults: Sequence[InputError]) -> str:
    """Whether it is fair, in plain words; what is not is told by itself."""
    if not faults:
        return "Fair: the truth can be found, no wrong verdict fits as well, and it takes a look to be right."
    places = ", ".join(dict.fromkeys(fault.where for fault in faults))
    return f"Not fair yet. To be mended, as told for each: {places}."


def collection_lines(every: Sequence[Played]) -> Iterator[str]:
    """What happens in a collection, who blames the machine, and what habits earn of what looking earns."""
    count = len(every)
    happened = ", ".join(f"{group} {number}" for group, number in groups(every).items())
    blamed, right = machine_blamed(every)
    yield f"{count} puzzles: {happened}"
    yield f"  the teller blames the machine in {blamed}, rightly in {right}"
    for habit, share in shares(every).items():
        yield f"  {habit:<15}earns {share:.0%} of what looking earns"
