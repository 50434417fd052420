"""Causes on the way from the supply vessel to the pumps: they too are part of what the load asks.

Hot liquid stands here, because it is through the suction that it acts: it
boils there first.
"""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.edit import value
from loadfirst.causes.group import Group
from loadfirst.causes.pairs import Way, additions
from loadfirst.plant.air import air_pressure
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.units import BAR

GROUP: Group = "suction-side"
LEAST_AIR = 0.5  # [bar] that a plant file may state
AIR_BOUND = 30.0  # [%] of gas: the most that the model knows, at which no impeller holds a head
MOST_GAS = 30.0  # [%]


def _air(plant: ResolvedPlant) -> float:
    """[bar]"""
    return air_pressure(plant.plant) / BAR


def _mouth(plant: ResolvedPlant) -> float:
    """[m]"""
    mouth = plant.plant.suction.mouth_m
    return plant.plant.supply.bottom_m if mouth is None else mouth


def _thinner(plant: ResolvedPlant, size: float) -> Edits:
    return {"site.barometer_bar": _air(plant) - size, "site.altitude_m": None}


def _least_gas(plant: ResolvedPlant) -> float:
    """How far the supply's pressure may fall: to 0.1 bar absolute, -0.9 bar gauge at most. [bar]"""
    return max(-0.9, 0.1 - _air(plant))


SUPPLY_LEVEL = additions(
    "supply.surface_m",
    Way("supply-level-higher", "The level in the supply vessel has risen.", 1),
    Way("supply-level-lower", "The level in the supply vessel has fallen.", 1),
    unit="m", most=20, ends=("supply.top_m", "supply.bottom_m"), group=GROUP, shown_by=("near-vessel",),
)  # fmt: skip
SUPPLY_PRESSURE = additions(
    "supply.gas_bar",
    Way("supply-pressure-higher", "The pressure in the supply vessel has risen.", 0.2),
    Way(
        "supply-pressure-lower",
        "The pressure in the supply vessel has fallen; with a plugged vent it goes into vacuum.", 0.2,
    ),
    unit="bar", most=5, ends=(40.0, _least_gas), group=GROUP, shown_by=("near-vent",),
)  # fmt: skip
TEMPERATURE = additions(
    "liquid.temperature_c",
    Way("hotter-liquid", "The water comes hotter, nearer to boiling.", 30, "rise of temperature"),
    Way("colder-liquid", "The water comes colder.", 15, "fall of temperature"),
    unit="°C", most=100, ends=(100.0, 0.0), group=GROUP, shown_by=("thermometer", "rattle"),
    unless=e.needs("liquid.name", "water", "only water's properties are known at another temperature"),
)  # fmt: skip
STRAINER = Cause(
    id="strainer-blocked", group=GROUP, keys=("suction.strainer_k",),
    says="The strainer in the suction line is blocked.",
    size=Size("-", "share of its open area that is stopped up", 0, 0.98, none=0, usual=0.8),
    edit=lambda plant, size: {"suction.strainer_k": value(plant, "suction.strainer_k") / (1 - size) ** 2},
    unless=e.bars_with("suction.strainer_k", 0.0, "there is no strainer"), shown_by=("strainer-basket",),
    room=lambda plant: (0.0, 1 - (value(plant, "suction.strainer_k") / 1e5) ** 0.5),
    source="common practice; that the loss goes with the square of the velocity in what is left open is ours",
)  # fmt: skip
SUCTION_VALVE = Cause(
    id="suction-valve-half-shut", group=GROUP, keys=("suction.fittings_k",), alike="strainer-blocked",
    says="A valve in the suction line was left half shut.",
    size=Size("-", "loss coefficient that it adds", 0.1, 900, none=0, usual=20, scale="log"),
    edit=e.plus("suction.fittings_k"), room=e.above("suction.fittings_k", 1000.0),
    shown_by=("suction-valve", "shift-log"),
)  # fmt: skip
AIR_LEAK = Cause(
    id="air-leak", group=GROUP, keys=("suction.gas_percent",), hunts=True,
    says="Air leaks into the suction line, at a joint or at the shaft seal.",
    size=Size("%", "volume of air at the inlet, added", 0, 12, none=0, usual=4),
    edit=e.plus("suction.gas_percent"), room=e.above("suction.gas_percent", MOST_GAS),
    shown_by=("suction-joints",),
)  # fmt: skip
WHIRL = Cause(
    id="whirl-at-outlet", group=GROUP, keys=("suction.gas_percent",), alike="air-leak", hunts=True,
    says="The level is so low that a whirl at the outlet draws air down.",
    size=Size("%", "volume of air at the inlet, added", 0, 12, none=0, usual=3),
    edit=e.plus("suction.gas_percent"), room=e.above("suction.gas_percent", MOST_GAS),
    shown_by=("surface-watched", "near-vessel"),
)  # fmt: skip
NOT_PRIMED = Cause(
    id="air-bound", group=GROUP, keys=("suction.gas_percent",),
    says="The pump was not primed: air fills it, and it moves next to nothing.",
    edit=e.to("suction.gas_percent", AIR_BOUND),
    unless=e.first(
        e.needs_impeller, e.bars_with("suction.gas_percent", AIR_BOUND, "it is full of air already")
    ),
    shown_by=("casing-vented",),
)  # fmt: skip
MOUTH = Cause(
    id="suction-mouth-higher", group=GROUP, keys=("suction.mouth_m",),
    says="The foot of the suction pipe has come off, and its mouth stands higher in the vessel.",
    size=Size("m", "how much higher", 0, 20, none=0, usual=1),
    edit=lambda plant, size: {"suction.mouth_m": _mouth(plant) + size},
    room=lambda plant: (0.0, plant.plant.supply.surface_m - _mouth(plant)),
    shown_by=("surface-watched", "suction-pipe-seen"),
)  # fmt: skip
THIN_AIR = Cause(
    id="thinner-air", group=GROUP, keys=("site.barometer_bar", "site.altitude_m"),
    says="The air is thinner: the same plant higher up, or a low barometer.",
    size=Size("bar", "fall of the air's pressure", 0, 0.5, none=0, usual=0.1),
    edit=_thinner, room=lambda plant: (0.0, _air(plant) - LEAST_AIR), shown_by=("barometer",),
)  # fmt: skip

CAUSES = (
    *SUPPLY_LEVEL, *SUPPLY_PRESSURE, STRAINER, SUCTION_VALVE, *TEMPERATURE, AIR_LEAK, WHIRL, MOUTH,
    NOT_PRIMED, THIN_AIR,
)  # fmt: skip
