"""What a controller measures, of many plants at once: from a balanced network to its reading.

A controller reads what its instrument would: the flow meter's flow, or the
pressure at a gauge's dial, which is lower by the column up to it. Of a level it
is the flow that must equal the draw.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from loadfirst.physics.pipe import velocity_head
from loadfirst.units import BAR, HOUR, TO_SI, G

if TYPE_CHECKING:
    from loadfirst.physics.law import Array
    from loadfirst.plant.plant import Plant
    from loadfirst.plant.solved import Solved

MM = TO_SI["mm"]
EXACT = 1e-8
"""How exact a solved reading is, of the plant's scales. [-]"""

GAUGES = {
    "discharge-pressure": "discharge",
    "after-valve-pressure": "after-valve",
    "suction-pressure": "suction",
}
BACK = ("relief", "return-line")
"""Lines that end in the supply."""


def set_point(plant: Plant) -> float:
    """What the reading is to be. [m³/s] [Pa]"""
    control = plant.control
    if control.of in GAUGES:
        return control.set_bar * BAR
    by_level = {"delivery-level": plant.delivery.draw_m3h, "supply-level": plant.supply.inflow_m3h}
    return by_level.get(control.of, control.set_m3h) / HOUR


def readings(solved: Solved) -> Array:
    """What the controller of each plant reads. (B,) [m³/s] [Pa]"""
    return np.array([_reading(solved, row) for row in range(len(solved.built))])


def exactness(solved: Solved) -> Array:
    """How near the set point a reading can be told to be. (B,) [m³/s] [Pa]"""
    built = solved.built
    heads = built.head_scale * [liquid.density * G for liquid in built.liquids]
    pressures = np.array([one.plant.control.of in GAUGES for one in built.plants])
    return np.asarray(EXACT * np.where(pressures, heads, built.flow_scale))


def _reading(solved: Solved, row: int) -> float:
    plant, flow = solved.built.plants[row].plant, solved.solution.flow
    through = float(flow["suction-line"][row])
    if plant.control.of in GAUGES:
        return _pressure(solved, row, GAUGES[plant.control.of])
    if plant.control.of == "delivery-level":
        return float(flow["end"][row])
    if plant.control.of == "supply-level":
        return through - sum(float(flow[name][row]) for name in BACK if name in flow)
    return through


def _pressure(solved: Solved, row: int, node: str) -> float:
    """At the dial of the gauge there; between shut elements too, where it is what would just leak. [Pa]"""
    plant, liquid = solved.built.plants[row].plant, solved.built.liquids[row]
    line, gauge = (
        (plant.suction, plant.gauges.suction)
        if node == "suction"
        else (plant.discharge, plant.gauges.after_valve if node == "after-valve" else plant.gauges.discharge)
    )
    flow = float(solved.solution.flow["valve" if node == "after-valve" else "suction-line"][row])
    assert gauge.height_m is not None  # plant.pumps has seen to it
    head = (
        float(solved.solution.head[node][row])
        - gauge.height_m
        - float(velocity_head(flow, line.bore_mm * MM))
    )
    return head * liquid.density * G
