"""Nothing at the station's outlet but the air: the jet takes its velocity head along."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.physics.pipe import velocity_head
from loadfirst.plant.answer import Note
from loadfirst.plant.elements.check_valve import check_drop
from loadfirst.plant.elements.section import Fixed, Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.heights import far_height
from loadfirst.units import TO_SI

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

MM = TO_SI["mm"]


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("end", node, "open", "checks", _values),), "open", (Fixed("open", _head),))


def _fitted(plant: Plant) -> bool:
    return not plant.discharge.attached


def _values(given: Given) -> tuple[float, ...]:
    """Air, not liquid, would come in: no flow back."""
    return float(velocity_head(1.0, given.plant.discharge.bore_mm * MM)), True, 0.0


def _head(given: Given) -> float:
    return far_height(given.plant)


def _losses(one: OnePlant) -> Iterator[Loss]:
    drop, shut = one.drop("end"), one.shut("end")
    yield Loss("jet", 0.0 if shut else drop)
    if shut:
        yield Loss("not-reached", drop + (check_drop(one) if one.plant.check.fitted else 0.0), shut=True)


def _notes(one: OnePlant) -> Iterator[Note]:
    yield Note("line-off", "discharge", {})


SECTION = Section("open-end", _stand, _fitted, _losses, notes=_notes)
