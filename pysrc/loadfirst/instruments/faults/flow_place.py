"""Where the flow meter stands: what the pumps give, or what is left of it behind a tee."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

GONE = {"pump": (), "before-return": ("relief",), "after-return": ("relief", "return-line")}
"""Lines back to the supply that leave ahead of the meter."""


def passing(
    station: float, aside: Mapping[str, float], place: Literal["pump", "before-return", "after-return"]
) -> float:
    """Flow through the meter. [m³/s]

    Parameters
    ----------
    station : what the pumps give.
    aside : what the lines beside the way take, by name; those that are not fitted are not there.
    place : of the meter.

    Sources
    -------
    Mass balance at the tees.
    """
    return station - sum(aside.get(line, 0.0) for line in GONE[place])
