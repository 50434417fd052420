"""Where the plant stands, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, quantity


class Site(Part, frozen=True):
    """Where the plant stands: `barometer_bar` or `altitude_m`, not both."""

    barometer_bar: (
        Annotated[
            float,
            quantity("bar", 0.5, 1.1, "Absolute pressure of the air around; 1.01325 bar if left out."),
        ]
        | None
    ) = None
    altitude_m: (
        Annotated[
            float,
            quantity("m", -400, 5000, "Height above the sea, whose standard air it then is (ISO 2533)."),
        ]
        | None
    ) = None
