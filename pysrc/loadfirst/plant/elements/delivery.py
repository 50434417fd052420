"""The far end: the pipe's end and the delivery vessel."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.section import Fixed, Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.outlets import holds, main_head
from loadfirst.units import BAR

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    end = Spec("end", node, "delivery", "checks", _values)
    return Stand((end,), "delivery", (Fixed("delivery", main_head),))


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached


def _values(given: Given) -> tuple[float, ...]:
    return 0.0, holds(given, "delivery")


def _losses(one: OnePlant) -> Iterator[Loss]:
    if one.shut("end"):
        yield Loss("not-reached", one.drop("end"), shut=True)


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    delivery = one.plant.delivery
    gas = delivery.gas_bar * BAR
    head = delivery.surface_m + gas / one.weight
    yield PathPoint("delivery-surface", behind, delivery.surface_m, head, gas)


SECTION = Section("delivery", _stand, _fitted, _losses, _places)
