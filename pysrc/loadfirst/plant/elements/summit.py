"""A summit in the discharge line: whether its far leg pulls depends on history, and on the pressure there."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.siphon import Summits
from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import Note, PathPoint
from loadfirst.plant.elements.discharge_line import pipe_end, run
from loadfirst.plant.elements.section import Given, Loss, Section, Shape, Spec, Stand
from loadfirst.plant.heights import filling
from loadfirst.plant.line_numbers import pipe
from loadfirst.plant.outlets import holds, summit_rise
from loadfirst.plant.velocity import static_pressure

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import OnePlant

SPARE = 1e-3  # [Pa] above the vapour pressure of a broken summit, whatever the last digit of its head


def _stand(shape: Shape, node: str) -> Stand:
    return Stand((Spec("summit", node, "pipe-end", "summits", _values),), "pipe-end")


def _fitted(plant: Plant) -> bool:
    """While the line is being filled, its liquid ends at the summit or before it."""
    return plant.discharge.attached and plant.summit.fitted and not filling(plant)


def _values(given: Given) -> tuple[float, ...]:
    beyond = pipe(given, given.plant.discharge, *run(given.plant, beyond_summit=True))
    return *beyond, summit_rise(given), holds(given, "delivery")


def _broken(one: OnePlant) -> bool:
    """Whether air or vapour stands at the summit."""
    law, flow = _law(one)
    return bool(law.broken(flow)[0, 0])


def _law(one: OnePlant) -> tuple[Summits, np.ndarray]:
    law = one.built.network.laws["summits"]
    assert isinstance(law, Summits)
    return law.rows(np.array([one.row])), np.array([[one.exact_flow("summit")]])


def not_reached(one: OnePlant) -> bool:
    """Whether the liquid stands below the summit."""
    return one.shut("summit") and _rise(one) > 0


def _least_pressure(one: OnePlant) -> float:
    """Gauge pressure of what stands at a broken summit: the vapour's, or the air's. [Pa]"""
    if not one.plant.summit.primed:
        return 0.0
    return one.liquid.vapour_pressure - air_pressure(one.plant) + SPARE


def _rise(one: OnePlant) -> float:
    return summit_rise(Given(one.plant, one.liquid))


def _losses(one: OnePlant) -> Iterator[Loss]:
    drop = one.drop("summit")
    if not_reached(one):
        yield Loss("summit", _rise(one))
        yield Loss("not-reached", drop - _rise(one), shut=True)
    elif _broken(one):
        yield Loss("summit", drop)
    else:
        law, flow = _law(one)
        friction, fittings = law.breakdown(flow)
        yield Loss("pipe", float(friction[0, 0]))
        yield Loss("fittings", float(fittings[0, 0]))


def _places(one: OnePlant, behind: float) -> Iterator[PathPoint]:
    line, height = one.plant.discharge, one.plant.summit.height_m
    before, beyond = run(one.plant)[0], run(one.plant, beyond_summit=True)[0]
    velocity = one.velocity_head("discharge-line", line.bore_mm)
    head = None if not_reached(one) else one.head("summit")
    if head is not None and _broken(one):
        head = max(head, height + velocity + _least_pressure(one) / one.weight)
    pressure = static_pressure(one, head, height, velocity)
    yield PathPoint("summit", behind + before, height, head, pressure)
    yield from pipe_end(one, behind + before + beyond)


def _notes(one: OnePlant) -> Iterator[Note]:
    if not_reached(one):
        yield Note("not-reached", "summit", {"missing": _rise(one) - one.drop("summit")})
    elif _broken(one):
        law, flow = _law(one)
        friction, fittings = law.breakdown(flow)
        more = one.drop("summit") - float((friction + fittings)[0, 0])
        yield Note("siphon-broken" if one.plant.summit.primed else "not-primed", "summit", {"rise": more})


SECTION = Section("summit", _stand, _fitted, _losses, _places, _notes)
