"""What may be wrong between a gauge's tapping and the person who reads it, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from loadfirst.plant.meta import Part, choice, quantity


class GaugeFault(Part, frozen=True):
    """What is wrong with this gauge, from its tapping to its reader; all left out, it is sound."""

    tapping: Annotated[
        Literal["own", "suction", "discharge", "after-valve"],
        choice("Where its leg is really tapped: at another gauge's tapping, or at its own."),
    ] = "own"
    root_valve: Annotated[
        Literal["open", "shut"],
        choice("shut: its root valve is closed or its line plugged, so that it keeps what it showed then."),
    ] = "open"
    frozen_bar: (
        Annotated[
            float,
            quantity(
                "bar", -1, 1000,
                "What it keeps while shut off; left out, what it showed on the day before, or 0.",
            ),
        ]
        | None
    ) = None  # fmt: skip
    leg_filled: Annotated[
        float, quantity("-", 0, 1, "Share of its leg's height that is full of liquid; the rest holds gas.")
    ] = 1.0
    reads: Annotated[
        Literal["gauge", "absolute"],
        choice("absolute: it counts from vacuum, and is read as if it counted from the air's pressure."),
    ] = "gauge"
    zero_bar: Annotated[
        float, quantity("bar", -100, 100, "Error of its zero: added to whatever it should show.")
    ] = 0.0
    span_percent: Annotated[
        float, quantity("%", -50, 50, "Error of its span: that part of the pressure is added.")
    ] = 0.0
    damping_s: Annotated[
        float,
        quantity(
            "s",
            0,
            600,
            "Time constant of its damping: it follows late while time runs, and its noise is quieter.",
        ),
    ] = 0.0
    noise_bar: Annotated[
        float, quantity("bar", 0, 100, "Standard deviation of what makes its pointer tremble, undamped.")
    ] = 0.0
    unit: Annotated[
        Literal["bar", "psi", "kpa", "mpa", "kgf-cm2", "m-water"],
        choice("Unit that its dial is really marked in, while its numbers are taken for bar."),
    ] = "bar"
