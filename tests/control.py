"""Plants that set themselves: random ones, and what must be true of them once they have."""

from __future__ import annotations

from math import pi
from typing import Any

from tests.strategies import ARRANGEMENTS, MACHINES, Chooser, Dice, ResolvedPlant, legal, mended, plant_data

from loadfirst.plant.solved import Solved
from loadfirst.plant.state import State

MEASURED = (
    "flow",
    "discharge-pressure",
    "after-valve-pressure",
    "suction-pressure",
    "delivery-level",
    "supply-level",
)
RISES = {
    "valve": {"flow", "after-valve-pressure", "delivery-level", "supply-level"},
    "drive": {"flow", "discharge-pressure", "after-valve-pressure", "delivery-level", "supply-level"},
}
"""What rises when the valve opens or the drive speeds up; all else falls. Of a level, the flow through."""


def controlled_plants(seed: int, count: int) -> list[ResolvedPlant]:
    """Random plants, each with a controller in automatic, a current limit or both."""
    choose = Dice(seed)
    return [legal(controlled(choose)) for _ in range(count)]


def controlled(choose: Chooser) -> dict[str, Any]:
    """One of them as it would stand in a file."""
    data = plant_data(
        choose, choose.pick(ARRANGEMENTS), choose.pick((True, True, True, False)), 0, choose.pick(MACHINES)
    )
    of = choose.pick(MEASURED)
    vessel = data["supply" if of == "supply-level" else "delivery"]
    flow = choose.pick((_usual(data) * choose.number(0, 1.2), choose.number(0, 50)))
    low, high = sorted((choose.number(0, 60), choose.number(30, 100)))
    vessel["inflow_m3h" if of == "supply-level" else "draw_m3h"] = min(flow, 3e5)
    data["control"] = {
        "fitted": choose.pick((True, True, True, False)),
        "of": of,
        "on": choose.pick(("valve", "drive")),
        "set_m3h": min(flow, 3e5),
        "set_bar": choose.pick((choose.number(-1, 3), choose.number(0, 20))),
        "set_m": choose.number(vessel["bottom_m"], vessel["top_m"]),
        **choose.pick(({}, {"low_percent": low, "high_percent": high})),
    }
    data["control"]["set_m"] = min(max(data["control"]["set_m"], vessel["bottom_m"], -30.0), vessel["top_m"])
    if choose.pick((True, False)):
        data["drive"]["current_limit_percent"] = choose.number(50, 200)
    return mended(data)


def _usual(data: dict[str, Any]) -> float:
    """A flow of the size of the pump's. [m³/h]"""
    pump = data["pump"]
    if "curve" in pump:
        return float(pump["curve"]["flow_m3h"][-1])
    if "displacement" in pump:
        made = pump["displacement"]
        return float(made["displacement_cm3"] * 1e-6 * made["speed_rpm"] * 60)
    return 30.0


def reading(one: ResolvedPlant, solved: Solved, row: int) -> float:
    """What a plant's controller reads, worked out anew; of a level the flow through. [m³/h] [bar]"""
    plant, solution = one.plant, solved.solution
    flows = {name: float(flow[row]) * 3600 for name, flow in solution.flow.items()}
    through = flows["suction-line"]
    match plant.control.of:
        case "flow":
            return through
        case "delivery-level":
            return flows["end"]
        case "supply-level":
            return through - flows.get("relief", 0.0) - flows.get("return-line", 0.0)
    node = plant.control.of.removesuffix("-pressure")
    bore = plant.suction.bore_mm if node == "suction" else plant.discharge.bore_mm
    here = flows["valve"] if node == "after-valve" else through
    speed = here / 3600 / (pi / 4 * (bore / 1000) ** 2)
    gauge = getattr(plant.gauges, node.replace("-", "_"))
    head = float(solution.head[node][row]) - gauge.height_m - speed**2 / (2 * 9.80665)
    return head * solved.built.liquids[row].density * 9.80665 / 1e5


def wanted(one: ResolvedPlant) -> float:
    """Its set point; of a level the flow drawn. [m³/h] [bar]"""
    control = one.plant.control
    if control.of.endswith("pressure"):
        return control.set_bar
    levels = {"delivery-level": one.plant.delivery.draw_m3h, "supply-level": one.plant.supply.inflow_m3h}
    return levels.get(control.of, control.set_m3h)


def rises(one: ResolvedPlant) -> bool:
    """Whether its reading rises with its output."""
    return one.plant.control.of in RISES[one.plant.control.on]


def noted(state: State, kind: str) -> list[str]:
    """Where there is a note of that kind."""
    return [note.where for note in state.notes if note.kind == kind]
