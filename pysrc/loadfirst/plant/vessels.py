"""Bottom and rim of a vessel whose file gives only the surface.

A plant needs neither to be computed, but levels, drawings and the draw-off
need them. They must not move when the level is moved by an edit.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import isfinite
from typing import Any

from loadfirst.plant.plant import Delivery, Supply

ROOM = 2.0  # [m] from the surface to bottom and rim where the file gives none
DEFAULT_SURFACE = {"supply": Supply().surface_m, "delivery": Delivery().surface_m}


def with_walls(data: Mapping[str, Any], before: Mapping[str, Any]) -> dict[str, Any]:
    """A plant's data with bottom and rim of both vessels said.

    Parameters
    ----------
    data : dict
        A plant as it stands in its file, perhaps with some keys changed.
    before : dict
        The same before any key was changed: its surfaces place the walls.

    Returns
    -------
    dict
        A copy in which ``bottom_m`` and ``top_m``, where they were left out,
        are 2 m below and above the surface of `before`, farther where the
        present surface or the pipe's end asks for it. Anything that is no
        number is left to the decoder.
    """
    result = dict(data)
    for vessel in DEFAULT_SURFACE:
        table = data.get(vessel, {})
        was, now = _surface(before, vessel), _surface(data, vessel)
        if isinstance(table, Mapping) and was is not None and now is not None:
            end = _number(table.get("outlet_m"), now)
            bottom = min(was - ROOM, now, now if end is None else end)
            result[vessel] = {"bottom_m": bottom, "top_m": max(was + ROOM, now), **table}
    return result


def _surface(data: Mapping[str, Any], vessel: str) -> float | None:
    table = data.get(vessel, {})
    return _number(table.get("surface_m"), DEFAULT_SURFACE[vessel]) if isinstance(table, Mapping) else None


def _number(value: Any, default: float) -> float | None:
    """The number, the default for nothing, None for anything that is no such number."""
    if value is None:
        return default
    fit = isinstance(value, int | float) and not isinstance(value, bool) and abs(value) < 1e6
    return float(value) if fit and isfinite(value) else None
