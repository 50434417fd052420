"""The line to a second user, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, choice, quantity


class Branch(Part, frozen=True):
    """A line to a second user; it leaves between check valve and control valve and has a valve of its own."""

    fitted: Annotated[bool, choice("Whether there is one.")] = False
    opening: Annotated[float, quantity("-", 0, 1, "Its valve: 0 shut, 1 fully open.")] = 1.0
    kv_open_m3h: Annotated[
        float, quantity("m³/h", 0.01, 1e5, "Flow coefficient Kv of its valve, fully open.")
    ] = 25.0
    length_m: Annotated[float, quantity("m", 0.1, 1e5, "Length of its pipe.")] = 30.0
    bore_mm: Annotated[float, quantity("mm", 5, 2000, "Inside diameter of its pipe.")] = 50.0
    roughness_mm: Annotated[
        float, quantity("mm", 0, 5, "Roughness of the wall, at most 1/20 of the bore.")
    ] = 0.05
    fittings_k: Annotated[
        float, quantity("-", 0, 1e5, "Loss coefficients of all its fittings and the exit, added up.")
    ] = 4.0
    end_m: Annotated[
        float, quantity("m", -30, 1010, "Height of its end, or of the surface that it ends under.")
    ] = 6.0
    gas_bar: Annotated[float, quantity("bar", 0, 100, "Gauge pressure that the second user keeps there.")] = (
        0.0
    )
    pours: Annotated[
        bool, choice("It pours out freely; false: it ends under a surface, and liquid may come back.")
    ] = True
