"""The line from the control valve to the delivery vessel: pipe and fittings."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.section import Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.heights import pipe_end_height
from loadfirst.plant.velocity import line_velocity_head, static_pressure
from loadfirst.units import TO_SI

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

MM = TO_SI["mm"]


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("discharge-line", node, "pipe-end", "pipes", _values),), "pipe-end")


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached


def _values(given: Given) -> tuple[float, ...]:
    line = given.plant.discharge
    return line.length_m, line.bore_mm * MM, line.roughness_mm * MM, line.fittings_k, given.liquid.kinematic


def _losses(one: OnePlant) -> Iterator[Loss]:
    friction, fittings = one.pipe_breakdown("discharge-line")
    yield Loss("pipe", friction)
    yield Loss("fittings", fittings)


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    velocity, height = line_velocity_head(one), pipe_end_height(one.plant)
    head = _head_before_exit(one, velocity)
    pressure = static_pressure(one, head, height, velocity)
    yield PathPoint("pipe-end", behind + one.plant.discharge.length_m, height, head, pressure)


def _head_before_exit(one: OnePlant, velocity: float) -> float | None:
    """Head just inside the end: the exit's loss, one velocity head of `fittings_k`, is still to come."""
    head = one.head("pipe-end")
    if head is None or one.exact_flow("discharge-line") <= 0:
        return head
    return head + min(1.0, one.plant.discharge.fittings_k) * velocity


SECTION = Section("discharge-line", _stand, _fitted, _losses, _places)
