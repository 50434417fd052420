"""The vessels at both ends, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, quantity


class Supply(Part, frozen=True):
    """The vessel that the pump draws from."""

    surface_m: Annotated[
        float, quantity("m", -30, 200, "Height of the liquid's surface above the floor.")
    ] = 2.0
    bottom_m: Annotated[
        float, quantity("m", -35, 200, "Height of the vessel's bottom; 2 m below the surface if left out.")
    ] = 0.0
    top_m: Annotated[
        float, quantity("m", -30, 210, "Height of the vessel's rim; 2 m above the surface if left out.")
    ] = 4.0
    gas_bar: Annotated[float, quantity("bar", -0.9, 40, "Gauge pressure of the gas on the surface.")] = 0.0
    area_m2: Annotated[float, quantity("m²", 0.01, 1e5, "Area of the surface, the same at any level.")] = 4.0
    inflow_m3h: Annotated[
        float,
        quantity(
            "m³/h",
            0,
            3e5,
            "What comes into the vessel from elsewhere: while time runs, or its level is held.",
        ),
    ] = 0.0


class Delivery(Part, frozen=True):
    """The vessel at the far end."""

    surface_m: Annotated[
        float, quantity("m", -30, 1000, "Height of the liquid's surface above the floor.")
    ] = 14.0
    bottom_m: Annotated[
        float, quantity("m", -35, 1000, "Height of the vessel's bottom; 2 m below the surface if left out.")
    ] = 12.0
    top_m: Annotated[
        float, quantity("m", -30, 1010, "Height of the vessel's rim; 2 m above the surface if left out.")
    ] = 16.0
    gas_bar: Annotated[float, quantity("bar", -0.9, 100, "Gauge pressure of the gas on the surface.")] = 0.0
    outlet_m: (
        Annotated[
            float,
            quantity("m", -30, 1010, "Height of the pipe's end, if it ends above the surface and pours in."),
        ]
        | None
    ) = None
    area_m2: Annotated[float, quantity("m²", 0.01, 1e5, "Area of the surface, the same at any level.")] = 4.0
    draw_m3h: Annotated[
        float,
        quantity("m³/h", 0, 3e5, "What users draw from the vessel: while time runs, or its level is held."),
    ] = 0.0
