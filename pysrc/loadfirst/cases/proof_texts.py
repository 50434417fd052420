"""What the texts of a case claim, whichever of its words are drawn."""

from __future__ import annotations

from loadfirst.cases.case import Case
from loadfirst.cases.direction_words import contradictions
from loadfirst.cases.happened import Happened
from loadfirst.cases.numbers import numbers
from loadfirst.cases.proof_hints import seen_by_then, stands_for_nothing
from loadfirst.cases.scope import bare_texts, names_too_much, texts
from loadfirst.cases.words import Placeholder, placeholders, refuse_typed_numbers
from loadfirst.errors import InputError


def texts_hold(what: Happened) -> None:
    """Each reply is its verdict's own, no text tells too early, and none says what the numbers deny.

    Raises
    ------
    InputError
    """
    _replies_are_own(what.case)
    _texts_keep_silent(what)
    _words_agree(what)


def _replies_are_own(case: Case) -> None:
    replies = [" ".join(choice.reply.split()).casefold() for choice in case.choices]
    for number, reply in enumerate(replies):
        if reply in replies[:number]:
            same = case.choices[replies.index(reply)].id
            raise InputError(
                f"choices[{number}].reply",
                case.choices[number].reply,
                f"this verdict's own explanation: {same} has the same one",
                rule="together",
                same=same,
            )


def _texts_keep_silent(what: Happened) -> None:
    for where, bare in bare_texts(what.case):
        refuse_typed_numbers(bare, where, "Nothing is filled in there: leave it out.")
    for text in texts(what.case):
        refuse_typed_numbers(text.text, text.where)
        for place in placeholders(text.text, text.where):
            _stands_for_something(place, text.where, what)
            if names_too_much(text, place):
                hint, facts = seen_by_then(what.case, text, place)
                raise InputError(
                    text.where, f"{{{place}}}", "free of what the learner cannot have seen by then", hint,
                    rule="too-early", **facts,
                )  # fmt: skip


def _stands_for_something(place: Placeholder, where: str, what: Happened) -> None:
    if what.quantity(place.day, place.source) is None:
        hint, facts = stands_for_nothing(place, what)
        raise InputError(
            where,
            f"{{{place}}}",
            "a placeholder for a reading on its scale or a numeric plant key",
            hint,
            rule="lookup",
            **facts,
        )


def _words_agree(what: Happened) -> None:
    """What the prose says of a reading that it quotes from both days."""
    for text in texts(what.case):
        for found in contradictions(text.text, lambda id: _change(what, id)):
            raise InputError(
                text.where, found.passage, f"what the numbers say: {numbers(what.shift(found.id))}",
                f"The word {found.word!r} says the other way.", rule="proof",
            )  # fmt: skip


def _change(what: Happened, id: str) -> float | None:
    known = {*what.days.yesterday.readings, *what.tested_readings}
    return what.shift(id).change if id in known else None
