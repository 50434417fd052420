"""What a composed case offers to do: readings left, things to look at, a test, the strip-down."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.guess import Guess
from loadfirst.cases.compose.lead import Lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.pieces import fill, pieces
from loadfirst.cases.compose.place import Place
from loadfirst.cases.compose.subject import possible, shut_in, tests_at
from loadfirst.cases.safety import DISMANTLES
from loadfirst.causes.cause import Cause
from loadfirst.days.two_days import flat

Check = dict[str, Any]
"""A check as its file has it."""
OWN = 2
"""Things to look at that show what happened, at most."""
LOOKS = 5
"""Things to look at, as many of rivals as of what happened, where they have as many."""
MOST = 14
"""Checks that a case may have."""


def offer(morning: Morning, of: Lead, rivals: list[Guess], chance: Chance) -> list[Check]:
    """The checks, readings first and the strip-down last.

    Parameters
    ----------
    rivals : the wrong verdicts on offer, the likeliest first.
    """
    place = morning.place
    readings = list(_readings(morning, of, chance))
    tests = [{**_plain(), "says": chance.pick("shut-in", _texts())} for _ in tests_at(morning.subject.plant)]
    looks = _observed(morning, rivals, chance)[: MOST - len(readings) - len(tests) - 1]
    last = _look(_strip_down(morning, chance), place)
    return [*readings, *(_look(id, place) for id in chance.mixed("looks", looks)), *tests, last]


def _readings(morning: Morning, of: Lead, chance: Chance) -> Iterator[Check]:
    left = morning.shifts.keys() - {of.told, *of.at_first}
    for id, reading in pieces("checks")["reading"].items():
        reads = [one for one in reading["reads"] if one in left]
        says = reading["says"]
        if len(reads) == 1 < len(morning.shifts.keys() & {*reading["reads"]}):
            says = [fill(reading["one"], **morning.place.instrument(reads[0]))]
        if reads:
            text = fill(chance.pick(f"says.{id}", says), **morning.place.nouns)
            yield {"id": id, "says": text, "minutes": reading["minutes"], "reads": reads}


def _observed(morning: Morning, rivals: list[Guess], chance: Chance) -> list[str]:
    """What shows the truth, what would show rivals, something that shows neither; none dismantles."""
    truths = morning.subject.causes
    shows = [[id for id in cause.shown_by if id not in DISMANTLES] for cause in truths]
    most = OWN if len(truths) == 1 else 1
    own = dict.fromkeys(id for some in shows for id in chance.mixed("own", some)[:most])
    chosen = list(own)
    of_rivals = dict.fromkeys(
        id
        for one in rivals
        for cause in one.causes
        for id in _of(cause)
        if not any(id in some for some in shows)
    )
    chosen += list(of_rivals)[: max(LOOKS - len(chosen) - 1, 1)]
    here = dict.fromkeys(id for one in possible(morning.subject.plant) for id in _of(one))
    idle = [id for id in here if id not in of_rivals and not any(id in some for some in shows)]
    return chosen + chance.mixed("idle", idle)[: max(LOOKS - len(chosen), 0)]


def _of(cause: Cause) -> list[str]:
    return [id for id in cause.shown_by if id not in DISMANTLES]


def _look(id: str, place: Place) -> Check:
    texts = pieces("checks")["observation"][id]
    says, shows, nothing = (fill(texts[key], **place.nouns) for key in ("says", "shows", "shows_nothing"))
    money = {"money": texts["money"]} if "money" in texts else {}
    return {
        "id": id, "says": says, "minutes": texts["minutes"], **money,
        "observes": id, "shows": shows, "shows_nothing": nothing,
    }  # fmt: skip


def _texts() -> list[str]:
    says: list[str] = pieces("checks")["shut-in"]["says"]
    return says


def _plain() -> Check:
    test = shut_in()
    return {"id": test.id, "minutes": test.minutes, "does": flat(test.does), "reads": list(test.reads)}


def _strip_down(morning: Morning, chance: Chance) -> str:
    """One that shows what has happened, where one does; which of them is there otherwise, chance says."""
    own = [id for cause in morning.subject.causes for id in cause.shown_by if id in DISMANTLES]
    here = {id for cause in possible(morning.subject.plant) for id in cause.shown_by if id in DISMANTLES}
    return chance.pick("strip-down", own or sorted(here))
