"""A second line beside the first: both have the same head to lose, and share the flow accordingly."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import Note
from loadfirst.plant.elements.section import Given, Section, Shape, Spec, Stand
from loadfirst.plant.line_numbers import pipe

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("second-line", node, "pipe-end", "pipes", _values),), node)


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached and plant.second_line.fitted


def _values(given: Given) -> tuple[float, ...]:
    line = given.plant.second_line
    return pipe(given, line, line.length_m, line.fittings_k)


def _notes(one: OnePlant) -> Iterator[Note]:
    """One that runs against the other: a summit with air in it stands in the first line."""
    forward = one.flow("end") >= 0
    for name in ("second-line", "discharge-line"):
        flow = one.flow(name)
        if flow < 0 and forward:
            yield Note("backflow", name, {"flow": flow})


SECTION = Section("second-line", _stand, _fitted, notes=_notes)
