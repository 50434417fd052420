"""The minimum-flow line: what it takes back to the supply the pump gives and nobody gets."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import Note
from loadfirst.plant.elements.section import Given, Section, Shape, Spec, Stand
from loadfirst.plant.line_numbers import hand_valve, pipe

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    """It leaves before a single pump's check valve, so that the pump has flow when all else is shut."""
    specs = (
        Spec("return-valve", node, "after-return-valve", "valves", _valve),
        Spec("return-line", "after-return-valve", "supply", "pipes", _line),
    )
    return Stand(specs, node)


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached and plant.return_line.fitted


def _valve(given: Given) -> tuple[float, ...]:
    return hand_valve(given.plant.return_line)


def _line(given: Given) -> tuple[float, ...]:
    line = given.plant.return_line
    return pipe(given, line, line.length_m, line.fittings_k)


def _notes(one: OnePlant) -> Iterator[Note]:
    flow = one.flow("return-line")
    if flow < 0:
        yield Note("backflow", "return-line", {"flow": flow})


SECTION = Section("return-line", _stand, _fitted, notes=_notes)
