"""A gauge whose leg is tapped somewhere else than its name says: at the wrong side of the valve."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from loadfirst.plant.answer import Node

Tapping = Literal["own", "suction", "discharge", "after-valve"]


def tapped(own: str, really: Tapping, nodes: Mapping[str, Node]) -> Node | None:
    """Where a gauge really looks.

    Parameters
    ----------
    own : its own place, as a node is named: "after-valve".
    really : where its leg is tapped; "own": where it should be.
    nodes : the places of the plant; one that went with the line is not among them.

    Sources
    -------
    Common practice: a control valve in between hides or adds its whole pressure drop.
    """
    return nodes.get(own if really == "own" else really)
