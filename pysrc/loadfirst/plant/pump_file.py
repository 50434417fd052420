"""A pump as data: every key of a pump file, which is also the table `pump.curve` of a plant."""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from loadfirst.plant.meta import Part, choice, entry, points, quantity, words


class Curve(Part, frozen=True, kw_only=True):
    """A centrifugal pump as measured: points over flow at one speed. The lists are equally long."""

    title: Annotated[str, words("What people call this pump.", 80)] = ""
    speed_rpm: Annotated[float, quantity("1/min", 100, 12000, "Speed at which the points were measured.")] = (
        2900.0
    )
    density_kgm3: Annotated[float, quantity("kg/m³", 300, 3000, "Density of the liquid of the test.")] = 998.2
    motor_kw: Annotated[float, quantity("kW", 0.01, 20000, "Rated power of the motor that comes with it.")]
    flow_m3h: Annotated[
        tuple[Annotated[float, entry("m³/h", 0, 1e5)], ...],
        points("Flows of the points: 0 first, then rising."),
    ]
    head_m: Annotated[
        tuple[Annotated[float, entry("m", 0.01, 5000)], ...],
        points("Heads at these flows: falling all the way."),
    ]
    efficiency_percent: (
        Annotated[
            tuple[Annotated[float, entry("%", 0, 95)], ...],
            points("Efficiencies of the pump at these flows: 0 at no flow, above 0 elsewhere."),
        ]
        | None
    ) = None
    power_kw: (
        Annotated[
            tuple[Annotated[float, entry("kW", 0.001, 20000)], ...],
            points("Powers at the shaft at these flows; in place of the efficiencies."),
        ]
        | None
    ) = None
    npshr_m: Annotated[
        tuple[Annotated[float, entry("m", 0.01, 100)], ...],
        points("Required NPSH (3 % of the head is lost there) at these flows."),
    ]


class PumpFile(Curve, frozen=True, kw_only=True):
    """A whole pump file: the points at its top level."""

    format: Annotated[Literal[1], choice("Number of this file format.")]
    about: Annotated[str, words("A sentence or two on the pump.", 600)] = ""
