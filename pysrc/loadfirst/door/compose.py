"""A puzzle for practice, one draw an ask: asked again and again, so that others need not wait."""

from __future__ import annotations

from typing import Any

from loadfirst.cases.compose.compose import MOST, draw, given_up
from loadfirst.cases.compose.morning import job_at
from loadfirst.cases.compose.refused import Refused
from loadfirst.cases.compose.subject import Wish, plant_of
from loadfirst.door.debrief import LOT
from loadfirst.door.messages import ComposeAsk
from loadfirst.plant import library


def composed(ask: ComposeAsk) -> dict[str, Any]:
    """Answer a ``compose`` ask.

    Parameters
    ----------
    ask : `tried` as the last reply had it, 0 at first.

    Returns
    -------
    dict
        ``tried`` and ``most``: draws made by now, and after how many it is given up; ``reckoned`` and ``of``:
        suspects of the plant of the next draw, which comes once all are reckoned; ``why``: what the draw was
        refused for, None where none was; ``done``, and ``name`` and ``text`` of the file, None until then.

    Raises
    ------
    InputError
        For an unknown plant, and where every draw was refused.
    """
    plant = None if ask.plant is None else library.known("plants", ask.plant)
    wish = Wish(ask.seed, plant, ask.group, ask.level)
    if ask.tried >= MOST:
        raise given_up(wish, "none was left")
    reckoned, of = job_at(plant_of(wish, ask.tried)).advance(LOT)
    blank = {"done": False, "name": None, "text": None, "why": None}
    reply = {"tried": ask.tried, "most": MOST, "reckoned": reckoned, "of": of, **blank}
    return reply if reckoned < of else reply | _drawn(wish, ask.tried)


def _drawn(wish: Wish, number: int) -> dict[str, Any]:
    try:
        found = draw(wish, number)
    except Refused as why:
        if number + 1 == MOST:
            raise given_up(wish, str(why)) from why
        return {"tried": number + 1, "why": str(why)}
    return {"tried": found.tried, "done": True, "name": found.name, "text": found.text}
