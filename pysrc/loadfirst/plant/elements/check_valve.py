"""The check valve at each pump's discharge. A single pump's stands behind its gauge."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.physics.pipe import velocity_head
from loadfirst.plant.answer import PathPoint
from loadfirst.plant.elements.section import Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.velocity import point
from loadfirst.units import TO_SI

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

MM = TO_SI["mm"]


def check_valve(number: int, inlet: str, outlet: str) -> Spec:
    """The check valve of the pump with that number."""
    return Spec(f"check-{number}", inlet, outlet, "checks", _values)


def check_drop(one: OnePlant) -> float:
    """Head lost in the check valves on one way through the plant. [m]"""
    return sum(share * one.drop(check) for share, check in zip(one.shares, one.layout.checks, strict=False))


def _stand(shape: Shape, node: str) -> Stand:
    if len(shape.machines) > 1:  # they stand inside the station
        return Stand((), node)
    return Stand((check_valve(1, node, "after-check"),), "after-check")


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached or plant.pump.arrangement != "single"


def _values(given: Given) -> tuple[float, ...]:
    check = given.plant.check
    unit = float(velocity_head(1.0, given.plant.discharge.bore_mm * MM))
    holds = check.fitted and not check.stuck_open
    return check.k * unit * check.fitted, holds, check.leak_kv_m3h


def _losses(one: OnePlant) -> Iterator[Loss]:
    if not one.plant.check.fitted:
        return
    if one.dry:  # no liquid is there that it could hold
        yield Loss("check-valve", 0.0)
    else:
        ways = zip(one.shares, one.layout.checks, strict=True)
        yield Loss("check-valve", check_drop(one), any(share and one.shut(check) for share, check in ways))


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    if one.layout.check_in_load and one.plant.check.fitted:
        velocity = one.velocity_head("check-1", one.plant.discharge.bore_mm)
        yield point(one, "after-check", behind, one.plant.pump.centre_m, velocity)


SECTION = Section("check-valve", _stand, _fitted, _losses, _places)
