"""After the verdict: the explanation it deserves, the truth, and the path that led there."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from typing import Any, Protocol

from loadfirst.cases.case import Choice
from loadfirst.cases.moves import Play
from loadfirst.cases.proof import Proven
from loadfirst.cases.safety import DISMANTLES, harmful
from loadfirst.cases.scope import hits
from loadfirst.cases.truth import groups_of, right_choice, rightness
from loadfirst.cases.view import (
    Difference,
    Happening,
    Path,
    Pointer,
    ReadingView,
    Reveal,
    Step,
    StripDown,
    Verdict,
)
from loadfirst.cases.words import Prose, filled
from loadfirst.causes.catalogue import cause
from loadfirst.causes.remedy import MINUTES, fitting, judge
from loadfirst.days.meeting import meeting
from loadfirst.days.reason import reasons
from loadfirst.days.shift import Shift
from loadfirst.days.two_days import Days, key_quantity
from loadfirst.instruments.panel import Reading
from loadfirst.plant.edits import apply_edits
from loadfirst.units import TO_SI


class Answerer(Protocol):
    """Gives the whole answer of a complete plant object, at a look and after what was shown before."""

    def __call__(
        self, data: dict[str, Any], *, look: int = 0, before: Mapping[str, Reading] | None = None
    ) -> Any: ...


def reading_view(shift: Shift) -> ReadingView:
    """One instrument on both days, as the page shows it."""
    known = [reading for reading in (shift.yesterday, shift.today) if reading is not None]
    return ReadingView(
        id=shift.id,
        quantity=shift.quantity,
        low=known[-1].low,
        high=known[-1].high,
        accuracy=max(reading.accuracy or 0.0 for reading in known),
        explained=shift.explained,
        yesterday=_pointer(shift.yesterday),
        today=_pointer(shift.today),
        moved=shift.moved,
    )


def _pointer(reading: Reading | None) -> Pointer:
    return Pointer(None, None) if reading is None else Pointer(reading.value, reading.off_scale)


def verdict(proven: Proven, play: Play, seen: Collection[str]) -> Verdict | None:
    """The committed verdict with its explanation, None before.

    The explanation ends with what the author adds for readings and checks that this learner
    took or left; `seen` are the readings that stand open.
    """
    if play.verdict is None or play.action is None:
        return None
    taken = {*seen, *(check.id for check in play.checks)}
    judged = judge(play.action, proven.truth.causes, harmful(proven.days.today))
    return Verdict(
        play.verdict.id, rightness(play.verdict, proven.truth), _reply(proven, play.verdict, taken),
        play.action, *judged,
    )  # fmt: skip


def reveal(proven: Proven, play: Play, answer: Answerer) -> Reveal | None:
    """What really happened, None before the verdict is committed."""
    if play.verdict is None:
        return None
    days, truth = proven.days, proven.truth
    right = right_choice(proven.case, truth)
    shifts = [proven.happened.shift(id) for id in days.yesterday.readings]
    return Reveal(
        happened=_happened(proven),
        load=truth.load,
        differences=[_difference(days, key) for key in days.differences],
        right_choice=right.id,
        fitting=list(dict.fromkeys(action for id in truth.causes for action in fitting(id))),
        why=_reply(proven, right, None),
        readings=[reading_view(shift) for shift in shifts],
        reasons=reasons(days, meeting(days), shifts),
        telling=[check.id for check in proven.case.checks if hits(proven.case, check)],
        yesterday=answer(days.yesterday.data),
        today=answer(days.today.data, look=1, before=days.yesterday.readings),
        plant=_standing(days),
        path=_path(proven, play, play.verdict),
    )


def _standing(days: Days) -> dict[str, Any]:
    """Today's plant as it can be opened by itself: a gauge shut off overnight says what it keeps."""
    kept: dict[str, Any] = {}
    for name in ("suction", "discharge", "after_valve"):
        fault = getattr(days.today.settled.plant.gauges, name).fault
        shown = days.yesterday.readings[f"gauge-{name.replace('_', '-')}"].value
        if fault.root_valve == "shut" and fault.frozen_bar is None and shown is not None:
            kept[f"gauges.{name}.fault.frozen_bar"] = shown / TO_SI["bar"]
    return apply_edits(days.today.data, kept)


def _happened(proven: Proven) -> list[Happening]:
    units = [one.size.unit if one.size else "-" for one in map(cause, proven.truth.causes)]
    groups = [cause(id).group for id in proven.truth.causes]
    together = zip(proven.truth.causes, groups, proven.happened.sizes, units, strict=True)
    return [Happening(*each) for each in together]


def _reply(proven: Proven, choice: Choice, taken: Collection[str] | None) -> Prose:
    """The explanation of a verdict; with `taken` None only the part that holds for everybody."""
    where = f"choices[{proven.case.choices.index(choice)}]"
    extra = [] if taken is None else list(_conditional(choice, taken))
    return [
        paragraph
        for text in (choice.reply, *extra)
        for paragraph in filled(text, where, proven.happened.quantity)
    ]


def _conditional(choice: Choice, taken: Collection[str]) -> Iterator[str]:
    yield from (text for key, text in choice.when_seen.items() if key in taken)
    yield from (text for key, text in choice.when_unseen.items() if key not in taken)


def _difference(days: Days, key: str) -> Difference:
    (before_kind, before), (after_kind, after) = (key_quantity(key, value) for value in days.differences[key])
    return Difference(key, before_kind or after_kind, before, after)  # one may have been left out


def _path(proven: Proven, play: Play, decided: Choice) -> Path:
    assert play.prediction is not None  # `follow` lets no verdict come before it
    stripped = any(check.observes in DISMANTLES for check in play.checks)
    outcome = _strip_down(proven, stripped, decided, play)
    offered = [check.minutes for check in proven.case.checks if check.observes in DISMANTLES]
    takes = max(offered, default=MINUTES["overhaul"])
    return Path(
        steps=[Step(check.id, check.minutes, check.money) for check in play.checks],
        refused=[check.id for check in play.refused],
        minutes=play.minutes,
        money=play.money,
        lost=takes if outcome == "needless" else 0.0,
        strip_minutes=takes,
        suspected=play.prediction.suspects,
        suspicion_right=play.prediction.suspects in proven.truth.groups,
        strip_down=outcome,
    )


def _strip_down(proven: Proven, stripped: bool, decided: Choice, play: Play) -> StripDown:
    """A strip-down is done by the check, or follows from blaming the machine or having it overhauled."""
    wanted = stripped or play.action == "overhaul" or groups_of(decided) == {"machine"}
    if "machine" in proven.truth.groups:
        return "warranted" if wanted else "missed"
    return "needless" if wanted else "avoided"
