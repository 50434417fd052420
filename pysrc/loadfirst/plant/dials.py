"""The instruments of a plant as data: ranges and accuracies of what a person can read."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated

from msgspec import Meta, field
from msgspec.structs import replace

from loadfirst.plant.meta import Part, entry, quantity


class Gauge(Part, frozen=True):
    """A dial gauge, connected by a leg full of liquid."""

    height_m: (
        Annotated[
            float,
            quantity("m", -30, 1000, "Height of the dial above the floor; that of the shaft if left out."),
        ]
        | None
    ) = None
    range_bar: Annotated[
        tuple[Annotated[float, entry("bar", -1, 1000)], Annotated[float, entry("bar", -1, 1000)]],
        Meta(description="Lower and upper end of the dial, gauge pressure."),
    ] = (0.0, 6.0)
    accuracy_class: Annotated[
        float, quantity("%", 0.1, 4, "Accuracy class (EN 837-1): greatest error in per cent of the span.")
    ] = field(default=1.6, name="class")


class Gauges(Part, frozen=True):
    """Three dials: at the suction, at the discharge before the control valve, and after that valve."""

    suction: Gauge = Gauge(range_bar=(-1.0, 1.5))
    discharge: Gauge = Gauge()
    after_valve: Gauge = Gauge()


def hung(gauges: Gauges, height: float) -> Gauges:
    """The same dials; those whose height was left out hang at `height`. [m]"""
    dials = (gauges.suction, gauges.discharge, gauges.after_valve)
    return Gauges(*(replace(dial, height_m=height) if dial.height_m is None else dial for dial in dials))


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
        float, quantity("%", 0.05, 10, "Greatest error of the flow meter, in per cent of its range.")
    ] = 1.0
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
