"""A step of the clock: the plant as it is set now, the moment it stood at, and how much time goes by."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import msgspec

from loadfirst.clock.begin import begin
from loadfirst.clock.look import look, now
from loadfirst.clock.run import run
from loadfirst.door.answer import BESIDE_STATE
from loadfirst.door.messages import StepAsk
from loadfirst.instruments.panel import readings
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.effective import effective
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import plant_data, resolve_data
from loadfirst.plant.state import true_state


def step(ask: StepAsk) -> dict[str, Any]:
    """Answer a ``step`` ask.

    Returns
    -------
    dict
        As an ``answer``, at the end of the step; ``plant`` has the levels, the stem and the
        frequency as they stand then. Beside that ``moment``, to be sent with the next ask;
        ``time`` [s] and ``events``, each with ``kind``, ``where`` and ``time``. ``curves`` is
        null unless points are asked for: as of a plant at rest with these levels.

    Raises
    ------
    InputError
        Where the plant or an edit cannot be used.
    """
    resolved = _resolved(msgspec.json.encode((ask.plant, ask.edits)))
    ran = run(resolved, ask.moment or begin(resolved), ask.span)
    present, state = now(ran), look(ran)
    truth = msgspec.to_builtins(state)
    top = {name: truth.pop(name) for name in BESIDE_STATE}
    drawn = None
    if ask.curve_points:
        built = build([present])
        drawn = msgspec.to_builtins(curves(built, true_state(built).duty, ask.curve_points))
    return {
        "plant": effective(present),
        "title": resolved.plant.title,
        **top,
        "state": truth,
        "shown": msgspec.to_builtins(readings(state, present.plant, pointers=ran.moment.pointers)),
        "curves": drawn,
        "moment": msgspec.to_builtins(ran.moment),
        "time": ran.moment.seconds,
        "events": msgspec.to_builtins(ran.events),
    }


@lru_cache(maxsize=4)
def _resolved(rig: bytes) -> ResolvedPlant:
    """While time runs the same plant is asked for at every step."""
    plant, edits = msgspec.json.decode(rig)
    return resolve_data(apply_edits(plant_data(plant), edits))
