"""Names in a case: known ones, and each once."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from loadfirst.cases.case import Case
from loadfirst.cases.scope import READINGS
from loadfirst.cases.truth import GROUPS
from loadfirst.causes.catalogue import CAUSES, cause
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.errors import InputError
from loadfirst.plant.near import nearest
from loadfirst.plant.places import inside

MANY = 20
"""Names beyond so many are not all told in a sentence."""


def names_are_known(case: Case) -> None:
    """Causes, groups and observations are those of the catalogue. Raises InputError."""
    for number, change in enumerate(case.today):
        with inside(f"today[{number}]"):
            cause(change.cause)
    ids = [each.id for each in CAUSES]
    for number, choice in enumerate(case.choices):
        for name in choice.blames:
            if name not in GROUPS and name not in ids:
                near = nearest(name, [*GROUPS, *ids])
                hint = f"Did you mean {near}?" if near else "`python -m loadfirst causes` prints them."
                raise InputError(
                    f"choices[{number}].blames", name, "a group or the id of a cause", hint, rule="choice",
                    choices=[*GROUPS, *ids], **({"nearest": near} if near else {}),
                )  # fmt: skip
    for number, check in enumerate(case.checks):
        if check.observes is not None:
            known_names(f"checks[{number}].observes", [check.observes], OBSERVATIONS)


def names_are_single(case: Case) -> None:
    """No id twice, and none that could mean another thing. Raises InputError."""
    for number, choice in enumerate(case.choices):
        once = len(set(choice.blames)) == len(choice.blames)
        if not once or ("nothing" in choice.blames and len(choice.blames) > 1):
            raise InputError(
                f"choices[{number}].blames", ", ".join(choice.blames),
                "either nothing or causes and groups, each once", rule="together",
            )  # fmt: skip
    _single("checks", [check.id for check in case.checks])
    for number, check in enumerate(case.checks):
        if check.id in READINGS:  # `when_seen` could mean either
            raise InputError(
                f"checks[{number}].id", check.id, "a name that no instrument bears", rule="together"
            )
    _single("choices", [choice.id for choice in case.choices])


def _single(where: str, ids: list[str]) -> None:
    for number, id in enumerate(ids):
        if id in ids[:number]:
            raise InputError(f"{where}[{number}].id", id, "a name that no other one bears", rule="together")


def known_names(where: str, ids: Iterable[str], known: Collection[str]) -> None:
    """Each of these is one of those that there are. Raises InputError."""
    for id in ids:
        if id not in known:
            near = nearest(id, list(known))
            few = "" if len(known) > MANY else f": {', '.join(known)}"
            hint = f"Did you mean {near}?" if near else "" if few else "The guide of the cases has a list."
            every = f"one of {len(known)} that there are{few}"
            facts = {"choices": list(known)} | ({"nearest": near} if near else {})
            raise InputError(where, id, every, hint, rule="choice", **facts)
