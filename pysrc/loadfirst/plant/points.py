"""A pump's numbers as its file has them, in SI and ready to be computed with."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.displacement_pump import DisplacementPump
from loadfirst.physics.law import Array
from loadfirst.plant.plant import Curve, Displacement
from loadfirst.units import BAR, HOUR, PERCENT, RPM, TO_SI

CM3, KW, MPAS = TO_SI["cm3"], TO_SI["kw"], TO_SI["mpas"]


@lru_cache(maxsize=64)
def pump_curve(curve: Curve) -> PumpCurve:
    """A centrifugal pump's points in SI."""

    def numbers(values: tuple[float, ...] | None, factor: float) -> Array | None:
        return None if values is None else np.array(values) * factor

    return PumpCurve.from_points(
        curve.speed_rpm * RPM,
        np.array(curve.flow_m3h) / HOUR,
        np.array(curve.head_m),
        np.array(curve.npshr_m),
        efficiency=numbers(curve.efficiency_percent, PERCENT),
        power=numbers(curve.power_kw, KW),
        density=curve.density_kgm3,
    )


@lru_cache(maxsize=64)
def rated_pump(pump: Displacement) -> DisplacementPump:
    """A displacement pump's rated point in SI."""
    return DisplacementPump(
        kind=pump.kind,
        displacement=pump.displacement_cm3 * CM3,
        speed=pump.speed_rpm * RPM,
        pressure=pump.pressure_bar * BAR,
        viscosity=pump.viscosity_mpas * MPAS,
        density=pump.density_kgm3,
        volumetric_efficiency=pump.volumetric_percent * PERCENT,
        mechanical_efficiency=pump.mechanical_percent * PERCENT,
        npsh_required=pump.npshr_m,
        pressure_limit=(pump.limit_bar or pump.pressure_bar) * BAR,
    )
