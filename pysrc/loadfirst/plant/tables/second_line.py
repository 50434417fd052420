"""A second line to the delivery vessel, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, choice, quantity


class SecondLine(Part, frozen=True):
    """A second pipe beside the discharge line: both serve the same end. It goes round a summit."""

    fitted: Annotated[bool, choice("Whether there is one, and open.")] = False
    length_m: Annotated[float, quantity("m", 0.1, 1e5, "Length of the pipe.")] = 120.0
    bore_mm: Annotated[float, quantity("mm", 5, 2000, "Inside diameter of the pipe.")] = 65.0
    roughness_mm: Annotated[
        float, quantity("mm", 0, 5, "Roughness of the wall, at most 1/20 of the bore.")
    ] = 0.05
    fittings_k: Annotated[
        float, quantity("-", 0, 1e5, "Loss coefficients of all fittings and the exit, added up.")
    ] = 6.0
