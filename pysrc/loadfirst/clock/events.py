"""What can happen while time runs, as numbers that change their sign when it does.

A vessel runs empty or full, liquid gets to the end of a line or back to the pumps, a shaft is up
to speed or has stopped: these happen once, when their number falls to nought. A check valve, a
relief valve, an outlet below a surface and a pump on a curve that droops go to and fro: theirs is
above nought while they are open, lifted, covered, right of the curve's peak.
"""

from __future__ import annotations

from typing import Literal

import numpy as np

from loadfirst.clock.advance import Step
from loadfirst.clock.moment import Moment
from loadfirst.clock.present import LEAST_SPEED, filled
from loadfirst.clock.shafts import SAME, SETTLED, wanted
from loadfirst.clock.vessel import room
from loadfirst.physics.machine import Machines
from loadfirst.physics.relief import ReliefValves
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.shaft import field_speed
from loadfirst.plant.solved import OnePlant

Kind = Literal[
    "supply-empty",
    "supply-full",
    "delivery-empty",
    "delivery-full",
    "delivery-refilled",
    "line-full",
    "prime-regained",
    "running",
    "stopped",
    "trips",
    "outlet-covered",
    "outlet-free",
    "check-opens",
    "check-shuts",
    "relief-lifts",
    "relief-shuts",
    "flow-falls-back",
    "flow-recovers",
]

CROSSED = 1e-9
"""How far a number must be beyond nought to have changed its sign. [-]"""
PRIME, PRIME_SHARE = 0.2, 0.1
"""How high liquid must stand above a vessel's bottom before it flows again: [m], and at most that share."""


def once(resolved: ResolvedPlant, moment: Moment) -> dict[str, float]:
    """What happens when a number falls to nought and below; only what can happen from here. [-]"""
    plant, found = resolved.plant, {}
    for number, shaft in enumerate(moment.shafts):
        if shaft.regime != "standing" and not shaft.tripped:
            found[f"trips-{number + 1}"] = 1 - shaft.heat
    for name, vessel, held in (
        ("supply", plant.supply, moment.supply.volume),
        ("delivery", plant.delivery, moment.delivery.volume),
    ):
        found[f"{name}-empty"] = held[0] / room(vessel)
        found[f"{name}-full"] = 1 - held[0] / room(vessel)
    if plant.discharge.filled < 1:
        found["line-full"] = 1 - filled(plant, moment.line[0])
    if not moment.primed:
        found["prime-regained"] = (prime_level(plant) - level(moment)) / PRIME
    if moment.drained:
        deep = plant.delivery.top_m - plant.delivery.bottom_m
        found["delivery-refilled"] = min(PRIME, PRIME_SHARE * deep) / deep - held[0] / room(plant.delivery)
    return found


def level(moment: Moment) -> float:
    """Height of the supply's surface. [m]"""
    return moment.supply.bottom_m + moment.supply.volume[0] / moment.supply.area_m2


def prime_level(plant: Plant) -> float:
    """Height from which liquid runs into the pumps by itself. [m]"""
    supply = plant.supply
    above = min(PRIME, PRIME_SHARE * (supply.top_m - supply.bottom_m))
    return max(supply.bottom_m + above, plant.pump.centre_m)


def arrivals(resolved: ResolvedPlant, step: Step) -> dict[str, float]:
    """How far shafts are from where their inertia no longer counts. [-]"""
    found = {}
    on = wanted(resolved)
    for number, shaft in enumerate(step.moment.shafts):
        if shaft.regime != "turning":
            continue
        whole = field_speed(resolved, number)
        if not on[number] or shaft.tripped:
            found[f"stopped-{number + 1}"] = shaft.speed / whole - LEAST_SPEED
            continue
        fed = whole * shaft.frequency / resolved.plant.drive.supply_hz
        late = abs(step.stage.gains[number]) * SETTLED / whole - SAME
        slow = max(0.75 * fed - shaft.speed, shaft.speed - 1.05 * fed) / whole
        found[f"running-{number + 1}"] = max(late, slow)
    return found


def both_ways(resolved: ResolvedPlant, step: Step) -> dict[str, float]:
    """What may go to and fro: above 0 open, lifted, covered. [-]"""
    one = step.stage.solved.of(0)
    scale = float(one.built.head_scale[0])
    found = {}
    for check in one.layout.checks:
        shut = one.shut(check)
        found[check] = one.drop(check) / scale if shut else one.exact_flow(check) / one.flow_scale
    if "relief" in one.layout.aside:
        law, column = one.built.network.laws["reliefs"], one.layout.column("relief")
        assert isinstance(law, ReliefValves)
        stuck = bool(np.isnan(law.corners()[0, column]))
        found["relief"] = -1.0 if stuck else one.drop("relief") / float(law.set_head[0, column]) - 1
    found |= _right_of_peak(one)
    outlet = resolved.plant.delivery.outlet_m
    if outlet is not None:
        stock = step.moment.delivery
        found["outlet"] = (stock.bottom_m + stock.volume[0] / stock.area_m2 - outlet) / (
            resolved.plant.delivery.top_m - resolved.plant.delivery.bottom_m
        )
    return found


def _right_of_peak(one: OnePlant) -> dict[str, float]:
    """Of pumps whose curve droops: above 0 where more flow means less head, as it should. [-]"""
    found = {}
    for number in range(len(one.layout.pumps)):
        law, column = one.built.pump(number)
        if isinstance(law, Machines) and one.per_machine(law.droops)[column]:
            flow = np.full((1, law.count), max(one.exact_flow(one.layout.pumps[number]), 0.0))
            rise = float(law.rise(flow)[0, column])
            found[f"peak-{number + 1}"] = -rise * one.flow_scale / float(one.built.head_scale[one.row])
    return found


FALLS, CHANGES = "once", "both"


def starting(resolved: ResolvedPlant, moment: Moment) -> dict[str, tuple[float, bool]]:
    """What can happen from a moment on: its number and whether that is known.

    For what goes to and fro the number is its sign.
    """
    found = {name: (value, True) for name, value in once(resolved, moment).items() if value > 0}
    return found | {name: (1.0 if on else -1.0, False) for name, on in moment.marks.items()}


def signals(
    resolved: ResolvedPlant, before: dict[str, tuple[float, bool]], step: Step
) -> tuple[float, tuple[str, ...]]:
    """The least of all numbers at a step's end, above 0 where nothing has happened; and what has."""
    values = once(resolved, step.moment)
    found = {name: values[name] for name, (_, known) in before.items() if known and name in values}
    found |= arrivals(resolved, step)
    for name, value in both_ways(resolved, step).items():
        if name in before:
            found[name] = value * before[name][0] + CROSSED
    return min(found.values()), tuple(name for name, value in found.items() if value < 0)
