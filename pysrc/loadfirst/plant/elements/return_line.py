"""The minimum-flow line: what it takes back to the supply the pump gives and nobody gets."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import Note
from loadfirst.plant.elements.section import Given, Section, Shape, Spec, Stand
from loadfirst.units import TO_SI

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

MM = TO_SI["mm"]


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
    """A hand valve: its flow coefficient goes with the opening (common practice)."""
    line = given.plant.return_line
    return (line.kv_open_m3h * line.opening,)


def _line(given: Given) -> tuple[float, ...]:
    line = given.plant.return_line
    return line.length_m, line.bore_mm * MM, line.roughness_mm * MM, line.fittings_k, given.liquid.kinematic


def _notes(one: OnePlant) -> Iterator[Note]:
    flow = one.flow("return-line")
    if flow < 0:
        yield Note("backflow", "return-line", {"flow": flow})


SECTION = Section("return-line", _stand, _fitted, notes=_notes)
