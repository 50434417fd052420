"""A summit in the discharge line, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, choice, quantity


class Summit(Part, frozen=True):
    """A high point of the discharge line, from which it falls again to its end."""

    fitted: Annotated[bool, choice("Whether there is one.")] = False
    height_m: Annotated[float, quantity("m", -30, 1100, "Height of the pipe at its summit.")] = 18.0
    at: Annotated[float, quantity("-", 0.05, 0.95, "Share of the line's length before it.")] = 0.5
    primed: Annotated[
        bool, choice("The line runs full and its far leg pulls; false: air stands at the summit.")
    ] = True
