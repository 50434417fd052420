"""What a play was worth, once its verdict is given: asked again and again until all suspects are reckoned."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import msgspec

from loadfirst.cases.debrief import debrief
from loadfirst.cases.play import played
from loadfirst.cases.weighing import Weighing, prepare

LOT = 4
"""Suspects reckoned in one ask, so that others need not wait long."""


def debriefed(body: Mapping[str, Any]) -> dict[str, Any]:
    """Answer a ``debrief`` ask.

    Parameters
    ----------
    body : as of a ``case`` ask.

    Returns
    -------
    dict
        ``done`` and ``of``: suspects reckoned by now, and all of them; ``debrief``: None until all
        are, or no verdict is given yet, then as `cases.debrief.Debrief`.

    Raises
    ------
    InputError, FileError
        As of a ``case`` ask.
    """
    proven, play = played(body)
    done, of = prepare(proven, LOT)
    told = None
    if done == of and play.verdict is not None:
        told = msgspec.to_builtins(debrief(Weighing(proven), play))
    return {"done": done, "of": of, "debrief": told}
