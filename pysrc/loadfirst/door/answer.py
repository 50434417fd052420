"""The live answer: one plant, its true state, its readings and its curves."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import msgspec

from loadfirst.door.messages import AnswerAsk
from loadfirst.instruments.panel import Reading, readings
from loadfirst.plant.automatic import settled
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
    before = {
        id: Reading(id, "pressure", one.value, one.low, one.high, None, None)
        for id, one in ask.before.items()
        if one.low < one.high
    }
    data = apply_edits(plant_data(ask.plant), ask.edits)
    return answer_plant(data, ask.curve_points, look=ask.look, before=before)


def answer_plant(
    data: dict[str, Any],
    curve_points: int = POINTS,
    *,
    look: int = 0,
    before: Mapping[str, Reading] | None = None,
) -> dict[str, Any]:
    """The answer for a plant as plain data, all edits applied.

    Returns
    -------
    dict
        ``plant`` (keys that it has moved by itself as they stand now) and ``title``;
        ``converged`` and ``why``; ``state`` (the truth), ``shown`` (what instruments
        read), ``stack``, ``curves``, ``duty``, ``notes``. SI units, plain Python values.
    """
    built = build(settled([resolve_data(data)]))
    state = true_state(built)
    flows = [machine.flow for machine in state.machines]
    truth = msgspec.to_builtins(state)
    top = {name: truth.pop(name) for name in BESIDE_STATE}
    return {
        "plant": effective(built.plants[0]),
        "title": built.plants[0].plant.title,
        **top,
        "state": truth,
        "shown": msgspec.to_builtins(readings(state, built.plants[0].plant, look=look, before=before)),
        "curves": msgspec.to_builtins(curves(built, state.duty, curve_points, flows)),
    }
