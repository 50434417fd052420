"""What the evidence says of a case: of a play once its verdict is given, and whether the case is fair.

Both are asked again and again until all suspects are reckoned.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import msgspec

from loadfirst.cases.debrief import debrief
from loadfirst.cases.fairness import fairness, unfair
from loadfirst.cases.play import played
from loadfirst.cases.weighing import Weighing, prepare
from loadfirst.door.describe import describe

LOT = 4
"""Suspects reckoned in one ask, so that others need not wait long."""
DRAWS, PLAYS = 60, 5
"""Fewer than at the command line: a browser's Python is slower."""


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


def fair(body: Mapping[str, Any]) -> dict[str, Any]:
    """Answer a ``fair`` ask, for the author of a case.

    Parameters
    ----------
    body : as of a ``case`` ask; its moves count for nothing.

    Returns
    -------
    dict
        ``done`` and ``of`` as of `debriefed`; ``fairness``: None until all are reckoned, then as
        `cases.fairness.Fairness`, with ``faults``: what is unfair, each an error with its place and remedy.

    Raises
    ------
    InputError, FileError
        As of a ``case`` ask.
    """
    proven, _ = played(body)
    done, of = prepare(proven, LOT)
    if done < of:
        return {"done": done, "of": of, "fairness": None}
    weighing = Weighing(proven)
    found = fairness(weighing, DRAWS, PLAYS)
    faults = [describe(fault) for fault in unfair(found, weighing)]
    return {"done": done, "of": of, "fairness": msgspec.to_builtins(found) | {"faults": faults}}
