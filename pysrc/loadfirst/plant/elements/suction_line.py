"""The supply vessel and the line from it to the pumps: pipe, fittings and strainer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.discharge_line import accelerating
from loadfirst.plant.elements.section import Fixed, Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.line_numbers import pipe
from loadfirst.plant.velocity import point, static_pressure, suction_velocity_head
from loadfirst.units import BAR, G

if TYPE_CHECKING:
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    line = Spec("suction-line", node, "suction", "pipes", _values)
    return Stand((line,), "suction", (Fixed("supply", _head),))


def _values(given: Given) -> tuple[float, ...]:
    line = given.plant.suction
    return pipe(given, line, line.length_m, line.fittings_k + line.strainer_k)


def _head(given: Given) -> float:
    supply = given.plant.supply
    return supply.surface_m + supply.gas_bar * BAR / (given.liquid.density * G)


def _losses(one: OnePlant) -> Iterator[Loss]:
    lost = sum(one.pipe_breakdown("suction-line")) if one.changing else one.drop("suction-line")
    yield Loss("suction-line", lost)
    yield from accelerating(one, "suction-line", lost)


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    """In front of its mouth in the vessel the liquid is at rest."""
    supply, head = one.plant.supply, one.head("supply")
    yield PathPoint("supply-surface", behind, supply.surface_m, head, supply.gas_bar * BAR)
    outlet = static_pressure(one, head, one.mouth, 0.0)
    yield PathPoint("supply-outlet", behind, one.mouth, head, outlet)
    velocity = suction_velocity_head(one)
    yield point(one, "suction", behind + one.plant.suction.length_m, one.plant.pump.centre_m, velocity)


SECTION = Section("suction-line", _stand, losses=_losses, places=_places)
