"""A hidden cause: put under its veil, applied out of sight, and shown in the end.

What is answered while it is hidden holds what can be read off instruments, and the plant as a hand has set
it: nothing of the true state.
"""

from __future__ import annotations

from typing import Any

import msgspec
from msgspec.structs import replace

from loadfirst.causes.catalogue import cause
from loadfirst.causes.hidden import Hidden, drawn, unveil, veil
from loadfirst.days.shift import shift
from loadfirst.door.messages import HideAsk, Rig, ShownAsk, UnveilAsk
from loadfirst.errors import InputError
from loadfirst.instruments.panel import Reading, readings
from loadfirst.instruments.piece import same_piece
from loadfirst.instruments.scales import ammeter_scale
from loadfirst.plant.answer import State
from loadfirst.plant.automatic import settled
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.effective import effective
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import plant_data, resolve_data
from loadfirst.plant.state import true_state

Read = dict[str, Reading]


def hide(ask: HideAsk) -> dict[str, Any]:
    """Answer a ``hide`` ask: the veil, as ``hidden``, of the cause that was named or drawn.

    Raises
    ------
    InputError
        For a cause that cannot happen to this plant, or not at this size.
    """
    data = _data(ask)
    plant = resolve_data(data)
    if ask.cause is None:
        return {"hidden": veil(drawn(plant, data, ask.seed), ask.seed)}
    one = cause(ask.cause)
    size = one.usual(plant) if ask.size is None else ask.size
    resolve_data(apply_edits(data, one.edits(plant, size)))  # refused here, where it may be told
    return {"hidden": veil(Hidden(one, size), ask.seed)}


def shown(ask: ShownAsk) -> dict[str, Any]:
    """Answer a ``shown`` ask.

    Returns
    -------
    dict
        ``plant`` as a hand has set it and ``title``; ``converged``; ``shown``: what every instrument
        reads with the hidden cause at work; ``readings``: each beside the remembered day, as
        `days.shift.Shift`, None without one.
    """
    data = _data(ask)
    believed = resolve_data(data)
    plant, state = _at_work(unveil(ask.hidden), believed, data)
    before, was = _yesterday(ask.yesterday)
    now = {one.id: one for one in readings(state, plant, look=1, before=before)}
    moves = None
    if was is not None:
        pairs = (
            (before.get(id), now.get(id), same_piece(id, was, believed.plant)) for id in {**before, **now}
        )
        moves = [shift(*pair) for pair in pairs]
    return {
        "plant": effective(believed),
        "title": believed.plant.title,
        "converged": state.converged,
        "shown": msgspec.to_builtins(tuple(now.values())),
        "readings": msgspec.to_builtins(moves),
    }


def reveal(ask: UnveilAsk) -> dict[str, Any]:
    """Answer an ``unveil`` ask: ``cause``, ``size`` and ``unit`` (None where it has none), ``edits``."""
    hidden = unveil(ask.hidden)
    of = hidden.cause.size
    return {
        "cause": hidden.cause.id,
        "size": None if of is None else hidden.size,
        "unit": None if of is None else of.unit,
        "edits": hidden.edits(resolve_data(_data(ask))),
    }


def _data(rig: Rig) -> dict[str, Any]:
    return apply_edits(plant_data(rig.plant), rig.edits)


def _at_work(hidden: Hidden, believed: ResolvedPlant, data: dict[str, Any]) -> tuple[Plant, State]:
    """The plant with what is hidden, its instruments as anyone believes; an error does not tell what."""
    try:
        truth = resolve_data(apply_edits(data, hidden.edits(believed)))
        plant = settled([_same_dials(truth, believed)])[0]
    except InputError:
        raise InputError(
            "hidden", "this setting", "one that goes with what is hidden", "Undo the last step."
        ) from None
    return plant.plant, true_state(plant)


def _same_dials(truth: ResolvedPlant, believed: ResolvedPlant) -> ResolvedPlant:
    """Meters chosen to suit the machines are still those that were chosen before anything changed."""
    meters = truth.plant.meters
    if meters.current_range_a is None:
        rated = true_state(settled([believed])[0]).machines[0].rated_current
        meters = replace(meters, current_range_a=ammeter_scale(rated))
    meters = replace(meters, flow_range_m3h=believed.plant.meters.flow_range_m3h)
    return truth._replace(plant=replace(truth.plant, meters=meters))


def _yesterday(rig: Rig | None) -> tuple[Read, Plant | None]:
    """What was read on the remembered day, and its plant."""
    if rig is None:
        return {}, None
    plant = settled([resolve_data(_data(rig))])[0]
    return {one.id: one for one in readings(true_state(plant), plant.plant)}, plant.plant
