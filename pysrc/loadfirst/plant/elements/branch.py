"""A line to a second user, with its own valve and height: what it takes is not delivered."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.plant.answer import Note
from loadfirst.plant.elements.section import Fixed, Given, Section, Shape, Spec, Stand
from loadfirst.plant.line_numbers import hand_valve, pipe
from loadfirst.plant.outlets import branch_head, holds

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant


def _stand(shape: Shape, node: str) -> Stand:
    specs = (
        Spec("branch-valve", node, "after-branch-valve", "valves", _valve),
        Spec("branch-line", "after-branch-valve", "branch-pipe-end", "pipes", _line),
        Spec("branch-end", "branch-pipe-end", "branch-delivery", "checks", _end),
    )
    return Stand(specs, node, (Fixed("branch-delivery", branch_head),))


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached and plant.branch.fitted


def _valve(given: Given) -> tuple[float, ...]:
    return hand_valve(given.plant.branch)


def _line(given: Given) -> tuple[float, ...]:
    line = given.plant.branch
    return pipe(given, line, line.length_m, line.fittings_k)


def _end(given: Given) -> tuple[float, ...]:
    return 0.0, holds(given, "branch"), 0.0


def _notes(one: OnePlant) -> Iterator[Note]:
    flow = one.flow("branch-line")
    if flow < 0:
        yield Note("backflow", "branch", {"flow": flow})
    if one.shut("branch-end") and not one.shut("branch-valve"):
        yield Note("not-supplied", "branch", {"missing": -one.drop("branch-end")})


SECTION = Section("branch", _stand, _fitted, notes=_notes)
