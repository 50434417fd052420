"""The controller, as data."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from loadfirst.plant.meta import Part, choice, quantity

USUAL = {"level": (3.0, 600.0), "pressure": (0.5, 10.0), "flow": (0.5, 10.0)}
"""Gain [-] and integral time [s] where the plant says nothing, by what is measured."""


class Control(Part, frozen=True):
    """A controller: in automatic it moves valve or drive until what it measures stands at its set point."""

    fitted: Annotated[bool, choice("Whether there is one.")] = False
    mode: Annotated[
        Literal["automatic", "manual"],
        choice("manual: valve and drive stand where their own keys put them."),
    ] = "automatic"
    of: Annotated[
        Literal[
            "flow",
            "discharge-pressure",
            "after-valve-pressure",
            "suction-pressure",
            "delivery-level",
            "supply-level",
        ],
        choice("What it measures: at the flow meter, at one of the gauges, in one of the vessels."),
    ] = "flow"
    on: Annotated[
        Literal["valve", "drive"],
        choice("What it moves: valve.opening, or the frequency of a variable-speed drive for all pumps."),
    ] = "valve"
    set_m3h: Annotated[float, quantity("m³/h", 0, 3e5, "Set point where it measures the flow.")] = 30.0
    set_bar: Annotated[
        float,
        quantity("bar", -1, 1000, "Set point where it measures a pressure, as the gauge there shows it."),
    ] = 3.0
    set_m: Annotated[
        float, quantity("m", -30, 1010, "Set point where it measures a level: height of that surface.")
    ] = 14.0
    gain: (
        Annotated[
            float,
            quantity(
                "-", 0.01, 100,
                "While time runs: per cent of its output per cent of the measuring range (flow meter, gauge, "
                "vessel) that the reading is off. Left out: "
                f"{USUAL['flow'][0]:g} for flow and pressure, {USUAL['level'][0]:g} for a level.",
            ),
        ]
        | None
    ) = None  # fmt: skip
    integral_s: (
        Annotated[
            float,
            quantity(
                "s", 0.5, 36000,
                "While time runs: time in which its integral action repeats what the gain does at once. "
                f"Left out: {USUAL['flow'][1]:g} for flow and pressure, {USUAL['level'][1]:g} for a level.",
            ),
        ]
        | None
    ) = None  # fmt: skip
    low_percent: Annotated[float, quantity("%", 0, 100, "Lower limit of its output.")] = 0.0
    high_percent: Annotated[float, quantity("%", 0, 100, "Upper limit of its output.")] = 100.0
    full_hz: (
        Annotated[
            float, quantity("Hz", 5, 75, "Frequency at full output to a drive; the supply's if left out.")
        ]
        | None
    ) = None


def tuning(control: Control) -> tuple[float, float]:
    """Gain [-] and integral time [s]: the plant's, else the usual ones of what is measured."""
    gain, integral = USUAL[control.of.rpartition("-")[2]]
    return (
        gain if control.gain is None else control.gain,
        integral if control.integral_s is None else control.integral_s,
    )
