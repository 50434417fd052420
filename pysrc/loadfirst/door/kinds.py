"""Every kind of ask: how long its body may be and who answers it. A new kind is one line here.

What the first reading does not need is imported when it is first asked for.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

import msgspec

from loadfirst.door.answer import answer, answer_plant
from loadfirst.door.messages import (
    TEXT_LARGEST,
    AnswerAsk,
    CatalogueAsk,
    CauseAsk,
    CausesAsk,
    ComposeAsk,
    DaysAsk,
    FileAsk,
    HideAsk,
    ShownAsk,
    StepAsk,
    UnveilAsk,
    decode_body,
)

Body = dict[str, Any]


class Kind(NamedTuple):
    """One kind of ask.

    Attributes
    ----------
    reply : callable
        Body of the ask to body of the reply, both plain data.
    longest : int
        Greatest length of the ask's body. [bytes]
    """

    reply: Callable[[Body], Body]
    longest: int


def _catalogue(body: Body) -> Body:
    from loadfirst.door.catalogue import catalogue

    decode_body(CatalogueAsk, body)
    return catalogue()


def _case(body: Body) -> Body:
    from loadfirst.cases.play import view

    shown: Body = msgspec.to_builtins(view(body, answer_plant))
    return shown


def _step(body: Body) -> Body:
    from loadfirst.door.step import step

    return step(decode_body(StepAsk, body))


def _file(body: Body) -> Body:
    from loadfirst.door.files import open_file

    return open_file(decode_body(FileAsk, body))


def _days(body: Body) -> Body:
    from loadfirst.door.days import days

    return days(decode_body(DaysAsk, body))


def _fair(body: Body) -> Body:
    from loadfirst.door.debrief import fair

    return fair(body)


def _debrief(body: Body) -> Body:
    from loadfirst.door.debrief import debriefed

    return debriefed(body)


def _worked(body: Body) -> Body:
    from loadfirst.door.debrief import worked

    return worked(body)


def _compose(body: Body) -> Body:
    from loadfirst.door.compose import composed

    return composed(decode_body(ComposeAsk, body))


def _causes(body: Body) -> Body:
    from loadfirst.door.causes import causes

    return causes(decode_body(CausesAsk, body))


def _cause(body: Body) -> Body:
    from loadfirst.door.causes import one_cause

    return one_cause(decode_body(CauseAsk, body))


def _hide(body: Body) -> Body:
    from loadfirst.door.hidden import hide

    return hide(decode_body(HideAsk, body))


def _shown(body: Body) -> Body:
    from loadfirst.door.hidden import shown

    return shown(decode_body(ShownAsk, body))


def _unveil(body: Body) -> Body:
    from loadfirst.door.hidden import reveal

    return reveal(decode_body(UnveilAsk, body))


KINDS = {
    "answer": Kind(lambda body: answer(decode_body(AnswerAsk, body)), 64 * 1024),
    "days": Kind(_days, 128 * 1024),
    "step": Kind(_step, 64 * 1024),
    "causes": Kind(_causes, 64 * 1024),
    "cause": Kind(_cause, 64 * 1024),
    "hide": Kind(_hide, 64 * 1024),
    "shown": Kind(_shown, 128 * 1024),
    "unveil": Kind(_unveil, 64 * 1024),
    "file": Kind(_file, 2 * TEXT_LARGEST),
    "catalogue": Kind(_catalogue, 1024),
    "case": Kind(_case, 2 * TEXT_LARGEST),
    "debrief": Kind(_debrief, 2 * TEXT_LARGEST),
    "worked": Kind(_worked, 2 * TEXT_LARGEST),
    "fair": Kind(_fair, 2 * TEXT_LARGEST),
    "compose": Kind(_compose, 1024),
}
