"""The minimum-flow line, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, choice, quantity


class ReturnLine(Part, frozen=True):
    """A minimum-flow line from the pumps' outlet back to the supply vessel, with its valve."""

    fitted: Annotated[bool, choice("Whether there is one.")] = False
    opening: Annotated[float, quantity("-", 0, 1, "Its valve: 0 shut, 1 fully open.")] = 1.0
    kv_open_m3h: Annotated[
        float, quantity("m³/h", 0.01, 1e5, "Flow coefficient Kv of its valve, fully open.")
    ] = 4.0
    length_m: Annotated[float, quantity("m", 0.1, 1e5, "Length of its pipe.")] = 8.0
    bore_mm: Annotated[float, quantity("mm", 5, 2000, "Inside diameter of its pipe.")] = 32.0
    roughness_mm: Annotated[
        float, quantity("mm", 0, 5, "Roughness of the wall, at most 1/20 of the bore.")
    ] = 0.05
    fittings_k: Annotated[
        float, quantity("-", 0, 1e5, "Loss coefficients of all its fittings and the exit, added up.")
    ] = 3.0
