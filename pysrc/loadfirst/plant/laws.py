"""The laws that elements of a plant may obey, with the numbers that each asks for."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from loadfirst.physics.check import CheckValves
from loadfirst.physics.law import Law
from loadfirst.physics.pipe import Pipes
from loadfirst.physics.valve import Valves


class LawKind(NamedTuple):
    """A law and its parameters.

    Attributes
    ----------
    parameters : names of the numbers of one element, in the order in which `make` takes them, SI.
    make : one array (B, M) per parameter -> the law of M elements in B plants.
    """

    parameters: tuple[str, ...]
    make: Callable[..., Law]


LAWS: dict[str, LawKind] = {
    "pipes": LawKind(("length", "bore", "roughness", "k", "viscosity"), Pipes),
    "valves": LawKind(("kv",), Valves),
    "checks": LawKind(("k_head", "holds"), CheckValves),
}
