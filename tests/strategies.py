"""Legal plants of every shape: for hypothesis, and by the thousand from a seed.

A plant starts as a sensible one, its lines and valve chosen for its pump; then
a few keys are set anywhere in their legal range, the very ends included
(`any_key`), and what the ranges alone do not ensure (a surface between bottom
and rim) is mended.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from math import exp, log, pi, sqrt
from random import Random
from typing import Any, TypeVar

from hypothesis import strategies as st
from tests.any_key import Change, Chooser, Data, set_any, take_back

from loadfirst.errors import InputError
from loadfirst.physics.changes.rotation import pumps_backward
from loadfirst.plant.checks import check_plant
from loadfirst.plant.decode import decode
from loadfirst.plant.plant import Branch, Curve, Discharge, Plant, ReturnLine, SecondLine, Suction
from loadfirst.plant.points import pump_curve
from loadfirst.plant.pumps import ResolvedPlant, resolve

T = TypeVar("T")

MODELS = ("small", "medium", "large", "mixed", "axial")
DISPLACE = ("gear", "lobe", "screw")
SELDOM = 20
"""One pump out of so many, of those whose points are drawn, droops: such a plant takes long."""
MACHINES = ("centrifugal", "centrifugal", "centrifugal", "displacement", "unlike")
"""Centrifugal pumps, equal if two; displacement pumps; a centrifugal pump with any other."""
ARRANGEMENTS = ("single", "side-by-side", "in-line")
LINES = {
    "suction": Suction(),
    "discharge": Discharge(),
    "branch": Branch(),
    "return_line": ReturnLine(),
    "second_line": SecondLine(),
}
"""Tables with a bore and a roughness, as they are when nothing is said."""


class Drawn:
    """Choices made by hypothesis, which will look for the simplest that fails."""

    def __init__(self, draw: Callable[[st.SearchStrategy[Any]], Any]) -> None:
        self.draw = draw

    def number(self, low: float, high: float) -> float:
        return float(self.draw(st.floats(low, high)))

    def pick(self, items: Sequence[T]) -> T:
        picked: T = self.draw(st.sampled_from(items))
        return picked


class Dice:
    """Choices made from a seed."""

    def __init__(self, seed: int) -> None:
        self.random = Random(seed)

    def number(self, low: float, high: float) -> float:
        return self.random.uniform(low, high)

    def pick(self, items: Sequence[T]) -> T:
        return self.random.choice(items)


@st.composite
def plants(
    draw: Callable[[st.SearchStrategy[Any]], Any],
    arrangements: Sequence[str] = ARRANGEMENTS,
    attached: Sequence[bool] = (True, True, True, False),
    wild: Sequence[int] = (0, 0, 1, 2, 5),
    machines: Sequence[str] = MACHINES,
) -> ResolvedPlant:
    """Legal plants; `wild` says how many keys may stand anywhere in their range."""
    choose = Drawn(draw)
    shape = choose.pick(arrangements), choose.pick(attached)
    return legal(plant_data(choose, *shape, choose.pick(wild), choose.pick(machines)))


def random_plants(seed: int, count: int) -> Iterator[ResolvedPlant]:
    """As many plants, the same for the same seed."""
    choose = Dice(seed)
    for _ in range(count):
        yield legal(any_data(choose))


def any_data(choose: Chooser) -> Data:
    """A plant of any shape as it would stand in a file; now and then most keys are anywhere."""
    shape = choose.pick(ARRANGEMENTS), choose.pick((True, True, True, False))
    data = plant_data(choose, *shape, choose.pick((0, 0, 1, 2, 5, 5, 15, 60)), choose.pick(MACHINES))
    if choose.pick((False,) * (SELDOM - 1) + (True,)) and "curve" in data["pump"]:
        _droop(choose, data)
    return data


def legal(data: Data) -> ResolvedPlant:
    """Decode and check as a file would be."""
    plant = decode(Plant, data)
    check_plant(plant)
    return resolve(plant)


def plant_data(
    choose: Chooser, arrangement: str, attached: bool, wild: int, machine: str = "centrifugal"
) -> Data:
    """A plant as it would stand in a file."""
    curve = _curve(choose)
    flow, head = curve["flow_m3h"][-1] * choose.number(0.3, 0.9), curve["head_m"][0]
    data: Data = {
        "format": 1,
        "title": "Any plant",
        "liquid": _liquid(choose),
        "supply": _vessel(choose, choose.number(-4, 6)),
        "suction": _line(choose, flow, (0.3, 4.0), (0.5, 50)),
        "pump": {"arrangement": arrangement, "centre_m": choose.number(-5, 5)},
        "drive": _drive(choose, curve["speed_rpm"]),
        "check": {"fitted": choose.pick((True, True, False)), "k": choose.number(0, 10)},
        "valve": _valve(choose, flow),
        "discharge": _line(choose, flow, (0.5, 6.0), (1, 2000)) | {"attached": attached},
        "delivery": _vessel(choose, choose.number(-0.3, 1.2) * min(head, 700.0)),
    }
    data["pump"] |= {"model": choose.pick(MODELS)} if choose.pick((True, False, False)) else {"curve": curve}
    if machine == "displacement":
        own = choose.pick(({"displacement": _displacement(choose, flow)}, {"model": choose.pick(DISPLACE)}))
        data["pump"] = {"arrangement": arrangement} | own
        data["relief"] = {"fitted": choose.pick((True, True, True, False))}
    elif machine == "unlike":
        data["pump"]["second"] = {"model": choose.pick((*MODELS, *DISPLACE))}
    if choose.pick((True, False, False)):
        data["delivery"]["outlet_m"] = data["delivery"]["surface_m"] + choose.number(-1, 3)
    if attached and choose.pick((True, False)):
        for table, keys in _beside(choose, flow, data["delivery"]["surface_m"]).items():
            data[table] = data.get(table, {}) | keys
    if choose.pick((True, False, False)):
        data["pump"] |= _condition(choose, impeller=machine != "displacement")
        data["pump"].setdefault("second", {}).update(_condition(choose, impeller=False))
    data["pump"]["running"] = choose.pick((True,) * 9 + (False,))
    data["pump"].setdefault("second", {})["running"] = choose.pick((True, True, True, False))
    data["suction"]["gas_percent"] = choose.pick((0.0, 0.0, 0.0, choose.number(0, 30)))
    if choose.pick((True, False, False, False)):
        data["relief"] = _relief(choose, flow, head)
    changes = [change for _ in range(wild) if (change := set_any(choose, data))]
    return _made_legal(data, changes)


def drooped(choose: Chooser, curve: Data) -> Data:
    """A curve whose heads are taken down towards no flow, or in a saddle, by a little or by much."""
    flow, head = curve["flow_m3h"], list(curve["head_m"])
    peak, depth = choose.pick(range(1, len(flow) - 1)), choose.number(0.01, 0.6)
    low = choose.pick((0.0, 0.0, choose.number(0.0, 1.0))) * flow[peak]
    for k in range(peak):
        head[k] *= 1 - depth * max(0.0, 1 - abs(flow[k] - low) / (flow[peak] - low)) ** 2
    return curve | {"head_m": head}


def _droop(choose: Chooser, data: Data) -> None:
    """Let the pump's curve droop, unless that makes the plant illegal."""
    falling = data["pump"]["curve"]
    data["pump"]["curve"] = drooped(choose, falling)
    try:
        legal(data)
    except InputError:
        data["pump"]["curve"] = falling


