"""The filter, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, choice, quantity


class Filter(Part, frozen=True):
    """A filter behind the control valve; what it holds back makes it resist more and more."""

    fitted: Annotated[bool, choice("Whether there is one.")] = False
    fouling: Annotated[
        float, quantity("-", 0, 1000, "Resistance of what it has caught, over that of its clean medium.")
    ] = 0.0
    clean_drop_bar: Annotated[
        float, quantity("bar", 0, 10, "Pressure drop of the clean medium, with water of 20 °C.")
    ] = 0.1
    clean_flow_m3h: Annotated[
        float, quantity("m³/h", 0.01, 1e5, "Flow at which its clean medium has that drop.")
    ] = 50.0
    housing_k: Annotated[
        float, quantity("-", 0, 1e4, "Loss coefficient of its housing, on the discharge bore.")
    ] = 3.0
