"""The line from the control valve to the delivery vessel, or to its summit: pipe and fittings."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.section import Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.heights import filling, full_share, pipe_end_height
from loadfirst.plant.line_numbers import pipe
from loadfirst.plant.velocity import static_pressure

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    outlet = "summit" if "summit" in shape.fitted else "pipe-end"
    return Stand((Spec("discharge-line", node, outlet, "pipes", _values),), outlet)


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached


def _values(given: Given) -> tuple[float, ...]:
    return pipe(given, given.plant.discharge, *run(given.plant))


def run(plant: Plant, beyond_summit: bool = False) -> tuple[float, float]:
    """Length of the line up to its summit or its end, or of what is beyond the summit, and K there. [m]

    Fittings are spread evenly, but for the exit, the last 1 of them, which is at the end.
    """
    line = plant.discharge
    if filling(plant):
        return line.length_m * full_share(plant), line.fittings_k * full_share(plant)
    if not plant.summit.fitted:
        return line.length_m, line.fittings_k
    share = plant.summit.at
    exit_ = min(1.0, line.fittings_k)
    if beyond_summit:
        return line.length_m * (1 - share), exit_ + (line.fittings_k - exit_) * (1 - share)
    return line.length_m * share, (line.fittings_k - exit_) * share


def _losses(one: OnePlant) -> Iterator[Loss]:
    friction, fittings = one.pipe_breakdown("discharge-line")
    yield Loss("pipe", friction)
    yield Loss("fittings", fittings)
    yield from accelerating(one, "discharge-line", friction + fittings)


def accelerating(one: OnePlant, line: str, lost: float) -> Iterator[Loss]:
    """What a line takes besides its losses to change its flow; nothing in a plant at rest. [m]"""
    if one.changing:
        yield Loss("acceleration", one.drop(line) - lost)


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    if "pipe-end" in one.layout.way:
        yield from pipe_end(one, behind + run(one.plant)[0])


def pipe_end(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    """Just inside the end: the exit's loss, one velocity head of `fittings_k`, is still to come."""
    velocity, height = _velocity_head(one), pipe_end_height(one.plant)
    head = one.head("pipe-end")
    if head is not None and one.exact_flow("discharge-line") > 0 and not filling(one.plant):
        head += min(1.0, one.plant.discharge.fittings_k) * velocity
    yield PathPoint("pipe-end", behind, height, head, static_pressure(one, head, height, velocity))


def _velocity_head(one: OnePlant) -> float:
    return one.velocity_head("discharge-line", one.plant.discharge.bore_mm)


SECTION = Section("discharge-line", _stand, _fitted, _losses, _places)