def _made_legal(data: Data, changes: list[Change]) -> Data:
    """What holds between keys mended; a change that cannot be is taken back. Without any it is legal."""
    while True:
        try:
            legal(mended(data))
        except InputError as fault:
            if not changes:
                raise
            take_back(data, changes, fault)
        else:
            return data


def _times(choose: Chooser, low: float, high: float) -> float:
    """A number over orders of magnitude."""
    return min(max(exp(choose.number(log(low), log(high))), low), high)


def _curve(choose: Chooser) -> Data:
    """A pump of any size: heads that fall, flat or steep; efficiency or power."""
    count = choose.pick((3, 4, 6, 9, 15))
    last, shut_off = _times(choose, 0.2, 3000), _times(choose, 1, 400)
    steps = [choose.number(0.3, 1) for _ in range(count - 1)]
    flows = [last * sum(steps[:k]) / sum(steps) for k in range(count)]
    depth, bend = choose.number(0.05, 0.98), choose.pick((1.0, 1.5, 2.0, 3.0))
    heads = [shut_off * (1 - depth * (flow / last) ** bend) for flow in flows]
    peak, best = choose.number(20, 88), choose.number(0.5, 1.0)
    shares = [flow / last / best for flow in flows]
    efficiency = [0.0] + [max(peak * (1 - (1 - share) ** 2), 1.0) for share in shares[1:]]
    hydraulic = [9.80665 * flow / 3600 * head for flow, head in zip(flows, heads, strict=True)]
    powers = [kw / (e / 100) for kw, e in zip(hydraulic[1:], efficiency[1:], strict=True)]
    curve: Data = {
        "speed_rpm": choose.pick((970.0, 1450.0, 2900.0, 3500.0)),
        "flow_m3h": flows,
        "head_m": heads,
        "npshr_m": [0.5 + 6 * (flow / last) ** 2 for flow in flows],
        "motor_kw": min(max(max(powers) * choose.number(0.6, 2.0), 0.01), 20000.0),
    }
    if choose.pick((True, False)) and max(powers) < 15000:
        rising = [max(powers[0] * choose.number(0.4, 1.2), 0.002), *[max(kw, 0.002) for kw in powers]]
        return curve | {"power_kw": rising}
    return curve | {"efficiency_percent": efficiency}


