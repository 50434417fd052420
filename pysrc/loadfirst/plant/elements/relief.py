"""The relief valve: from the station's discharge back to the supply."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import Note
from loadfirst.plant.elements.section import Given, Section, Shape, Spec, Stand
from loadfirst.units import BAR, HOUR, PERCENT

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("relief", node, "supply", "reliefs", _values),), node)


def _fitted(plant: Plant) -> bool:
    return plant.relief.fitted


def _values(given: Given) -> tuple[float, ...]:
    relief = given.plant.relief
    assert relief.capacity_m3h is not None  # plant.pumps has seen to it
    leak = relief.passing_percent * PERCENT if relief.state == "passing" else 0.0
    return (
        _set(given.plant),
        relief.capacity_m3h / HOUR,
        given.liquid.density,
        relief.accumulation_percent * PERCENT,
        leak,
        relief.state == "blocked",
    )


def _set(plant: Plant) -> float:
    assert plant.relief.set_bar is not None  # plant.pumps has seen to it
    return plant.relief.set_bar * BAR


def _notes(one: OnePlant) -> Iterator[Note]:
    """Where it lifts the pressure no longer tells of the load alone."""
    flow, pressure = one.flow("relief"), one.drop("relief") * one.weight
    if flow > 0 and not one.shut("relief") and pressure > _set(one.plant):
        yield Note("relief-lifted", "relief", {"flow": flow, "pressure": pressure, "set": _set(one.plant)})


SECTION = Section("relief", _stand, _fitted, notes=_notes)
