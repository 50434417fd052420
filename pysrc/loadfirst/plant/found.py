"""What a plant has set by itself: plain numbers, carried beside its keys."""

from __future__ import annotations

from typing import Literal, NamedTuple

Status = Literal["reached", "lost-low", "lost-high", "hunting"]
"""Of a controller: the set point is reached; the output is at a limit; the reading leaps over it."""


class Found(NamedTuple):
    """What `automatic.settled` has found of one plant.

    Attributes
    ----------
    moved : keys that the plant has set by itself, and to what, in file units.
    output : of the controller, over its full output; None without one in automatic. [-]
    status : how the controller fares; None likewise.
    asked : frequency that the drive was asked for, where its current limit has cut it. [Hz]
    overloaded : even at the drive's lowest frequency the current is above the limit.
    """

    moved: dict[str, float]
    output: float | None = None
    status: Status | None = None
    asked: float | None = None
    overloaded: bool = False