def _displacement(choose: Chooser, flow: float) -> Data:
    """A displacement pump that gives about that flow [m³/h], tight or wide, its motor fit or not."""
    speed, pressure = choose.pick((300.0, 960.0, 1450.0, 2900.0)), _times(choose, 1, 100)
    displacement = min(max(flow / speed / 60 * 1e6, 0.1), 1e6)
    needed = displacement * 1e-6 * speed / 60 * pressure * 1e5 / 1e3 / 0.8
    return {
        "kind": choose.pick(("gear", "lobe", "screw")),
        "motor_kw": min(max(needed * choose.number(0.7, 2), 0.01), 20000.0),
        "displacement_cm3": displacement,
        "speed_rpm": speed,
        "pressure_bar": pressure,
        "gear_ratio": choose.pick((1.0, 1.0, choose.number(1, 20))),
        "limit_bar": pressure * choose.number(1, 2),
        "volumetric_percent": choose.number(60, 99),
        "mechanical_percent": choose.number(40, 95),
        "viscosity_mpas": _times(choose, 1, 1000),
        "npshr_m": choose.number(0.5, 6),
    }


def _condition(choose: Chooser, impeller: bool) -> Data:
    """What has become of a pump; some of it only where it has an impeller."""
    any_pump = {
        "wear_percent": choose.pick((0.0, choose.number(0, 50))),
        "rotation": choose.pick(("right", "right", "wrong")),
    }
    if not impeller:
        return any_pump
    return any_pump | {
        "trim_percent": choose.pick((100.0, choose.number(70, 120))),
        "blocked_percent": choose.pick((0.0, 0.0, choose.number(0, 100))),
    }


def _relief(choose: Chooser, flow: float, head: float) -> Data:
    """A relief valve that may lift or not, in any state."""
    return {
        "fitted": True,
        "set_bar": min(max(head / 10 * choose.number(0.2, 2), 0.05), 1000.0),
        "capacity_m3h": max(flow * _times(choose, 0.1, 3), 0.05),
        "state": choose.pick(("sound", "sound", "blocked", "passing")),
    }


def _liquid(choose: Chooser) -> Data:
    if choose.pick((True, True, False)):
        return {"temperature_c": choose.number(0, 100)}
    return {
        "name": "oil",
        "density_kgm3": choose.number(600, 1500),
        "viscosity_mpas": _times(choose, 0.2, 2000),
        "vapour_bar": choose.number(0, 1),
    }


