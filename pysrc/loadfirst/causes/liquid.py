"""Causes in the liquid itself: heavier or lighter, thicker or thinner, or with gas in it.

Water says everything by its temperature, so another liquid in its place brings
all three properties: those of the water, one of them changed.
"""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.group import Group
from loadfirst.causes.pairs import Way, factors
from loadfirst.physics.liquids import water
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.units import BAR

GROUP: Group = "liquid"
OTHER = "another liquid"
"""Name of what comes in the place of water."""
MPAS = 1e-3  # [Pa s]
KEYS = ("liquid.name", "liquid.density_kgm3", "liquid.viscosity_mpas", "liquid.vapour_bar")
DENSITIES, VISCOSITIES = (300.0, 3000.0), (0.05, 5000.0)
"""That a plant file may state. [kg/m³] [mPa·s]"""


def density(plant: ResolvedPlant) -> float:
    """[kg/m³]"""
    liquid = plant.plant.liquid
    return water(liquid.temperature_c).density if liquid.density_kgm3 is None else liquid.density_kgm3


def viscosity(plant: ResolvedPlant) -> float:
    """[mPa·s]"""
    liquid = plant.plant.liquid
    given = liquid.viscosity_mpas
    return water(liquid.temperature_c).viscosity / MPAS if given is None else given


def _denser(plant: ResolvedPlant, size: float) -> Edits:
    return _another(plant, density(plant) * size, viscosity(plant))


def _thicker(plant: ResolvedPlant, size: float) -> Edits:
    return _another(plant, density(plant), viscosity(plant) * size)


def _another(plant: ResolvedPlant, dense: float, thick: float) -> Edits:
    liquid = plant.plant.liquid
    edits: Edits = {"liquid.density_kgm3": dense, "liquid.viscosity_mpas": thick}
    if liquid.name != "water":
        return edits
    vapour = water(liquid.temperature_c).vapour_pressure / BAR
    return {"liquid.name": OTHER, **edits, "liquid.vapour_bar": vapour}


def _denser_room(plant: ResolvedPlant) -> tuple[float, float]:
    now = density(plant)
    return DENSITIES[0] / now, DENSITIES[1] / now


def _thicker_room(plant: ResolvedPlant) -> tuple[float, float]:
    now = viscosity(plant)
    return VISCOSITIES[0] / now, VISCOSITIES[1] / now


DENSITY = factors(
    KEYS,
    Way("denser-liquid", "The liquid is denser than before.", 1.2),
    Way("lighter-liquid", "The liquid is less dense than before.", 0.85),
    says="density, over the one before", low=0.5, high=2, edit=_denser, room=_denser_room,
    group=GROUP, shown_by=("sample-weighed",),
)  # fmt: skip
VISCOSITY = factors(
    KEYS,
    Way("thicker-liquid", "The liquid is more viscous than before.", 30),
    Way("thinner-liquid", "The liquid is less viscous than before.", 0.3),
    says="viscosity, over the one before", low=0.002, high=500, scale="log", edit=_thicker,
    room=_thicker_room, group=GROUP, shown_by=("sample-run", "thermometer"),
)  # fmt: skip
GAS = Cause(
    id="gas-in-liquid", group=GROUP, keys=("suction.gas_percent",), hunts=True, alike="air-leak",
    says="The liquid brings gas with it, as bubbles or froth.",
    size=Size("%", "volume of gas at the inlet, added", 0, 12, none=0, usual=3),
    edit=e.plus("suction.gas_percent"), room=e.above("suction.gas_percent", 30.0),
    shown_by=("sample-settled",),
)  # fmt: skip

CAUSES = (*DENSITY, *VISCOSITY, GAS)
