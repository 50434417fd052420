"""The lines before and behind the pumps, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from loadfirst.plant.meta import Part, choice, quantity


class Suction(Part, frozen=True):
    """The line from the supply vessel to the pump station."""

    length_m: Annotated[float, quantity("m", 0.1, 5000, "Length of the pipe.")] = 4.0
    bore_mm: Annotated[float, quantity("mm", 5, 2000, "Inside diameter of the pipe.")] = 102.0
    roughness_mm: Annotated[
        float, quantity("mm", 0, 5, "Roughness of the wall, at most 1/20 of the bore.")
    ] = 0.05
    fittings_k: Annotated[
        float, quantity("-", 0, 1000, "Loss coefficients of the entrance and all fittings, added up.")
    ] = 1.2
    strainer_k: Annotated[
        float, quantity("-", 0, 1e5, "Loss coefficient of the strainer; 0 where there is none.")
    ] = 0.8
    mouth_m: (
        Annotated[
            float,
            quantity("m", -35, 200, "Height of its mouth in the vessel; at the vessel's bottom if left out."),
        ]
        | None
    ) = None
    gas_percent: Annotated[
        float, quantity("%", 0, 30, "Gas drawn along with the liquid, of the volume at the pump's inlet.")
    ] = 0.0


class Discharge(Part, frozen=True):
    """The line from the pump station through the control valve to the delivery vessel."""

    attached: Annotated[
        bool, choice("false: the line is off at the pump, which discharges into the open air.")
    ] = True
    length_m: Annotated[float, quantity("m", 0.1, 1e5, "Length of the pipe.")] = 120.0
    bore_mm: Annotated[float, quantity("mm", 5, 2000, "Inside diameter of the pipe.")] = 80.0
    roughness_mm: Annotated[
        float, quantity("mm", 0, 5, "Roughness of the wall, at most 1/20 of the bore.")
    ] = 0.05
    fittings_k: Annotated[
        float, quantity("-", 0, 1e5, "Loss coefficients of all fittings and the exit, added up.")
    ] = 6.0
    filled: Annotated[
        float, quantity("-", 0.01, 1, "Share of its length that is full; below 1 it is still being filled.")
    ] = 1.0
