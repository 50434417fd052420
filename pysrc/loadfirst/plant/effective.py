"""A plant with everything said that its file left out."""

from __future__ import annotations

from typing import Any

import msgspec

from loadfirst.plant.air import air_pressure
from loadfirst.plant.drives import frequency
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.tables.control import tuning
from loadfirst.units import BAR


def effective(resolved: ResolvedPlant) -> dict[str, Any]:
    """All keys of a plant as plain data in file units, defaults filled in.

    Parameters
    ----------
    resolved : ResolvedPlant
        The plant and its pump's points.

    Returns
    -------
    dict
        As in a plant file. ``drive.frequency_hz``, ``drive.motor_kw``, ``meters.flow_range_m3h``,
        ``control.gain``, ``control.integral_s`` and the heights of the gauges are always numbers, so is
        ``site.barometer_bar`` unless there is an altitude; ``pump.curve`` only where the file gave it.
        Fit to be decoded again: it is the same plant.
    """
    plant = resolved.plant
    data: dict[str, Any] = msgspec.to_builtins(plant)
    drive = data["drive"]
    drive["frequency_hz"] = frequency(plant.drive)
    drive["motor_kw"] = drive["motor_kw"] or resolved.curve.motor_kw
    if resolved.second is not None:
        second = data["pump"]["second"]
        second["motor_kw"] = second["motor_kw"] or resolved.second.motor_kw
    control = data["control"]
    control["gain"], control["integral_s"] = tuning(plant.control)
    site = data["site"]
    if site["altitude_m"] is None:
        site["barometer_bar"] = air_pressure(plant) / BAR
    return data
