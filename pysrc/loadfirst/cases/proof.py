"""A case is proven before anybody plays it: what the author claims, the physics has to bear out.

Each test below refuses one kind of mistake and says where it stands.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from loadfirst.cases.case import Case
from loadfirst.cases.claims import claims_hold
from loadfirst.cases.happened import Happened, happened
from loadfirst.cases.proof_checks import checks_hold
from loadfirst.cases.proof_hints import small_per_cent, wrong_way
from loadfirst.cases.proof_names import known_names, names_are_known, names_are_single
from loadfirst.cases.proof_texts import texts_hold
from loadfirst.cases.safety import Refusal, refusal
from loadfirst.cases.scope import can_be_seen, seen_at_first, texts, told
from loadfirst.cases.truth import LOAD_GROUPS, Truth, groups_of, rightness, truth_of
from loadfirst.cases.words import placeholders
from loadfirst.days.two_days import Days
from loadfirst.errors import InputError


@dataclass(frozen=True)
class Proven:
    """A case whose claims hold, drawn, with both days computed and the truth derived."""

    id: str
    happened: Happened
    truth: Truth

    @property
    def case(self) -> Case:
        """The case as it was drawn."""
        return self.happened.case

    @property
    def days(self) -> Days:
        """Both days."""
        return self.happened.days

    @cached_property
    def refusals(self) -> dict[str, Refusal]:
        """By the id of a check: why nobody should do it."""
        tests = self.happened.tests
        found = {
            check.id: refusal(check, tests[check.id].today if check.does else None, self.days.today)
            for check in self.case.checks
        }
        return {id: why for id, why in found.items() if why is not None}


def prove(id: str, case: Case) -> Proven:
    """Test every claim of a drawn case.

    Raises
    ------
    InputError
        At the first claim that does not hold.
    """
    names_are_known(case)
    what = happened(case)
    days = what.days
    names_are_single(case)
    _readings_exist(what)
    checks_hold(case, days.yesterday.resolved)
    _prediction_is_open(case)
    _conditions_can_be_met(case)
    texts_hold(what)
    truth = truth_of(case, days)
    _readings_differ(what, truth)
    one_choice_is_right(case, truth)
    proven = Proven(id, what, truth)
    _tests_are_made(proven)
    claims_hold(what)
    return proven


def _readings_exist(what: Happened) -> None:
    case, known = what.case, list(what.days.yesterday.readings)
    known_names("prediction.reading", [case.prediction.reading], known)
    known_names("shown.at_first", case.shown.at_first, known)
    for number, check in enumerate(case.checks):
        known_names(f"checks[{number}].reads", check.reads, known)
    known_names("proof", case.proof, [*known, *what.tested_readings])


def _prediction_is_open(case: Case) -> None:
    reading = case.prediction.reading
    if reading in told(case):
        raise InputError(
            "prediction.reading", reading, "a reading that the story does not tell", rule="together"
        )
    if reading not in can_be_seen(case):
        raise InputError(
            "prediction.reading", reading,
            "a reading shown at first or read by a check, not by a test alone", rule="together",
        )  # fmt: skip


def _conditions_can_be_met(case: Case) -> None:
    known = [*can_be_seen(case), *(check.id for check in case.checks)]
    always = seen_at_first(case)
    for number, choice in enumerate(case.choices):
        known_names(f"choices[{number}].when_seen", choice.when_seen, known)
        known_names(
            f"choices[{number}].when_unseen", choice.when_unseen, [id for id in known if id not in always]
        )
        if choice.load is not None and not LOAD_GROUPS.intersection(groups_of(choice)):
            raise InputError(
                f"choices[{number}].load",
                choice.load,
                "left out where no load is blamed",
                rule="together",
            )


def one_choice_is_right(case: Case, truth: Truth) -> None:
    """Of the verdicts on offer. Raises InputError where none is, or two are."""
    right = [choice.id for choice in case.choices if rightness(choice, truth) == "right"]
    derived = " and ".join(truth.causes) + ("" if truth.load is None else f", load {truth.load}")
    if not right:
        hint, facts = wrong_way(case, truth)
        blamed = ", ".join(" and ".join(choice.blames) for choice in case.choices)
        raise InputError(
            "choices", blamed, f"with the truth among them ({derived})", hint, rule="truth",
            groups=list(truth.groups), load=truth.load, **facts,
        )  # fmt: skip
    if len(right) > 1:
        raise InputError(
            "choices", ", ".join(right), f"with one verdict that is right ({derived}), not {len(right)}",
            "Name the cause, or say with `load` whether it became lighter or heavier.", rule="truth",
            groups=list(truth.groups), load=truth.load,
        )  # fmt: skip


def _readings_differ(what: Happened, truth: Truth) -> None:
    visible = can_be_seen(what.case)
    differ = [id for id in visible if what.shift(id).moved not in ("same", None)]
    if not differ and truth.groups != ("nothing",):
        hint, facts = small_per_cent(what.case)
        raise InputError(
            "today", ", ".join(truth.causes),
            "such that an instrument on offer moves by more than its scatter", hint, rule="days", **facts,
        )  # fmt: skip


def _tests_are_made(proven: Proven) -> None:
    """What a text or a claim says of a test was read by somebody."""
    refused = {check.id for check in proven.case.checks if check.id in proven.refusals and check.does}
    named = [(f"proof.{id}", id) for id in proven.case.proof]
    for text in texts(proven.case):
        named += [(text.where, place.source) for place in placeholders(text.text, text.where)]
    for where, source in named:
        check = source.rpartition(":")[0]
        if check in refused:
            raise InputError(
                where, source, "what a test reads that play does not refuse",
                f"{check} is refused: {proven.refusals[check]}.", rule="together",
            )  # fmt: skip
