"""What a liquid brings to a plant: how heavy, how thick, how ready to boil."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from loadfirst.errors import InputError
from loadfirst.physics.water import dynamic_viscosity, liquid_density, saturation_pressure
from loadfirst.units import ZERO_CELSIUS


@dataclass(frozen=True, slots=True)
class Liquid:
    """A liquid at one temperature.

    Attributes
    ----------
    name : str
        For people.
    density : float
        Above 0. [kg/m³]
    viscosity : float
        Dynamic viscosity, above 0. [Pa s]
    vapour_pressure : float
        Absolute, from 0. [Pa]

    Raises
    ------
    InputError
        When made with a value outside the ranges above.

    Notes
    -----
    Newtonian and incompressible: one density and one viscosity serve the
    whole plant.
    """

    name: str
    density: float
    viscosity: float
    vapour_pressure: float

    def __post_init__(self) -> None:
        if not 0 < self.density < float("inf"):
            raise InputError("liquid.density", self.density, "above 0 kg/m³", low=0, unit="kg/m³")
        if not 0 < self.viscosity < float("inf"):
            raise InputError("liquid.viscosity", self.viscosity, "above 0 Pa s", low=0, unit="Pa s")
        if not 0 <= self.vapour_pressure < float("inf"):
            raise InputError(
                "liquid.vapour_pressure", self.vapour_pressure, "0 Pa absolute or more", low=0, unit="Pa"
            )

    @property
    def kinematic(self) -> float:
        """Kinematic viscosity. [m²/s]"""
        return self.viscosity / self.density


@lru_cache(maxsize=256)
def water(temperature_c: float) -> Liquid:
    """Water at a temperature.

    Parameters
    ----------
    temperature_c : float
        From 0 to 100. [°C]

    Returns
    -------
    Liquid
        Density and viscosity at 0.1 MPa: at one standard atmosphere it is
        6e-7 of itself denser, for each further 10 bar 0.05 %; both left out.

    Raises
    ------
    InputError
        Outside that range: it would be ice, or steam at an open surface.

    Sources
    -------
    IAPWS R7-97(2012) for vapour pressure, SR6-08(2011) for density, R12-08
    for viscosity: see `physics.water`.
    """
    if not 0 <= temperature_c <= 100:
        raise InputError(
            "liquid.temperature_c", temperature_c, "from 0 to 100 °C", low=0, high=100, unit="°C"
        )
    kelvin = temperature_c + ZERO_CELSIUS
    density = liquid_density(kelvin)
    return Liquid("water", density, dynamic_viscosity(kelvin, density), saturation_pressure(kelvin))
