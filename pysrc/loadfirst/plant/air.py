"""The air around a plant."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from loadfirst.units import ATMOSPHERE, BAR

if TYPE_CHECKING:
    from loadfirst.plant.plant import Plant


def air_pressure(plant: Plant) -> float:
    """Absolute pressure of the air: as the barometer says, or that of the standard atmosphere. [Pa]"""
    site = plant.site
    if site.barometer_bar is not None:
        return site.barometer_bar * BAR
    return ATMOSPHERE if site.altitude_m is None else _standard(site.altitude_m)


@lru_cache(maxsize=64)
def _standard(altitude: float) -> float:
    from loadfirst.physics.altitude import barometric_pressure  # few plants ask for it

    return float(barometric_pressure(altitude))
