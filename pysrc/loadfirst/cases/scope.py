"""Which readings each text of a case may name, so that no text tells more than its turn allows.

Before the verdict a text may name only readings that every learner has seen
by then; what a check shows may name what the check itself reads, and plant keys
of today where it shows what is really there (a stem that was looked at);
explanations may name anything.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import NamedTuple, get_args

from loadfirst.cases.case import Case, Check, ReadingId
from loadfirst.cases.words import Placeholder, placeholders
from loadfirst.causes.catalogue import cause

READINGS: frozenset[str] = frozenset(get_args(ReadingId))


class Text(NamedTuple):
    """One text of a case.

    `may_name` holds the readings that a placeholder may stand for, None for all of them;
    `today_keys` tells whether it may show a plant key of today.
    """

    where: str
    text: str
    may_name: frozenset[str] | None
    today_keys: bool


def told(case: Case) -> list[str]:
    """Readings that the story itself tells, in its order."""
    named = (place.source for place in placeholders(case.story, "story"))
    return list(dict.fromkeys(source for source in named if source in READINGS))


def seen_at_first(case: Case) -> list[str]:
    """Readings that stand open once the prediction is committed: told ones, then those shown at first."""
    return list(dict.fromkeys([*told(case), *case.shown.at_first]))


def can_be_seen(case: Case) -> list[str]:
    """Every reading that a learner can come to see before the verdict."""
    read = [id for check in case.checks if not check.does for id in check.reads]
    return list(dict.fromkeys([*seen_at_first(case), *read]))


def worth_seeing(case: Case, open_now: Collection[str]) -> list[str]:
    """Readings of which the learner says what they show, before the verdict: told and foreseen ones."""
    asked = dict.fromkeys([*told(case), case.prediction.reading])
    return [id for id in asked if id in open_now]


def texts(case: Case) -> Iterator[Text]:
    """Every text of the case that may hold placeholders, with what it may name."""
    story, first = frozenset(told(case)), frozenset(seen_at_first(case))
    yield Text("story", case.story, story, False)
    yield Text("prediction.asks", case.prediction.asks, story, False)
    for number, hint in enumerate(case.hints):
        yield Text(f"hints[{number}].text", hint.text, first, False)
    for number, check in enumerate(case.checks):
        yield Text(f"checks[{number}].says", check.says, first, False)
        for name in ("shows", "shows_nothing"):
            text = getattr(check, name)
            if text is not None:
                open_to = first | frozenset(check.reads)
                yield Text(f"checks[{number}].{name}", text, open_to, name == "shows" and hits(case, check))
    for number, choice in enumerate(case.choices):
        yield Text(f"choices[{number}].says", choice.says, first, False)
        yield Text(f"choices[{number}].reply", choice.reply, None, True)
        for table in ("when_seen", "when_unseen"):
            for key, text in getattr(choice, table).items():
                yield Text(f"choices[{number}].{table}.{key}", text, None, True)


def bare_texts(case: Case) -> Iterator[tuple[str, str]]:
    """Place and text of what stands on lists too, where there is nothing to fill in."""
    yield "title", case.title
    for name in ("teaches", "leaves_out"):
        yield from ((f"{name}[{number}]", text) for number, text in enumerate(getattr(case, name)))


def hits(case: Case, check: Check) -> bool:
    """Whether what a check looks at shows something that happened, and not a false alarm."""
    return any(check.observes in cause(change.cause).shown_by for change in case.today)


def names_too_much(text: Text, place: Placeholder) -> bool:
    """Whether this placeholder tells something before its time."""
    if ":" in place.source:  # what a test reads is known to those who made it
        return text.may_name is not None
    if place.source in READINGS:
        return text.may_name is not None and place.source not in text.may_name
    return place.day == "today" and not text.today_keys