def _vessel(choose: Chooser, surface: float) -> Data:
    return {
        "surface_m": surface,
        "bottom_m": surface - choose.number(0, 3),
        "top_m": surface + choose.number(0.1, 3),
        "gas_bar": choose.pick((0.0, 0.0, choose.number(-0.5, 3.0))),
    }


def _line(choose: Chooser, flow: float, speed: tuple[float, float], length: tuple[float, float]) -> Data:
    """A pipe in which that flow [m³/h] has a usual speed [m/s]."""
    bore = min(max(sqrt(flow / 3600 / _times(choose, *speed) * 4 / pi) * 1e3, 5.0), 2000.0)
    return {
        "length_m": _times(choose, *length),
        "bore_mm": bore,
        "roughness_mm": bore * choose.pick((0.0, 1e-4, 1e-3, 0.05)),
        "fittings_k": choose.number(0, 20),
    }


def _drive(choose: Chooser, speed: float) -> Data:
    """Mostly the motor that the pump was measured with."""
    usual = {970.0: (6, 50), 1450.0: (4, 50), 2900.0: (2, 50), 3500.0: (2, 60)}[speed]
    poles, supply = choose.pick((usual, usual, usual, (choose.pick((2, 4, 6, 8)), choose.pick((50, 60)))))
    drive: Data = {"supply_hz": supply, "poles": poles}
    drive |= choose.pick(({}, {}, {"frequency_hz": choose.number(5, 75)}))
    drive |= choose.pick(({}, {}, {"voltage_percent": choose.number(60, 115)}))
    drive |= choose.pick(({}, {}, {}, {"phases": 2}))
    drive |= choose.pick(({}, {}, {"mains_percent": choose.number(80, 120)}))
    drive |= {"efficiency_class": choose.pick(("IE1", "IE2", "IE3", "IE4"))}
    drive |= {"start": choose.pick(("direct", "direct", "ramp"))}
    belt: Data = {
        "belt": choose.pick(("v-belt", "v-belt", "toothed")),
        "belt_ratio": choose.pick((1.0, choose.number(0.25, 2.5))),
        "belt_tension_percent": choose.number(10, 150),
    }
    return drive | choose.pick(({}, {}, belt))


def _beside(choose: Chooser, flow: float, far: float) -> Data:
    """What not every plant has beside its one way from vessel to vessel: each of it now and then."""
    extras: Data = {
        "branch": _line(choose, flow, (0.5, 10.0), (1, 300))
        | {
            "opening": choose.pick((0.0, 1.0, choose.number(0, 1))),
            "kv_open_m3h": min(max(flow * _times(choose, 0.05, 5), 0.01), 1e5),
            "end_m": min(max(far + choose.number(-10, 10), -30.0), 1000.0),
            "gas_bar": choose.pick((0.0, 0.0, choose.number(0, 5))),
            "pours": choose.pick((True, False)),
        },
        "return_line": _line(choose, flow, (0.5, 20.0), (1, 50))
        | {
            "opening": choose.pick((0.0, 1.0, choose.number(0, 1))),
            "kv_open_m3h": min(max(flow * _times(choose, 0.02, 2), 0.01), 1e5),
        },
        "filter": {
            "fouling": choose.pick((0.0, _times(choose, 0.1, 1000))),
            "clean_drop_bar": choose.number(0, 1),
            "clean_flow_m3h": min(max(flow * _times(choose, 0.3, 3), 0.01), 1e5),
            "housing_k": choose.number(0, 20),
        },
        "burst": {"hole_mm": _times(choose, 1, 300)},
        "second_line": _line(choose, flow, (0.5, 20.0), (1, 2000)),
        "summit": {
            "height_m": min(max(far + choose.number(-5, 15), -30.0), 1100.0),
            "at": choose.number(0.05, 0.95),
            "primed": choose.pick((True, False)),
        },
    }
    chosen = {table: keys | {"fitted": True} for table, keys in extras.items() if choose.pick((True, False))}
    if choose.pick((True, False)):
        chosen["valve"] = {"recovery": choose.number(0.3, 1)}
    if choose.pick((True, False, False)):
        chosen["discharge"] = {"filled": choose.number(0.01, 1)}
    if choose.pick((True, False, False)):
        worn: tuple[Data, ...] = {"stuck_open": True}, {"leak_kv_m3h": flow * _times(choose, 0.001, 1)}
        chosen["check"] = choose.pick(worn)
    return chosen


