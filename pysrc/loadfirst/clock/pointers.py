"""Pointers through time: a damped instrument follows late, a gauge that is shut off stays where it was.

A step's end counts for the whole step, so that where the truth stands still any steps lead a
pointer to the same place.
"""

from __future__ import annotations

from collections.abc import Mapping

from loadfirst.instruments.faults.damping import lagged
from loadfirst.instruments.senses import METER, Truth, all_sensed, gauges_of
from loadfirst.plant.path import nodes
from loadfirst.plant.plant import Plant
from loadfirst.plant.solved import OnePlant


def any_late(plant: Plant) -> bool:
    """Whether any instrument is damped, so that each step counts."""
    return any(_damping(plant).values())


def pointers(
    plant: Plant, one: OnePlant, before: Mapping[str, float] | None = None, span: float = 0.0
) -> dict[str, float]:
    """Where pointers stand after a span of time, by the instrument's id; [Pa], flow as it is sensed.

    Parameters
    ----------
    plant : with its instruments.
    one : the plant in balance, as it is at the end of the span.
    before : where they stood; None: they have long followed.
    span : from 0. [s]
    """
    flows = {name: one.flow(name) for name in one.layout.aside}
    converged = bool(one.solved.solution.converged[one.row])
    truth = Truth(converged, nodes(one), one.flow("suction-line"), flows, one.liquid.density)
    late, stay, found = _damping(plant), _shut_off(plant), {}
    for name, now in all_sensed(plant, truth).items():
        stood = None if before is None else before.get(name)
        if name in stay:
            now = stood
        elif now is not None and stood is not None:
            now = lagged(stood, now, span, late[name])
        if now is not None:
            found[name] = now
    return found


def _damping(plant: Plant) -> dict[str, float]:
    """Time constants. [s]"""
    found = {f"gauge-{place}": gauge.fault.damping_s for place, gauge in gauges_of(plant).items()}
    return found | {METER: plant.meters.flow_fault.damping_s}


def _shut_off(plant: Plant) -> set[str]:
    return {f"gauge-{place}" for place, gauge in gauges_of(plant).items() if gauge.fault.root_valve == "shut"}
