"""The live answer: one plant, its true state, its readings and its curves."""

from __future__ import annotations

from typing import Any

import msgspec

from loadfirst.door.messages import AnswerAsk
from loadfirst.instruments.panel import readings
from loadfirst.plant.build import build
from loadfirst.plant.curves import POINTS, curves
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.effective import effective
from loadfirst.plant.read import plant_data, resolve_data
from loadfirst.plant.state import true_state

BESIDE_STATE = ("converged", "why", "stack", "duty", "notes")
"""Parts of the true state that stand at the answer's top level."""


def answer(ask: AnswerAsk) -> dict[str, Any]:
    """Answer an ``answer`` ask.

    Raises
    ------
    InputError
        Where the plant or an edit cannot be used; `where` is the plant's key.
    """
    return answer_plant(apply_edits(plant_data(ask.plant), ask.edits), ask.curve_points)


def answer_plant(data: dict[str, Any], curve_points: int = POINTS) -> dict[str, Any]:
    """The answer for a plant as plain data, all edits applied.

    Returns
    -------
    dict
        ``plant`` and ``title``; ``converged`` and ``why``; ``state`` (the
        truth), ``shown`` (what instruments read), ``stack``, ``curves``,
        ``duty``, ``notes``. SI units, plain Python values.
    """
    resolved = resolve_data(data)
    built = build([resolved])
    state = true_state(built)
    truth = msgspec.to_builtins(state)
    top = {name: truth.pop(name) for name in BESIDE_STATE}
    return {
        "plant": effective(resolved),
        "title": resolved.plant.title,
        **top,
        "state": truth,
        "shown": msgspec.to_builtins(readings(state, resolved.plant)),
        "curves": msgspec.to_builtins(curves(built, state.duty, curve_points)),
    }
