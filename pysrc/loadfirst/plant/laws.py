"""The laws that elements of a plant may obey, with the numbers that each asks for."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from loadfirst.physics.check import CheckValves
from loadfirst.physics.filter import Filters
from loadfirst.physics.law import Array, Law
from loadfirst.physics.pipe import Pipes
from loadfirst.physics.relief import ReliefValves
from loadfirst.physics.siphon import Summits
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


def relief_valves(
    set_pressure: Array, capacity: Array, density: Array, accumulation: Array, leak: Array, blocked: Array
) -> ReliefValves:
    """`ReliefValves` with all its numbers in order."""
    return ReliefValves(
        set_pressure, capacity, density, accumulation=accumulation, leak=leak, blocked=blocked
    )


LAWS: dict[str, LawKind] = {
    "pipes": LawKind(("length", "bore", "roughness", "k", "viscosity"), Pipes),
    "valves": LawKind(("kv",), Valves),
    "checks": LawKind(("k_head", "holds", "leak"), CheckValves),
    "filters": LawKind(("resistance", "fouling", "viscosity", "k_head"), Filters),
    "summits": LawKind(("length", "bore", "roughness", "k", "viscosity", "rise", "holds"), Summits),
    "reliefs": LawKind(
        ("set_pressure", "capacity", "density", "accumulation", "leak", "blocked"), relief_valves
    ),
}
