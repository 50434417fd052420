"""The filter: its medium and what it has caught ask head with the flow, its housing with the square."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.physics.filter import medium_resistance
from loadfirst.physics.pipe import velocity_head
from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.section import Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.velocity import line_velocity_head, point
from loadfirst.units import BAR, HOUR, TO_SI

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

MM = TO_SI["mm"]
WATER_20C = 1.0016e-3  # [Pa s] IAPWS R12-08, at 0.1 MPa; the clean drop is stated with it


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("filter", node, "after-filter", "filters", _values),), "after-filter")


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached and plant.filter.fitted


def _values(given: Given) -> tuple[float, ...]:
    own = given.plant.filter
    medium = medium_resistance(own.clean_drop_bar * BAR, own.clean_flow_m3h / HOUR, WATER_20C)
    housing = own.housing_k * float(velocity_head(1.0, given.plant.discharge.bore_mm * MM))
    return float(medium), own.fouling, given.liquid.kinematic, housing


def _losses(one: OnePlant) -> Iterator[Loss]:
    yield Loss("filter", one.drop("filter"))


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    yield point(one, "after-filter", behind, one.plant.pump.centre_m, line_velocity_head(one))


SECTION = Section("filter", _stand, _fitted, _losses, _places)
