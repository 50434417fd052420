"""The gauges of a plant as data: places, ranges and accuracies of what a person can read."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, TypeVar

from msgspec import Meta, field
from msgspec.structs import replace

from loadfirst.plant.meta import Part, entry, quantity
from loadfirst.plant.tables.gauge_fault import GaugeFault
from loadfirst.plant.tables.meters import Serial

Range = Annotated[
    tuple[Annotated[float, entry("bar", -1, 1000)], Annotated[float, entry("bar", -1, 1000)]],
    Meta(description="Lower and upper end of the dial, gauge pressure."),
]


class Gauge(Part, frozen=True):
    """A dial gauge, connected by a leg full of liquid."""

    height_m: (
        Annotated[
            float,
            quantity("m", -30, 1000, "Height of the dial above the floor; that of the shaft if left out."),
        ]
        | None
    ) = None
    range_bar: Range = (0.0, 6.0)
    accuracy_class: Annotated[
        float, quantity("%", 0.1, 4, "Accuracy class (EN 837-1): greatest error in per cent of the span.")
    ] = field(default=1.6, name="class")
    serial: Serial = 0
    fault: GaugeFault = GaugeFault()


class SuctionGauge(Gauge, frozen=True):
    """A dial gauge that shows vacuum too, connected by a leg full of liquid."""

    range_bar: Range = (-1.0, 1.5)


class Gauges(Part, frozen=True):
    """Three dials: at the suction, at the discharge before the control valve, and after that valve."""

    suction: SuctionGauge = SuctionGauge()
    discharge: Gauge = Gauge()
    after_valve: Gauge = Gauge()


def hung(gauges: Gauges, height: float) -> Gauges:
    """The same dials; those whose height was left out hang at `height`. [m]"""
    return Gauges(
        suction=_hung(gauges.suction, height),
        discharge=_hung(gauges.discharge, height),
        after_valve=_hung(gauges.after_valve, height),
    )


Dial = TypeVar("Dial", bound=Gauge)


def _hung(dial: Dial, height: float) -> Dial:
    return replace(dial, height_m=height) if dial.height_m is None else dial
