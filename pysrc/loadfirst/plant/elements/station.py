"""The pumps: one, or two side by side or in line, each of two with its check valve behind it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.check_valve import check_valve
from loadfirst.plant.elements.section import Given, Section, Shape, Spec, Stand
from loadfirst.plant.velocity import discharge_velocity_head, point

if TYPE_CHECKING:
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    if shape.arrangement == "single":
        return Stand((_pump(shape, 1, node, "discharge"),), "discharge")
    in_line = shape.arrangement == "in-line"
    specs = (
        _pump(shape, 1, node, "pump-1-out"),
        check_valve(1, "pump-1-out", "between" if in_line else "discharge"),
        _pump(shape, 2, "between" if in_line else node, "pump-2-out"),
        check_valve(2, "pump-2-out", "discharge"),
    )
    return Stand(specs, "discharge")


def _pump(shape: Shape, number: int, inlet: str, outlet: str) -> Spec:
    return Spec(f"pump-{number}", inlet, outlet, shape.machines[number - 1], _none)


def _none(given: Given) -> tuple[float, ...]:
    """Machines are made apart, in `build`."""
    return ()


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    yield point(one, "discharge", behind, one.plant.pump.centre_m, discharge_velocity_head(one))


SECTION = Section("station", _stand, places=_places)
