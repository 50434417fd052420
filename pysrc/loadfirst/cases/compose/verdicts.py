"""The verdicts of a composed case, each with a reply made from what the model says of it."""

from __future__ import annotations

from typing import Any

from loadfirst.cases.compose.against import Against, speaks
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.guess import Guess, usually
from loadfirst.cases.compose.lead import Lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.offer import Check
from loadfirst.cases.compose.pieces import capital, fill, pieces
from loadfirst.cases.safety import DISMANTLES
from loadfirst.causes.cause import Cause

FACTS = 3
"""Readings that the right verdict's reply names, at most."""

Choice = dict[str, Any]
"""A verdict as its file has it."""


def verdicts(
    morning: Morning, of: Lead, wrong: list[Guess], checks: list[Check], chance: Chance
) -> list[Choice]:
    """All of them, in an order that tells nothing."""
    choices, used = [_right(morning, of, checks, chance)], list[str]()
    for one in wrong:
        against = speaks(morning, one, of.told, list(morning.sure), used)
        used += [against.id] if against else []
        choices.append(_wrong(morning, one, against, checks, chance))
    return chance.mixed("choices", choices)


def _right(morning: Morning, of: Lead, checks: list[Check], chance: Chance) -> Choice:
    texts, about = pieces("verdicts"), morning.subject
    moved = _told_first(
        morning, of, [id for id in chance.mixed("facts", list(morning.sure)) if morning.sure[id] != "same"]
    )
    still = _told_first(
        morning, of, [id for id in chance.mixed("still", list(morning.sure)) if morning.sure[id] == "same"]
    )
    named = [*moved, *still][:FACTS]
    facts = [fill(texts["shift"][morning.sure[id]], **morning.place.instrument(id)) for id in named]
    opening = fill(chance.pick("right", texts["right"]["moved" if moved else "still"]), facts=_listed(facts))
    because = " ".join(_because(one, chance) for one in about.causes)
    choice = _said(morning, usually(*about.causes), f"{opening} {because}")
    shows = {id for cause in about.causes for id in cause.shown_by if id not in DISMANTLES}
    own = next((one for one in checks if one.get("observes") in shows), None)
    if own is not None:
        choice["when_seen"] = {own["id"]: texts["right"]["looked"]}
        choice["when_unseen"] = {own["id"]: fill(texts["right"]["overlooked"], check=own["says"])}
    return choice


def _because(cause: Cause, chance: Chance) -> str:
    """What a cause has to do with load and pump: of its own, or as its group."""
    table = pieces("verdicts")["because"]
    kind = cause.id.removeprefix("second-pump-") if cause.id not in table["of"] else cause.id
    said: str = chance.pick(f"because.{cause.id}", table["of"].get(kind, table[cause.group]))
    return said


def _told_first(morning: Morning, of: Lead, some: list[str]) -> list[str]:
    return sorted(some, key=lambda id: (id != of.told, _at_rest(morning, id), "level" in id))


def _at_rest(morning: Morning, id: str) -> bool:
    """Whether it is the current or the speed of a pump that stands on both days: it speaks of nothing."""
    one = morning.shifts[id]
    greatest = max(day.value or 0.0 for day in (one.yesterday, one.today) if day is not None)
    return id.startswith(("ammeter", "tachometer")) and greatest <= (one.explained or 0.0)


def said(morning: Morning, one: Guess) -> str:
    """A verdict in words."""
    lines = [morning.place.lines(cause)[0] for cause in one.causes]
    return lines[0] if len(lines) == 1 else " ".join([pieces("verdicts")["both"], *lines])


def _said(morning: Morning, one: Guess, reply: str) -> Choice:
    return {
        "id": one.id,
        "says": said(morning, one),
        "blames": [cause.id for cause in one.causes],
        "reply": reply,
    }


def _listed(facts: list[str]) -> str:
    if len(facts) == 1:
        return capital(facts[0])
    return capital(", ".join(facts[:-1]) + ", and " + facts[-1])


def _wrong(
    morning: Morning, one: Guess, against: Against | None, checks: list[Check], chance: Chance
) -> Choice:
    texts, about = pieces("verdicts"), morning.subject
    name = one.id
    partly = "part" if len(one.causes) == 1 else "half"
    half = f"{chance.pick(f'half.{name}', texts[partly])} " if one.families & about.families else ""
    because = _because(one.causes[0], chance)
    if against is None:
        shows = [id for cause in (*one.causes, *about.causes) for id in cause.shown_by]
        looks = {check["observes"]: check for check in checks if "observes" in check}
        parts = next((looks[id] for id in shows if id in looks), checks[-1])
        return _said(morning, one, f"{half}{fill(texts['even']['pieces'][0], check=parts['says'])} {because}")
    nothing = one.group == "nothing"
    some = (
        texts["unchanged"][against.real] if nothing else texts[against.table][against.supposed][against.real]
    )
    text = fill(chance.pick(f"against.{name}", some), **morning.place.instrument(against.id))
    return _said(morning, one, f"{half}{text} {because}") | _read(against.id, name, checks, chance)


def _read(id: str, name: str, checks: list[Check], chance: Chance) -> dict[str, dict[str, str]]:
    """What is added if the reading that speaks against a verdict was taken, and if it was not."""
    of = next((one for one in checks if id in one.get("reads", ()) and "does" not in one), None)
    if of is None:
        return {}
    texts = pieces("verdicts")["read"]
    unseen = fill(chance.pick(f"unseen.{name}", texts["unseen"]), minutes=f"{of['minutes']:g}")
    return {"when_seen": {id: chance.pick(f"seen.{name}", texts["seen"])}, "when_unseen": {id: unseen}}
