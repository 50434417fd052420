"""A burst near the pumps: a hole into the open air takes what the load should get.

Torricelli's law with the contraction of a sharp edge: h = (q / (C A))² / 2g,
C = 0.61 (common practice). Air, not liquid, would come in.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.physics.pipe import velocity_head
from loadfirst.plant.answer import Note
from loadfirst.plant.elements.section import Fixed, Given, Section, Shape, Spec, Stand
from loadfirst.plant.outlets import burst_head, holds
from loadfirst.units import TO_SI

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

MM = TO_SI["mm"]
CONTRACTION = 0.61  # [-] discharge coefficient of a sharp-edged orifice


def _stand(shape: Shape, node: str) -> Stand:
    return Stand(
        (Spec("burst", node, "burst-air", "checks", _values),), node, (Fixed("burst-air", burst_head),)
    )


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached and plant.burst.fitted


def _values(given: Given) -> tuple[float, ...]:
    free_jet = float(velocity_head(1.0, given.plant.burst.hole_mm * MM))
    return free_jet / CONTRACTION**2, holds(given, "burst"), 0.0


def _notes(one: OnePlant) -> Iterator[Note]:
    yield Note("burst", "burst", {"flow": one.flow("burst")})


SECTION = Section("burst", _stand, _fitted, notes=_notes)
