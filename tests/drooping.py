"""Plants whose pumps' curves droop, for tests: one to reckon with, and any number at random."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi
from typing import Any

from msgspec.structs import replace
from tests.plants import LEAST
from tests.strategies import ARRANGEMENTS, Dice, drooped, legal, plant_data

from loadfirst.errors import LoadfirstError
from loadfirst.plant.pumps import ResolvedPlant

Data = dict[str, Any]

DROOPING: Data = {
    "motor_kw": 4,
    "flow_m3h": [0, 5, 10, 15, 20, 25, 30],
    "head_m": [24, 26.5, 28, 27.5, 25, 21, 15],
    "efficiency_percent": [0, 30, 50, 60, 65, 63, 55],
    "npshr_m": [1, 1, 1.1, 1.3, 1.5, 2, 2.4],
}
"""Rises from 24 m at no flow to 28 m at 10 m³/h. Our own numbers."""


def lifting(lift: float, arrangement: str = "single", **tables: Data) -> ResolvedPlant:
    """A plant that lifts so far [m] with drooping pumps, through a wide line so that the load is flat."""
    pump = {"curve": DROOPING, "arrangement": arrangement} | tables.pop("pump", {})
    data: Data = {
        **LEAST,
        "pump": pump,
        "delivery": {"surface_m": lift + 2, "bottom_m": lift, "top_m": lift + 3},
        "discharge": {"length_m": 50, "bore_mm": 100},
        "valve": {"opening": 1.0, "kv_open_m3h": 200},
        **tables,
    }
    return legal(data)


def drooping_plants(seed: int, count: int) -> Iterator[ResolvedPlant]:
    """As many plants of every shape, the same for the same seed; half lift nearly as far as they can."""
    choose = Dice(seed)
    while count:
        arrangement = choose.pick(ARRANGEMENTS)
        shape = arrangement, choose.pick((True, True, True, False))
        data = plant_data(choose, *shape, choose.pick((0, 0, 1, 2)), choose.pick(("centrifugal", "unlike")))
        if "curve" not in data["pump"]:
            continue
        curve = data["pump"]["curve"] = drooped(choose, data["pump"]["curve"])
        _lift_to(choose, data, max(curve["head_m"]) * (2 if arrangement == "in-line" else 1))
        for pump in (data["pump"], data["pump"]["second"] if "second" in data["pump"] else {}):
            pump["history_m3h"] = choose.pick((0.0, choose.number(0, curve["flow_m3h"][-1])))
        try:
            yield legal(data)
        except LoadfirstError:  # a pump that may not turn the wrong way, or a surface out of its vessel
            continue
        count -= 1


MOTORS = {970.0: (6, 50), 1450.0: (4, 50), 2900.0: (2, 50), 3500.0: (2, 60)}
"""Poles and supply at which a pump runs about as it was measured, by its speed."""


def _lift_to(choose: Dice, data: Data, peak: float) -> None:
    """Often a sound pump that lifts to between its head at no flow and its highest, through a wide line."""
    curve = data["pump"]["curve"]
    if choose.pick((True, False)) or curve["speed_rpm"] not in MOTORS:
        return
    poles, supply = MOTORS[curve["speed_rpm"]]
    surface = min(data["supply"]["surface_m"] + peak * choose.number(0.4, 1.05), 1000.0)
    wide = min(max(curve["flow_m3h"][-1] ** 0.5 * choose.number(10, 40), 5.0), 2000.0)
    data["delivery"] = {"surface_m": surface, "bottom_m": surface - 1, "top_m": surface + 1}
    data["supply"].pop("gas_bar", None)
    data["drive"] = {"poles": poles, "supply_hz": supply}
    data["valve"] = {"opening": 1.0, "kv_open_m3h": min(curve["flow_m3h"][-1] * choose.number(1, 20), 1e5)}
    data["liquid"] = {}
    data["suction"] = {"bore_mm": wide, "roughness_mm": 0.0}
    data["discharge"] |= {"bore_mm": wide, "roughness_mm": 0.0, "length_m": 30.0}
    for key in ("trim_percent", "blocked_percent", "rotation"):
        data["pump"].pop(key, None)


def short_drooping_plants(seed: int, count: int) -> Iterator[ResolvedPlant]:
    """The same, most of them short of NPSH where they run: hot, high, or with a stopped-up strainer."""
    choose = Dice(seed)
    for one in drooping_plants(seed, count):
        plant = one.plant
        flow = max(one.curve.flow_m3h) / 3600
        speed = flow / (pi / 4 * (plant.suction.bore_mm / 1000) ** 2)
        rest = 8.0 * choose.number(0.1, 1.2)  # [m] that the strainer takes at the pump's last flow
        clogged = replace(plant.suction, strainer_k=min(rest * 2 * 9.81 / speed**2, 1e5))
        hot = replace(plant.liquid, temperature_c=choose.pick((20.0, choose.number(80, 100))))
        liquid = hot if plant.liquid.name == "water" else plant.liquid
        why = choose.pick((True, False))
        yield one._replace(plant=replace(plant, suction=clogged if why else plant.suction, liquid=liquid))
