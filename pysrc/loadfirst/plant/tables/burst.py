"""A hole in the line, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, choice, quantity


class Burst(Part, frozen=True):
    """A hole near the pumps, between check valve and control valve, into the open air."""

    fitted: Annotated[bool, choice("Whether the pipe has burst.")] = False
    hole_mm: Annotated[float, quantity("mm", 1, 2000, "Width of a round hole of the same area.")] = 25.0
