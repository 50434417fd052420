"""After the verdict: the explanation it deserves, the truth, and the path that led there."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from typing import Any

from loadfirst.cases.case import Choice
from loadfirst.cases.days import Days, key_quantity
from loadfirst.cases.derive import is_right, moved
from loadfirst.cases.moves import Play
from loadfirst.cases.proof import Proven
from loadfirst.cases.view import Difference, Path, Pointer, ReadingView, Reveal, Step, StripDown, Verdict
from loadfirst.cases.words import Prose, filled

Answerer = Callable[[dict[str, Any]], Any]
"""Gives the whole answer of a complete plant object."""


def reading_view(days: Days, id: str) -> ReadingView:
    """One instrument on both days, as the page shows it."""
    yesterday, today = days.reading(id)
    return ReadingView(
        id=id,
        quantity=today.quantity,
        low=today.low,
        high=today.high,
        accuracy=max(yesterday.accuracy or 0.0, today.accuracy or 0.0),
        yesterday=Pointer(yesterday.value, yesterday.off_scale),
        today=Pointer(today.value, today.off_scale),
        moved=moved(days, id),
    )


def verdict(proven: Proven, play: Play, seen: Collection[str]) -> Verdict | None:
    """The committed verdict with its explanation, None before.

    The explanation ends with what the author adds for readings and checks that this learner
    took or left; `seen` are the readings that stand open.
    """
    if play.verdict is None:
        return None
    taken = {*seen, *(check.id for check in play.checks)}
    return Verdict(play.verdict.id, _right(proven, play.verdict), _reply(proven, play.verdict, taken))


def reveal(proven: Proven, play: Play, answer: Answerer) -> Reveal | None:
    """What really happened, None before the verdict is committed."""
    if play.verdict is None:
        return None
    days = proven.days
    right = next(choice for choice in proven.case.choices if _right(proven, choice))
    return Reveal(
        truth=proven.truth,
        load=proven.load,
        differences=[_difference(days, key) for key in days.differences],
        right_choice=right.id,
        why=_reply(proven, right, None),
        readings=[reading_view(days, id) for id in days.yesterday.readings],
        yesterday=answer(days.yesterday.data),
        today=answer(days.today.data),
        plant=days.today.data,
        path=_path(proven, play, play.verdict),
    )


def _right(proven: Proven, choice: Choice) -> bool:
    return is_right(choice, proven.truth, proven.load)


def _reply(proven: Proven, choice: Choice, taken: Collection[str] | None) -> Prose:
    """The explanation of a verdict; with `taken` None only the part that holds for everybody."""
    where = f"choices[{proven.case.choices.index(choice)}]"
    extra = [] if taken is None else list(_conditional(choice, taken))
    return [
        paragraph
        for text in (choice.reply, *extra)
        for paragraph in filled(text, where, proven.days.quantity)
    ]


def _conditional(choice: Choice, taken: Collection[str]) -> Iterator[str]:
    yield from (text for key, text in choice.when_seen.items() if key in taken)
    yield from (text for key, text in choice.when_unseen.items() if key not in taken)


def _difference(days: Days, key: str) -> Difference:
    (before_kind, before), (after_kind, after) = (key_quantity(key, value) for value in days.differences[key])
    return Difference(key, before_kind or after_kind, before, after)  # one may have been left out


def _path(proven: Proven, play: Play, decided: Choice) -> Path:
    assert play.prediction is not None  # `follow` lets no verdict come before it
    stripped = any(check.strips_down for check in play.checks)
    outcome = _strip_down(proven, stripped, decided)
    cost = sum(check.minutes for check in proven.case.checks if check.strips_down)
    return Path(
        steps=[Step(check.id, check.minutes) for check in play.checks],
        minutes=play.minutes,
        lost=cost if outcome == "needless" else 0.0,
        suspected=play.prediction.suspects,
        suspicion_right=play.prediction.suspects == proven.truth,
        strip_down=outcome,
    )


def _strip_down(proven: Proven, stripped: bool, decided: Choice) -> StripDown:
    """A strip-down is done by the check or follows from blaming the machine."""
    wanted = stripped or decided.blames == "machine"
    if proven.truth == "machine":
        return "warranted" if wanted else "missed"
    return "needless" if wanted else "avoided"
