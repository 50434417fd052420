"""The control valve in the discharge line."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.physics.valve import flow_coefficient
from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.section import Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.velocity import line_velocity_head, point

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("valve", node, "after-valve", "valves", _values),), "after-valve")


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached


def _values(given: Given) -> tuple[float, ...]:
    valve = given.plant.valve
    kv = flow_coefficient(valve.kv_open_m3h, valve.opening, valve.characteristic, valve.rangeability)
    return (float(kv),)


def _losses(one: OnePlant) -> Iterator[Loss]:
    yield Loss("valve", one.drop("valve"), one.shut("valve"))


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    yield point(one, "after-valve", behind, one.plant.pump.centre_m, line_velocity_head(one))


SECTION = Section("valve", _stand, _fitted, _losses, _places)
