"""The control valve in the discharge line."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from loadfirst.physics.valve import HEAD_KV2, flow_coefficient
from loadfirst.plant.answer import Note, PathPoint
from loadfirst.plant.elements.section import Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.velocity import line_velocity_head, point

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

SEEN = 1e-6  # [-] of the drop


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("valve", node, "after-valve", "valves", _values),), "after-valve")


def _fitted(plant: Plant) -> bool:
    return plant.discharge.attached


def _values(given: Given) -> tuple[float, ...]:
    return (kv_of(given.plant),)


def kv_of(plant: Plant) -> float:
    """Flow coefficient at its opening. [m³/h]"""
    valve = plant.valve
    return float(flow_coefficient(valve.kv_open_m3h, valve.opening, valve.characteristic, valve.rangeability))


def _losses(one: OnePlant) -> Iterator[Loss]:
    yield Loss("valve", one.drop("valve"), one.shut("valve"))


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    yield point(one, "after-valve", behind, one.plant.pump.centre_m, line_velocity_head(one))


def _notes(one: OnePlant) -> Iterator[Note]:
    """Choked, it costs more than its own law says at that flow."""
    if one.plant.valve.recovery is None or one.shut("valve"):
        return
    free, drop = HEAD_KV2 * (one.exact_flow("valve") / kv_of(one.plant)) ** 2, one.drop("valve")
    if one.flow("valve") > 0 and drop > free * (1 + SEEN):
        yield Note("choked", "valve", {"drop": drop * one.weight, "most": free * one.weight})


SECTION = Section("valve", _stand, _fitted, _losses, _places, _notes)
