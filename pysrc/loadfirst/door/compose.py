"""A puzzle for practice, one small piece of the work an ask, so that others need not wait."""

from __future__ import annotations

from typing import Any

from loadfirst.cases.bit_by_bit import Made, UnderWay
from loadfirst.cases.compose.compose import MOST, Composed, drawing, given_up
from loadfirst.cases.compose.refused import Refused
from loadfirst.cases.compose.subject import Wish
from loadfirst.door.messages import ComposeAsk
from loadfirst.plant import library

_draw = UnderWay[Composed]()


def composed(ask: ComposeAsk) -> dict[str, Any]:
    """Answer a ``compose`` ask: do one piece more of a draw.

    Parameters
    ----------
    ask : `tried` as the last reply had it, 0 at first.

    Returns
    -------
    dict
        ``tried`` and ``most``: draws made by now, and after how many it is given up; ``doing``: what is under
        way in the next one, "suspects", "words", "chance" or "plays", None at its end, with ``reckoned`` and
        ``of``: how much of that is done; ``why``: what a draw was refused for, None where none was; ``done``,
        and ``name`` and ``text`` of the file, None until then.

    Raises
    ------
    InputError
        For an unknown plant, and where every draw was refused.
    """
    plant = None if ask.plant is None else library.known("plants", ask.plant)
    wish = Wish(ask.seed, plant, ask.group, ask.level)
    if ask.tried >= MOST:
        raise given_up(wish, "none was left")
    blank = {"doing": None, "reckoned": 0, "of": 0, "why": None, "done": False, "name": None, "text": None}
    return {"tried": ask.tried, "most": MOST} | blank | _piece(wish, ask.tried)


def _piece(wish: Wish, number: int) -> dict[str, Any]:
    try:
        found = _draw.piece((wish, number), lambda: drawing(wish, number))
    except Refused as why:
        if number + 1 == MOST:
            raise given_up(wish, str(why)) from why
        return {"tried": number + 1, "why": str(why)}
    if isinstance(found, Made):
        return {"tried": found.it.tried, "done": True, "name": found.it.name, "text": found.it.text}
    return {"doing": found.doing, "reckoned": found.done, "of": found.of}
