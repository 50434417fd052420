"""A plant as data: every key of a plant file, with its unit, range and default.

The key names carry the units that people write; `plant.build` turns them into
SI. What goes beyond one key's own range is in `plant.checks`.
"""

# No annotations as strings here: msgspec would compile each of them when the first ask is decoded.

from typing import Annotated, Literal

from msgspec import UNSET, UnsetType

from loadfirst.plant.dials import Gauge, Gauges, Meters
from loadfirst.plant.meta import Part, choice, name, quantity, words
from loadfirst.plant.pump_file import Curve, PumpFile

__all__ = [
    "Check",
    "ControlValve",
    "Curve",
    "Delivery",
    "Discharge",
    "Drive",
    "Gauge",
    "Gauges",
    "Liquid",
    "Meters",
    "Part",
    "Plant",
    "PumpFile",
    "PumpStation",
    "Site",
    "Suction",
    "Supply",
]


class Liquid(Part, frozen=True):
    """What is pumped. For water the temperature says all; any other liquid gives all three properties."""

    name: Annotated[str, words("Name of the liquid; `water` is computed from its temperature.", 60)] = "water"
    temperature_c: Annotated[float, quantity("°C", 0, 100, "Temperature of the liquid.")] = 20.0
    density_kgm3: (
        Annotated[float, quantity("kg/m³", 300, 3000, "Density; for a liquid other than water.")] | None
    ) = None
    viscosity_mpas: (
        Annotated[float, quantity("mPa·s", 0.05, 5000, "Dynamic viscosity; for a liquid other than water.")]
        | None
    ) = None
    vapour_bar: (
        Annotated[float, quantity("bar", 0, 50, "Absolute vapour pressure; for a liquid other than water.")]
        | None
    ) = None


class Site(Part, frozen=True):
    """Where the plant stands."""

    barometer_bar: Annotated[float, quantity("bar", 0.5, 1.1, "Absolute pressure of the air around.")] = (
        1.01325
    )


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


class PumpStation(Part, frozen=True):
    """The machines between the suction and the discharge node: `model` or `curve`, not both."""

    model: Annotated[str, words("Id of a pump: that of its file, without .toml.", 60)] | UnsetType = UNSET
    curve: Curve | UnsetType = UNSET
    centre_m: Annotated[float, quantity("m", -30, 200, "Height of the shaft above the floor.")] = 0.5
    arrangement: Annotated[
        Literal["single", "side-by-side", "in-line"],
        choice("One pump, or two equal ones side by side or in line."),
    ] = "single"


class Drive(Part, frozen=True):
    """Induction motors, one per pump."""

    supply_hz: Annotated[
        Literal[50, 60], choice("Frequency of the public supply, which the motors are made for.", "Hz")
    ] = 50
    frequency_hz: (
        Annotated[
            float, quantity("Hz", 5, 75, "Frequency that reaches the motors; the supply's if left out.")
        ]
        | None
    ) = None
    poles: Annotated[Literal[2, 4, 6, 8], choice("Number of poles of the motors.")] = 2
    motor_kw: (
        Annotated[
            float, quantity("kW", 0.01, 20000, "Rated power of each motor; the pump's own if left out.")
        ]
        | None
    ) = None


class Check(Part, frozen=True):
    """The check valve at each pump's discharge: it passes forward and holds backward."""

    fitted: Annotated[bool, choice("Whether there is one.")] = True
    k: Annotated[float, quantity("-", 0, 1000, "Loss coefficient when open, on the discharge bore.")] = 2.0


class ControlValve(Part, frozen=True):
    """The valve in the discharge line."""

    kv_open_m3h: Annotated[float, quantity("m³/h", 0.01, 1e5, "Flow coefficient Kv, fully open.")] = 63.0
    characteristic: Annotated[
        Literal["linear", "equal-percentage", "quick-opening"], choice("Inherent characteristic of the trim.")
    ] = "equal-percentage"
    rangeability: Annotated[float, quantity("-", 5, 200, "Kv fully open over the least controllable Kv.")] = (
        50.0
    )
    opening: Annotated[float, quantity("-", 0, 1, "Stem position: 0 shut, 1 fully open.")] = 0.6


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


class Plant(Part, frozen=True, kw_only=True):
    """A whole plant file. `pump` is needed; every other table may be left out."""

    format: Annotated[Literal[1], choice("Number of this file format.")]
    title: Annotated[str, name("What people call the plant.", 80)]
    about: Annotated[str, words("A sentence or two on what it does.", 600)] = ""
    liquid: Liquid = Liquid()
    site: Site = Site()
    supply: Supply = Supply()
    suction: Suction = Suction()
    pump: PumpStation
    drive: Drive = Drive()
    check: Check = Check()
    valve: ControlValve = ControlValve()
    discharge: Discharge = Discharge()
    delivery: Delivery = Delivery()
    gauges: Gauges = Gauges()
    meters: Meters = Meters()
