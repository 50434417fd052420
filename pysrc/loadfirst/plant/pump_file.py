"""Pumps as data: the keys of a pump file, also those of the tables `pump.curve` and `pump.displacement`."""

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
        points(
            "Heads at these flows: falling, or rising once on the way and then falling (a curve that droops)."
        ),
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
    kind: Annotated[Literal["centrifugal"], choice("Any pump with an impeller.")] = "centrifugal"
    about: Annotated[str, words("A sentence or two on the pump.", 600)] = ""


class Displacement(Part, frozen=True, kw_only=True):
    """A displacement pump as its maker rates it: one point, on one liquid."""

    kind: Annotated[Literal["gear", "lobe", "screw"], choice("What displaces the liquid.")]
    title: Annotated[str, words("What people call this pump.", 80)] = ""
    motor_kw: Annotated[float, quantity("kW", 0.01, 20000, "Rated power of the motor that comes with it.")]
    displacement_cm3: Annotated[float, quantity("cm³", 0.1, 1e6, "Volume that one turn displaces.")]
    speed_rpm: Annotated[float, quantity("1/min", 10, 12000, "Speed of the rated point.")] = 1450.0
    gear_ratio: Annotated[
        float, quantity("-", 1, 100, "Turns of the motor for one of the pump, by the gearbox between them.")
    ] = 1.0
    pressure_bar: Annotated[
        float, quantity("bar", 0.1, 400, "Pressure of the rated point, from inlet to outlet.")
    ]
    limit_bar: (
        Annotated[
            float,
            quantity("bar", 0.1, 1000, "Most that its casing may bear; the rated pressure if left out."),
        ]
        | None
    ) = None
    volumetric_percent: Annotated[
        float, quantity("%", 10, 99.9, "Volumetric efficiency there: flow over what is displaced.")
    ]
    mechanical_percent: Annotated[
        float, quantity("%", 10, 100, "Mechanical efficiency there; overall over volumetric efficiency.")
    ]
    viscosity_mpas: Annotated[
        float, quantity("mPa·s", 0.05, 5000, "Dynamic viscosity of the liquid of the test.")
    ]
    density_kgm3: Annotated[float, quantity("kg/m³", 300, 3000, "Density of the liquid of the test.")] = 870.0
    npshr_m: Annotated[float, quantity("m", 0.01, 100, "Required NPSH there.")]


class DisplacementFile(Displacement, frozen=True, kw_only=True):
    """A whole file of a displacement pump: the same at its top level."""

    format: Annotated[Literal[1], choice("Number of this file format.")]
    about: Annotated[str, words("A sentence or two on the pump.", 600)] = ""


Pump = Curve | Displacement
KINDS = ("centrifugal", "gear", "lobe", "screw")
"""Of pumps; a file that says none is of the first."""
