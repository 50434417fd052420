"""The far end: the pipe's end and the delivery vessel."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.section import Fixed, Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.heights import far_height, pours_freely
from loadfirst.units import BAR, G

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("end", node, "delivery", "checks", _values),), "delivery", (Fixed("delivery", _head),))


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached


def _values(given: Given) -> tuple[float, ...]:
    """Nothing comes back from above the surface; behind a check valve the line stands full already."""
    plant = given.plant
    return 0.0, pours_freely(plant) and not plant.check.fitted


def _head(given: Given) -> float:
    return far_height(given.plant) + given.plant.delivery.gas_bar * BAR / (given.liquid.density * G)


def _losses(one: OnePlant) -> Iterator[Loss]:
    if one.shut("end"):
        yield Loss("not-reached", one.drop("end"), shut=True)


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    delivery = one.plant.delivery
    gas = delivery.gas_bar * BAR
    head = delivery.surface_m + gas / one.weight
    yield PathPoint("delivery-surface", behind, delivery.surface_m, head, gas)


SECTION = Section("delivery", _stand, _fitted, _losses, _places)
