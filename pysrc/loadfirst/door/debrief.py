"""What the evidence says of a case: of a play once its verdict is given, before it where the case is a worked
one, and whether the case is fair.

All are asked again and again until all suspects are reckoned.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

import msgspec

from loadfirst.cases.bit_by_bit import Made, Pieces, UnderWay
from loadfirst.cases.debrief import Debrief, debriefing
from loadfirst.cases.fairness import Fairness, judging, unfair
from loadfirst.cases.held import Held, holding
from loadfirst.cases.play import played
from loadfirst.cases.proof import Proven
from loadfirst.cases.reckoning import prepare
from loadfirst.cases.weighing import Weighing
from loadfirst.cases.worked import next_step
from loadfirst.door.describe import describe
from loadfirst.errors import InputError

TURN = 0.1
"""How long one ask goes on reckoning, so that others need not wait long. [s]"""
DRAWS, PLAYS = 60, 3
"""Fewer than at the command line: a browser's Python is slower."""

_told = UnderWay[Debrief]()
_judged = UnderWay[tuple[Fairness, Held]]()


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
    so_far, weighing = _reckoned(proven)
    if weighing is None or play.verdict is None:
        return so_far | {"debrief": None}
    found = _told.piece(json.dumps(body), lambda: debriefing(weighing, play))
    if not isinstance(found, Made):
        return so_far | {"done": so_far["of"] - 1, "debrief": None}
    return so_far | {"debrief": msgspec.to_builtins(found.it)}


def worked(body: Mapping[str, Any]) -> dict[str, Any]:
    """Answer a ``worked`` ask: the next step of a case that is played step by step.

    Parameters
    ----------
    body : as of a ``case`` ask.

    Returns
    -------
    dict
        ``done`` and ``of`` as of `debriefed`; ``step``: None until all are reckoned, and where there is no
        next step, then as `cases.worked.NextStep`.

    Raises
    ------
    InputError, FileError
        As of a ``case`` ask; InputError for a case that is not a worked one.
    """
    proven, play = played(body)
    if not proven.case.worked:
        raise InputError("case", proven.id, "a worked case")
    so_far, weighing = _reckoned(proven)
    step = None
    if weighing is not None and play.prediction is not None and play.verdict is None:
        step = msgspec.to_builtins(next_step(weighing, play))
    return so_far | {"step": step}


def fair(body: Mapping[str, Any]) -> dict[str, Any]:
    """Answer a ``fair`` ask, for the author of a case.

    Parameters
    ----------
    body : as of a ``case`` ask; its moves count for nothing.

    Returns
    -------
    dict
        ``done`` and ``of`` as of `debriefed`, the last one being the plays; ``fairness``: None until then,
        then as `cases.fairness.Fairness`, with ``faults``: claims that hold for too few seeds, and what is
        unfair, each with place and remedy.

    Raises
    ------
    InputError, FileError
        As of a ``case`` ask.
    """
    proven, _ = played(body)
    so_far, weighing = _reckoned(proven)
    if weighing is None:
        return so_far | {"fairness": None}
    key = json.dumps([body["case"], body.get("seed")])
    made = _judged.piece(key, lambda: _judging(weighing))
    if not isinstance(made, Made):
        return so_far | {"done": so_far["of"] - 1, "fairness": None}
    found, held = made.it
    faults = [describe(fault) for fault in (*held.faults, *unfair(found, weighing))]
    return so_far | {"fairness": msgspec.to_builtins(found) | {"faults": faults}}


def _judging(weighing: Weighing) -> Pieces[tuple[Fairness, Held]]:
    """Whether it is fair, and whether its claims hold for other seeds."""
    held = yield from holding(weighing.proven, DRAWS)
    return (yield from judging(weighing, DRAWS, PLAYS)), held


def _reckoned(proven: Proven) -> tuple[dict[str, Any], Weighing | None]:
    """One lot of suspects more: how far that is, and the case weighed once all are reckoned."""
    done, of = prepare(proven, TURN)
    return {"done": done, "of": of}, Weighing(proven) if done == of else None
