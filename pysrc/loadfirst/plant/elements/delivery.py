"""The far end: the pipe's end and the delivery vessel, or the front of a line that is still being filled."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.physics.pipe import velocity_head
from loadfirst.plant.answer import Note, PathPoint
from loadfirst.plant.elements.section import Fixed, Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.heights import filling, pipe_end_height
from loadfirst.plant.outlets import holds, main_head, over_summit
from loadfirst.units import BAR, TO_SI

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

MM = TO_SI["mm"]


def _stand(shape: Shape, node: str) -> Stand:
    end = Spec("end", node, "delivery", "checks", _values)
    return Stand((end,), "delivery", (Fixed("delivery", main_head),))


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached


def _values(given: Given) -> tuple[float, ...]:
    """The front of a filling line has the air's pressure and moves on: it keeps its velocity head."""
    plant = given.plant
    held = holds(given, "delivery") and not over_summit(given)
    jet = float(velocity_head(1.0, plant.discharge.bore_mm * MM)) if filling(plant) else 0.0
    return jet, held, 0.0


def _losses(one: OnePlant) -> Iterator[Loss]:
    if one.shut("end"):
        yield Loss("not-reached", one.drop("end"), shut=True)
    elif filling(one.plant):
        yield Loss("jet", one.drop("end"))


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    if filling(one.plant):  # nothing gets to the vessel yet
        return
    delivery = one.plant.delivery
    gas = delivery.gas_bar * BAR
    head = delivery.surface_m + gas / one.weight
    yield PathPoint("delivery-surface", behind, delivery.surface_m, head, gas)


def _notes(one: OnePlant) -> Iterator[Note]:
    if filling(one.plant):
        facts = {"filled": one.plant.discharge.filled, "height": pipe_end_height(one.plant)}
        yield Note("line-filling", "pipe-end", facts)


SECTION = Section("delivery", _stand, _fitted, _losses, _places, _notes)