def _valve(choose: Chooser, flow: float) -> Data:
    return {
        "kv_open_m3h": min(max(flow * _times(choose, 0.2, 20), 0.01), 1e5),
        "characteristic": choose.pick(("linear", "equal-percentage", "quick-opening")),
        "rangeability": choose.number(5, 200),
        "opening": choose.pick((0.0, 1.0, choose.number(0, 1), choose.number(0, 1))),
    }


def _mend_rotation(first: Data, second: Data) -> None:
    """In line no pump may pump backward, side by side not two unlike ones."""
    if first.get("arrangement", "single") == "single":
        return
    back = [
        pump.get("rotation") == "wrong" and pump.get("running", True) and _no_impeller(own)
        for pump, own in ((first, first), (second, second if "model" in second else first))
    ]
    alike = all(
        first.get(key) == second.get(key) for key in ("wear_percent", "trim_percent", "blocked_percent")
    )
    unlike = "model" in second or "motor_kw" in second or not alike
    for pump, turns in zip((first, second), back, strict=True):
        if turns and (first["arrangement"] == "in-line" or (all(back) and unlike)):
            pump["rotation"] = "right"


def _no_impeller(pump: Data) -> bool:
    """Whether a pump that turns the wrong way pumps backward."""
    if "curve" in pump:
        return pumps_backward(pump_curve(decode(Curve, pump["curve"])))
    return "displacement" in pump or pump.get("model") in (*DISPLACE, "axial")


def mended(data: Data) -> Data:
    """What holds between keys: see `plant.checks`."""
    first, second = data["pump"], data["pump"].get("second", {})
    for pump, own in ((first, first), (second, second if "model" in second else first)):
        if "displacement" in own or own.get("model") in DISPLACE:  # it has no impeller
            pump.pop("trim_percent", None)
            pump.pop("blocked_percent", None)
    _mend_rotation(first, second)
    site = data.setdefault("site", {})
    if "altitude_m" in site:
        site.pop("barometer_bar", None)
        air = 1.01325 * (1 - 2.25577e-5 * site["altitude_m"]) ** 5.25588
    else:
        air = site.get("barometer_bar", 1.01325)
    for vessel in (data["supply"], data["delivery"]):
        lowest, highest = (-30.0, 200.0) if vessel is data["supply"] else (-30.0, 1000.0)
        vessel["surface_m"] = min(max(vessel["surface_m"], lowest), highest)
        vessel["bottom_m"] = min(max(vessel["bottom_m"], -35.0), vessel["surface_m"])
        vessel["top_m"] = max(vessel["top_m"], vessel["surface_m"], vessel["bottom_m"] + 0.1, -30.0)
        vessel["gas_bar"] = max(vessel["gas_bar"], -0.99999 * air)
    if data["suction"].get("mouth_m") is not None:
        data["suction"]["mouth_m"] = max(data["suction"]["mouth_m"], data["supply"]["bottom_m"])
    for name, usual in LINES.items():
        if name in data:
            line = {"bore_mm": usual.bore_mm, "roughness_mm": usual.roughness_mm} | data[name]
            data[name] = line | {"roughness_mm": min(line["roughness_mm"], line["bore_mm"] / 20.0001, 5.0)}
    limits = data.get("control", {})
    limits["low_percent"] = min(limits.get("low_percent", 0.0), limits.get("high_percent", 100.0))
    if data.get("second_line", {}).get("fitted"):
        data["discharge"]["filled"] = 1.0
    if data["delivery"].get("outlet_m") is not None:
        outlet = max(data["delivery"]["outlet_m"], data["delivery"]["bottom_m"], -30.0)
        data["delivery"]["outlet_m"] = min(outlet, 1010.0)
    return data
