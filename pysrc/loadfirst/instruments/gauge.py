"""What pressure reaches the dial of a gauge."""

from __future__ import annotations

from loadfirst.units import G


def dial_pressure(
    static: float, tap_height: float, dial_height: float, density: float, filled: float = 1.0
) -> float:
    """Pressure at a dial that is joined to its tapping by a leg of the liquid.

    Parameters
    ----------
    static : float
        Gauge pressure at the tapping, without the velocity head. [Pa]
    tap_height, dial_height : float
        Heights above the floor. [m]
    density : float
        Density of the liquid in the leg. [kg/m³]
    filled : float
        Share of the leg's height that is full of liquid, from 0 to 1; the rest
        holds gas, whose weight is nothing beside the liquid's. [-]

    Returns
    -------
    float
        Gauge pressure at the dial: lower than at the tapping by ρ g h where
        the dial is higher by h; with a leg partly empty by less. [Pa]

    Sources
    -------
    Hydrostatics; ISO 9906:2012, annex A.4 (correction for the height of a gauge).
    """
    return static - density * G * (dial_height - tap_height) * filled
