"""What a composed case offers to do: readings left, things to look at, a test, the strip-down."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.lead import Lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.pieces import pieces
from loadfirst.cases.compose.subject import shut_in, tests_at
from loadfirst.cases.safety import DISMANTLES
from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.cause import Cause
from loadfirst.days.two_days import flat
from loadfirst.evidence.suspects import Suspect

Check = dict[str, Any]
"""A check as its file has it."""


def offer(morning: Morning, of: Lead, rivals: list[Suspect], chance: Chance) -> list[Check]:
    """The checks, readings first and the strip-down last.

    Parameters
    ----------
    rivals : the wrong verdicts on offer, the likeliest first.
    """
    looks = chance.mixed("looks", _observed(morning, rivals, chance))
    return [
        *_readings(morning, of, chance),
        *(_look(id) for id in looks),
        *({**_plain(), "says": chance.pick("shut-in", _texts())} for _ in tests_at(morning.subject.plant)),
        _look(_strip_down(morning)),
    ]


def _readings(morning: Morning, of: Lead, chance: Chance) -> Iterator[Check]:
    for id, reading in pieces("checks")["reading"].items():
        left = morning.shifts.keys() - {of.told, *of.at_first}
        reads = [one for one in reading["reads"] if one in left]
        if reads:
            says = chance.pick(f"says.{id}", reading["says"])
            yield {"id": id, "says": says, "minutes": reading["minutes"], "reads": reads}


def _observed(morning: Morning, rivals: list[Suspect], chance: Chance) -> list[str]:
    """What shows the truth, what would show a rival, something that shows neither; none dismantles."""
    truth = morning.subject.cause
    shows = [id for id in truth.shown_by if id not in DISMANTLES]
    chosen = [chance.pick("own", shows)] if shows else []
    of_rivals = [id for one in rivals for id in _of(one.hypothesis.causes[0]) if id not in truth.shown_by]
    chosen += of_rivals[:1]
    here = dict.fromkeys(id for one in _can_happen(morning) for id in _of(one))
    idle = [id for id in here if id not in (*truth.shown_by, *of_rivals)]
    return chosen + chance.mixed("idle", idle)[: 3 - len(chosen)]


def _of(cause: Cause) -> list[str]:
    return [id for id in cause.shown_by if id not in DISMANTLES]


def _can_happen(morning: Morning) -> list[Cause]:
    return [one for one in CAUSES if one.applies(morning.days.yesterday.resolved) is None]


def _look(id: str) -> Check:
    texts = pieces("checks")["observation"][id]
    return {
        "id": id, "says": texts["says"], "minutes": texts["minutes"],
        **({"money": texts["money"]} if "money" in texts else {}),
        "observes": id, "shows": texts["shows"], "shows_nothing": texts["shows_nothing"],
    }  # fmt: skip


def _texts() -> list[str]:
    says: list[str] = pieces("checks")["shut-in"]["says"]
    return says


def _plain() -> Check:
    test = shut_in()
    return {"id": test.id, "minutes": test.minutes, "does": flat(test.does), "reads": list(test.reads)}


def _strip_down(morning: Morning) -> str:
    """The one of both that shows what has happened, where one does."""
    own = [id for id in morning.subject.cause.shown_by if id in DISMANTLES]
    return own[0] if own else "gaps-measured"
