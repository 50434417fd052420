"""The catalogue of causes as it applies to a plant, and what one of them changes in it."""

from __future__ import annotations

from typing import Any

from loadfirst.causes.catalogue import CAUSES, cause
from loadfirst.causes.cause import Cause
from loadfirst.door.messages import CauseAsk, CausesAsk
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import plant_data, resolve_data


def causes(ask: CausesAsk) -> dict[str, Any]:
    """Answer a ``causes`` ask.

    Returns
    -------
    dict
        ``causes``: those that can happen to the plant as it is, each with ``id``, ``group`` and
        ``size``: None where it happens or does not, else ``unit``, ``low``, ``high`` and ``usual``
        on this plant, and ``scale``, linear or log.
    """
    plant = resolve_data(apply_edits(plant_data(ask.plant), ask.edits))
    return {"causes": [_told(each, plant) for each in CAUSES if each.applies(plant) is None]}


def _told(each: Cause, plant: ResolvedPlant) -> dict[str, Any]:
    size = None
    if each.size is not None:
        low, high = each.sizes(plant)
        size = {
            "unit": each.size.unit, "low": low, "high": high, "usual": each.usual(plant),
            "scale": each.size.scale,
        }  # fmt: skip
    return {"id": each.id, "group": each.group, "size": size}


def one_cause(ask: CauseAsk) -> dict[str, Any]:
    """Answer a ``cause`` ask: its ``edits`` of the plant as it is.

    Raises
    ------
    InputError
        For an unknown cause, one that cannot happen here, or a size for which there is no room.
    """
    plant = resolve_data(apply_edits(plant_data(ask.plant), ask.edits))
    return {"edits": cause(ask.cause).edits(plant, ask.size)}
