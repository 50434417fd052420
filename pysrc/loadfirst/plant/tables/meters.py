"""The meters of a plant as data: where they look, how good they are, what is wrong with them."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from loadfirst.plant.meta import Part, choice, quantity

Zero = Annotated[float, quantity("%", -50, 50, "Error of its zero, in per cent of its range.")]
Span = Annotated[float, quantity("%", -50, 50, "Error of its span: that part of what it senses is added.")]
Serial = Annotated[
    int, quantity("-", 0, 99, "Serial number: another one is another instrument, with an error of its own.")
]  # fmt: skip


class FlowFault(Part, frozen=True):
    """What is wrong with the flow meter. Zero, span and noise are those of what it senses."""

    zero_percent: Zero = 0.0
    span_percent: Span = 0.0
    plate: Annotated[
        Literal["right", "reversed"],
        choice("reversed: an orifice plate with its bevelled side upstream, which reads low."),
    ] = "right"
    root: Annotated[
        Literal["right", "missing", "doubled"],
        choice("Square root of an orifice's differential pressure: taken once, not at all, or twice."),
    ] = "right"
    damping_s: Annotated[
        float,
        quantity(
            "s",
            0,
            600,
            "Time constant of its damping: it follows late while time runs, and its noise is quieter.",
        ),
    ] = 0.0
    noise_percent: Annotated[
        float, quantity("%", 0, 20, "Standard deviation of its noise, undamped, in per cent of its range.")
    ] = 0.0


class CurrentFault(Part, frozen=True):
    """What is wrong with the ammeters."""

    zero_percent: Zero = 0.0
    span_percent: Span = 0.0


class Meters(Part, frozen=True):
    """One flow meter, an ammeter and a tachometer at each pump, a level gauge at each vessel."""

    flow_range_m3h: (
        Annotated[
            float,
            quantity(
                "m³/h", 0.01, 3e5, "Upper end of the flow meter, from 0; chosen to suit the pump if left out."
            ),
        ]
        | None
    ) = None
    flow_percent: Annotated[
        float,
        quantity("%", 0.05, 10, "Greatest error of the flow meter, in per cent of the range that it senses."),
    ] = 1.0
    flow_kind: Annotated[
        Literal["plain", "orifice"],
        choice("orifice: it senses a differential pressure, which goes with the square of the flow."),
    ] = "plain"
    flow_density_kgm3: (
        Annotated[
            float,
            quantity(
                "kg/m³", 1, 20000, "Density that an orifice meter is scaled for; the liquid's if left out."
            ),
        ]
        | None
    ) = None
    flow_place: Annotated[
        Literal["pump", "before-return", "after-return"],
        choice("At the pumps' flange, behind the relief valve's tee, or behind the return line's tee too."),
    ] = "pump"
    flow_serial: Serial = 0
    current_range_a: (
        Annotated[
            float,
            quantity("A", 0.1, 1e5, "Upper end of the ammeters; chosen to suit the motor if left out."),
        ]
        | None
    ) = None
    current_percent: Annotated[
        float, quantity("%", 0.05, 10, "Greatest error of the ammeters, in per cent of their range.")
    ] = 1.5
    current_place: Annotated[
        Literal["motor", "before-drive"],
        choice("At the motor, or ahead of a variable-speed drive, where the current follows the power."),
    ] = "motor"
    speed_range_rpm: Annotated[
        float, quantity("1/min", 100, 20000, "Upper end of the tachometers; their lower end is 0.")
    ] = 6000.0
    speed_percent: Annotated[
        float, quantity("%", 0.01, 10, "Greatest error of the tachometers, in per cent of the reading.")
    ] = 0.1
    level_percent: Annotated[
        float,
        quantity("%", 0.05, 10, "Greatest error of the level gauges, in per cent of the vessel's height."),
    ] = 1.0
    seed: Annotated[
        int,
        quantity("-", 0, 999, "Draws an error within its limits for every instrument; 0: all are exact."),
    ] = 0
    flow_fault: FlowFault = FlowFault()
    current_fault: CurrentFault = CurrentFault()
