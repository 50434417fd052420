"""The verdicts of a composed case, each with a reply made from what the model says of it."""

from __future__ import annotations

from typing import Any

from loadfirst.cases.compose.against import Against, speaks
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.lead import Lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.offer import Check
from loadfirst.cases.compose.pieces import capital, fill, instrument, pieces
from loadfirst.cases.compose.subject import Level
from loadfirst.cases.safety import DISMANTLES
from loadfirst.cases.truth import family
from loadfirst.causes.cause import Cause
from loadfirst.evidence.suspects import Suspect

WRONG: dict[Level, int] = {"first-steps": 3, "operator": 4, "engineer": 5}
"""Wrong verdicts on offer."""
LEAST = 2
"""Wrong verdicts on offer even where little else can be thought of."""
THINKABLE = 0.002
"""Probability, by what stands open at first, from which somebody might think of it. [-]"""
FACTS = 3
"""Readings that the right verdict's reply names, at most."""

Choice = dict[str, Any]
"""A verdict as its file has it."""


def rivals(morning: Morning, of: Lead) -> list[Suspect]:
    """The wrong verdicts: the teller's, then the likeliest by what stands open, other groups first."""
    truth = morning.subject.cause
    chosen: list[Suspect] = [] if _same(_cause(of.blamed), truth) else [of.blamed]
    likely = [one for one in of.suspects if one.probability > THINKABLE]
    for some in (_fresh(truth, chosen, likely), likely, of.suspects):
        for one in some:
            enough = len(chosen) >= (LEAST if some is of.suspects else WRONG[morning.subject.level])
            if not enough and not any(_same(_cause(one), _cause(other)) for other in chosen):
                chosen.append(one)
    return chosen


def _fresh(truth: Cause, chosen: list[Suspect], likely: list[Suspect]) -> list[Suspect]:
    """The likeliest of each group that is not on offer yet."""
    groups = {truth.group, *(_cause(one).group for one in chosen)}
    first = {_cause(one).group: one for one in reversed(likely)}
    return [one for one in likely if _cause(one).group not in groups and first[_cause(one).group] is one]


def _cause(one: Suspect) -> Cause:
    return one.hypothesis.causes[0]


def _same(one: Cause, other: Cause) -> bool:
    return family(one.id) == family(other.id)


def verdicts(
    morning: Morning, of: Lead, wrong: list[Suspect], checks: list[Check], chance: Chance
) -> list[Choice]:
    """All of them, in an order that tells nothing."""
    seen = [id for id in morning.shifts if _quotable(morning, id)]
    choices, used = [_right(morning, seen, checks, chance)], list[str]()
    for one in wrong:
        against = speaks(morning, one, of.told, seen, used)
        used += [against.id] if against else []
        choices.append(_wrong(morning, one, against, checks, chance))
    return chance.mixed("choices", choices)


def _quotable(morning: Morning, id: str) -> bool:
    return None not in (morning.days.quantity("yesterday", id), morning.days.quantity("today", id))


def _right(morning: Morning, seen: list[str], checks: list[Check], chance: Chance) -> Choice:
    texts, truth = pieces("verdicts"), morning.subject.cause
    mixed = chance.mixed("facts", seen)
    moved = [id for id in mixed if morning.shifts[id].moved != "same"]
    named = [*moved, *(id for id in mixed if id not in moved)][:FACTS]
    facts = [fill(texts["shift"][morning.shifts[id].moved], **instrument(id)) for id in named]
    opening = fill(chance.pick("right", texts["right"]["moved" if moved else "still"]), facts=_listed(facts))
    choice = _said(truth, f"{opening} {chance.pick('because', texts['because'][truth.group])}")
    own = next((one for one in checks if one.get("observes") in truth.shown_by), None)
    if own is not None and own["observes"] not in DISMANTLES:
        choice["when_seen"] = {own["id"]: fill(texts["right"]["looked"], check=own["says"])}
        choice["when_unseen"] = {own["id"]: fill(texts["right"]["overlooked"], check=own["says"])}
    return choice


def _said(cause: Cause, reply: str) -> Choice:
    return {"id": cause.id, "says": cause.says, "blames": [cause.id], "reply": reply}


def _listed(facts: list[str]) -> str:
    if len(facts) == 1:
        return capital(facts[0])
    return capital(", ".join(facts[:-1]) + ", and " + facts[-1])


def _wrong(
    morning: Morning, one: Suspect, against: Against | None, checks: list[Check], chance: Chance
) -> Choice:
    texts, cause = pieces("verdicts"), _cause(one)
    because = chance.pick(f"because.{cause.id}", texts["because"][cause.group])
    if against is None:
        shows = {*morning.subject.cause.shown_by, *cause.shown_by}
        parts = next((check for check in checks if check.get("observes") in shows), checks[-1])
        return _said(cause, f"{fill(texts['even']['pieces'][0], check=parts['says'])} {because}")
    some = texts[against.table][against.supposed][against.real]
    said = fill(chance.pick(f"against.{cause.id}", some), **instrument(against.id))
    return _said(cause, f"{said} {because}") | _read(against.id, cause, checks, chance)


def _read(id: str, cause: Cause, checks: list[Check], chance: Chance) -> dict[str, dict[str, str]]:
    """What is added if the reading that speaks against a verdict was taken, and if it was not."""
    of = next((one for one in checks if id in one.get("reads", ()) and "does" not in one), None)
    if of is None:
        return {}
    texts = pieces("verdicts")["read"]
    unseen = fill(chance.pick(f"unseen.{cause.id}", texts["unseen"]), minutes=f"{of['minutes']:g}")
    return {"when_seen": {id: chance.pick(f"seen.{cause.id}", texts["seen"])}, "when_unseen": {id: unseen}}
