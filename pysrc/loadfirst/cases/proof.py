"""A case is proven before anybody plays it: what the author claims, the physics has to bear out.

Each test below refuses one kind of mistake and says where it stands.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from loadfirst.cases.case import Case, LoadChange
from loadfirst.cases.days import Days
from loadfirst.cases.derive import is_right, load_change, moved, truth_of, unexplained_from
from loadfirst.cases.groups import LOAD_GROUPS
from loadfirst.cases.scope import can_be_seen, names_too_much, seen_at_first, texts, told
from loadfirst.cases.words import Placeholder, placeholders, refuse_typed_numbers
from loadfirst.causes.group import Group
from loadfirst.errors import InputError
from loadfirst.instruments.panel import Reading

_MOVES = {"rises": "up", "falls": "down", "same": "same"}


@dataclass(frozen=True)
class Proven:
    """A case whose claims hold, with both days computed and the truth derived."""

    id: str
    case: Case
    days: Days
    truth: Group
    load: LoadChange | None


def prove(id: str, case: Case, days: Days) -> Proven:
    """Test every claim of a case.

    Raises
    ------
    InputError
        At the first claim that does not hold.
    """
    _names_are_single(case)
    _readings_exist(case, days)
    _checks_tell_something(case)
    _prediction_is_open(case)
    _conditions_can_be_met(case)
    _replies_are_own(case)
    _texts_keep_silent(case, days)
    truth = truth_of(case, days)
    load = load_change(truth, days)
    _one_choice_is_right(case, truth, load)
    _readings_differ(case, days, truth)
    _proof_holds(case, days)
    return Proven(id, case, days, truth, load)


def _names_are_single(case: Case) -> None:
    _single("checks", [check.id for check in case.checks])
    _single("choices", [choice.id for choice in case.choices])


def _single(where: str, ids: list[str]) -> None:
    for number, id in enumerate(ids):
        if id in ids[:number]:
            raise InputError(f"{where}[{number}].id", id, "a name that no other one bears", rule="together")


def _readings_exist(case: Case, days: Days) -> None:
    known = list(days.yesterday.readings)
    _known("prediction.reading", [case.prediction.reading], known)
    _known("shown.at_first", case.shown.at_first, known)
    for number, check in enumerate(case.checks):
        _known(f"checks[{number}].reads", check.reads, known)
    _known("proof", case.proof, known)


def _known(where: str, ids: Iterable[str], known: Collection[str]) -> None:
    for id in ids:
        if id not in known:
            raise InputError(where, id, f"one of {', '.join(known)}", rule="choice", choices=list(known))


def _checks_tell_something(case: Case) -> None:
    for number, check in enumerate(case.checks):
        if not (check.result or check.reads or check.strips_down):
            raise InputError(
                f"checks[{number}].result", None, "given where the check reads no instrument", rule="missing"
            )
    if sum(check.strips_down for check in case.checks) > 1:
        raise InputError("checks", "strips_down", "true in one check at most", rule="together")


def _prediction_is_open(case: Case) -> None:
    reading = case.prediction.reading
    if reading in told(case):
        raise InputError(
            "prediction.reading", reading, "a reading that the story does not tell", rule="together"
        )
    if reading not in can_be_seen(case):
        raise InputError(
            "prediction.reading", reading, "a reading shown at first or read by a check", rule="together"
        )


def _conditions_can_be_met(case: Case) -> None:
    known = [*can_be_seen(case), *(check.id for check in case.checks)]
    always = seen_at_first(case)
    for number, choice in enumerate(case.choices):
        _known(f"choices[{number}].when_seen", choice.when_seen, known)
        _known(f"choices[{number}].when_unseen", choice.when_unseen, [id for id in known if id not in always])
        if choice.load is not None and choice.blames not in LOAD_GROUPS:
            raise InputError(
                f"choices[{number}].load",
                choice.load,
                f"left out with blames = '{choice.blames}'",
                rule="together",
            )


def _replies_are_own(case: Case) -> None:
    replies = [" ".join(choice.reply.split()).casefold() for choice in case.choices]
    for number, reply in enumerate(replies):
        if reply in replies[:number]:
            raise InputError(
                f"choices[{number}].reply",
                case.choices[number].reply,
                "this verdict's own explanation",
                rule="together",
            )


def _texts_keep_silent(case: Case, days: Days) -> None:
    for text in texts(case):
        refuse_typed_numbers(text.text, text.where)
        for place in placeholders(text.text, text.where):
            _stands_for_something(place, text.where, days)
            if names_too_much(text, place):
                raise InputError(
                    text.where,
                    f"{{{place}}}",
                    "free of what the learner cannot have seen by then",
                    "It would give away a reading or today's plant too early.",
                    rule="too-early",
                )


def _stands_for_something(place: Placeholder, where: str, days: Days) -> None:
    if days.quantity(place) is None:
        raise InputError(
            where,
            f"{{{place}}}",
            "a placeholder for a reading on its scale or a numeric plant key",
            f"Readings here: {', '.join(days.yesterday.readings)}.",
            rule="lookup",
            choices=list(days.yesterday.readings),
        )


def _one_choice_is_right(case: Case, truth: Group, load: LoadChange | None) -> None:
    right = [choice.id for choice in case.choices if is_right(choice, truth, load)]
    derived = truth if load is None else f"{truth}, load {load}"
    if not right:
        blamed = ", ".join(choice.blames for choice in case.choices)
        raise InputError(
            "choices", blamed, f"with the truth among them ({derived})", rule="truth", group=truth, load=load
        )
    if len(right) > 1:
        raise InputError(
            "choices", ", ".join(right), f"with one verdict that is right ({derived}), not {len(right)}",
            "Say with `load` whether it became lighter or heavier.", rule="truth", group=truth, load=load,
        )  # fmt: skip


def _readings_differ(case: Case, days: Days, truth: Group) -> None:
    visible = can_be_seen(case)
    differ = [id for id in visible if moved(days, id) not in ("same", None)]
    if not differ and truth != "nothing":
        raise InputError(
            "today.plant",
            ", ".join(days.differences),
            "such that an instrument on offer moves by more than it can by itself",
            rule="days",
        )


def _proof_holds(case: Case, days: Days) -> None:
    for id, claim in case.proof.items():
        yesterday, today = days.reading(id)
        actual = moved(days, id)
        if actual != _MOVES[claim]:
            error = unexplained_from(days, id)
            numbers = f"from {_number(yesterday)} to {_number(today)}, by itself {error:.3g}, in SI units"
            computed = next((word for word, way in _MOVES.items() if way == actual), "no reading")
            raise InputError(f"proof.{id}", claim, f"what is computed: {computed} ({numbers})", rule="proof")


def _number(reading: Reading) -> str:
    return "nothing" if reading.value is None else f"{reading.value:.4g}"
