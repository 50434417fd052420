"""What is known of a plant's state before its notes are taken."""

from __future__ import annotations

from typing import NamedTuple

from loadfirst.plant.answer import Control, Machine, PathPoint, Possible


class Told(NamedTuple):
    """Parts of one `answer.State`; `control` is None where no controller is fitted."""

    machines: tuple[Machine, ...]
    path: tuple[PathPoint, ...]
    possible: tuple[Possible, ...]
    control: Control | None
