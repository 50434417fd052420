"""The valve in the discharge line, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from loadfirst.plant.meta import Part, choice, quantity


class ControlValve(Part, frozen=True):
    """The valve in the discharge line."""

    kv_open_m3h: Annotated[float, quantity("m³/h", 0.01, 1e5, "Flow coefficient Kv, fully open.")] = 63.0
    characteristic: Annotated[
        Literal["linear", "equal-percentage", "quick-opening"], choice("Inherent characteristic of the trim.")
    ] = "equal-percentage"
    rangeability: Annotated[float, quantity("-", 5, 200, "Kv fully open over the least controllable Kv.")] = (
        50.0
    )
    opening: Annotated[float, quantity("-", 0, 1, "Stem position: 0 shut, 1 fully open.")] = 0.6
    recovery: (
        Annotated[
            float, quantity("-", 0.3, 1, "Pressure recovery factor F_L; left out, choking is not asked.")
        ]
        | None
    ) = None
    stroke_s: Annotated[
        float, quantity("s", 0.5, 3600, "Time that the stem takes from shut to open while time runs.")
    ] = 10.0
