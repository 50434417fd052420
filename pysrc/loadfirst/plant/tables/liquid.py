"""What is pumped, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, quantity, words


class Liquid(Part, frozen=True):
    """What is pumped. For water the temperature says all; any other liquid gives all three properties."""

    name: Annotated[str, words("Name of the liquid; `water` is computed from its temperature.", 60)] = "water"
    temperature_c: Annotated[float, quantity("°C", 0, 100, "Temperature of the liquid.")] = 20.0
    density_kgm3: (
        Annotated[float, quantity("kg/m³", 300, 3000, "Density; for a liquid other than water.")] | None
    ) = None
    viscosity_mpas: (
        Annotated[float, quantity("mPa·s", 0.05, 5000, "Dynamic viscosity; for a liquid other than water.")]
        | None
    ) = None
    critical_bar: (
        Annotated[float, quantity("bar", 1, 1000, "Absolute critical pressure; left out for water.")] | None
    ) = None
    vapour_bar: (
        Annotated[float, quantity("bar", 0, 50, "Absolute vapour pressure; for a liquid other than water.")]
        | None
    ) = None
