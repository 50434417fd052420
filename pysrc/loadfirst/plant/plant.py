"""A plant as data: every key of a plant file, with its unit, range and default.

The key names carry the units that people write; `plant.build` turns them into
SI. Ranges stand on the types, so the decoder, the author's guide, the schema
and the page's controls all read the same numbers.
"""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import UNSET, Meta, Struct, UnsetType, field


def quantity(unit: str, low: float, high: float, says: str) -> Meta:
    """What a number means: its unit, its range (both ends included) and a sentence."""
    return Meta(ge=low, le=high, description=says, extra={"unit": unit})


def words(says: str, longest: int) -> Meta:
    """A text for people, with a limit on its length."""
    return Meta(max_length=longest, description=says)


def choice(says: str) -> Meta:
    """One of a few words."""
    return Meta(description=says)


class Part(Struct, frozen=True, forbid_unknown_fields=True):
    """A table of a plant file. Unknown keys are refused."""


class Liquid(Part):
    """What is pumped. For water the temperature says all; another liquid gives its three properties."""

    name: Annotated[str, words("Name of the liquid; `water` is computed from its temperature.", 60)] = "water"
    temperature_c: Annotated[float, quantity("°C", 0, 100, "Temperature of the liquid.")] = 20.0
    density_kgm3: (
        Annotated[float, quantity("kg/m³", 300, 3000, "Density; for a liquid other than water.")] | None
    ) = None
    viscosity_mpas: (
        Annotated[float, quantity("mPa·s", 0.05, 5000, "Dynamic viscosity; for a liquid other than water.")] | None
    ) = None
    vapour_bar: (
        Annotated[float, quantity("bar", 0, 50, "Absolute vapour pressure; for a liquid other than water.")] | None
    ) = None


class Site(Part):
    """Where the plant stands."""

    barometer_bar: Annotated[float, quantity("bar", 0.5, 1.1, "Absolute pressure of the air around.")] = 1.01325


class Supply(Part):
    """The vessel that the pump draws from."""

    surface_m: Annotated[float, quantity("m", -30, 200, "Height of the liquid's surface above the floor.")] = 2.0
    bottom_m: Annotated[float, quantity("m", -35, 200, "Height of the vessel's bottom above the floor.")] = 0.0
    top_m: Annotated[float, quantity("m", -30, 210, "Height of the vessel's rim above the floor.")] = 4.0
    gas_bar: Annotated[float, quantity("bar", -0.9, 40, "Gauge pressure of the gas on the surface.")] = 0.0


class Suction(Part):
    """The line from the supply vessel to the pump station."""

    length_m: Annotated[float, quantity("m", 0.1, 5000, "Length of the pipe.")] = 4.0
    bore_mm: Annotated[float, quantity("mm", 5, 2000, "Inside diameter of the pipe.")] = 102.0
    roughness_mm: Annotated[float, quantity("mm", 0, 5, "Roughness of the wall; at most 1/20 of the bore.")] = 0.05
    fittings_k: Annotated[float, quantity("-", 0, 1000, "Loss coefficients of entrance and fittings, added up.")] = 1.2
    strainer_k: Annotated[float, quantity("-", 0, 1e5, "Loss coefficient of the strainer; 0 where there is none.")] = 0.8


class Curve(Part, kw_only=True):
    """A centrifugal pump as its maker measured it: points over flow at one speed, with cold water.

    `flow_m3h` starts at 0 and rises, `head_m` falls; give either `efficiency_percent` or `power_kw`.
    """

    title: Annotated[str, words("What people call this pump.", 80)] = ""
    speed_rpm: Annotated[float, quantity("1/min", 100, 12000, "Speed at which the points were measured.")] = 2900.0
    density_kgm3: Annotated[float, quantity("kg/m³", 300, 3000, "Density of the liquid of the test.")] = 998.2
    motor_kw: Annotated[float, quantity("kW", 0.01, 20000, "Rated power of the motor that comes with it.")]
    flow_m3h: Annotated[tuple[float, ...], Meta(min_length=3, max_length=60, description="Flows of the points, from 0 upward.", extra={"unit": "m³/h"})]
    head_m: Annotated[tuple[float, ...], Meta(min_length=3, max_length=60, description="Heads at these flows, falling.", extra={"unit": "m"})]
    efficiency_percent: (
        Annotated[tuple[float, ...], Meta(min_length=3, max_length=60, description="Pump efficiencies at these flows; 0 at no flow.", extra={"unit": "%"})] | None
    ) = None
    power_kw: (
        Annotated[tuple[float, ...], Meta(min_length=3, max_length=60, description="Shaft powers at these flows, in place of the efficiencies.", extra={"unit": "kW"})] | None
    ) = None
    npshr_m: Annotated[tuple[float, ...], Meta(min_length=3, max_length=60, description="Required NPSH (3 % head drop) at these flows.", extra={"unit": "m"})]


class PumpStation(Part):
    """The machines between the suction and the discharge node."""

    model: Annotated[str, words("Id of a pump file: small, medium, large, or one beside this file.", 60)] | UnsetType = UNSET
    curve: Curve | UnsetType = UNSET
    centre_m: Annotated[float, quantity("m", -30, 200, "Height of the shaft above the floor.")] = 0.5
    arrangement: Annotated[
        Literal["single", "side-by-side", "in-line"], choice("One pump, two equal ones side by side, or two in line.")
    ] = "single"


class Drive(Part):
    """Induction motors, one per pump; `frequency_hz` is what reaches them."""

    supply_hz: Annotated[Literal[50, 60], choice("Frequency of the public supply, which the motor is made for.")] = 50
    frequency_hz: Annotated[float, quantity("Hz", 5, 75, "Frequency that reaches the motors; the supply's when left out.")] | None = None
    poles: Annotated[Literal[2, 4, 6, 8], choice("Number of poles of the motor.")] = 2
    motor_kw: Annotated[float, quantity("kW", 0.01, 20000, "Rated power of each motor; the pump file's when left out.")] | None = None


class Check(Part):
    """The check valve at each pump's discharge: passes forward, holds backward."""

    fitted: Annotated[bool, choice("Whether there is one.")] = True
    k: Annotated[float, quantity("-", 0, 1000, "Loss coefficient when open, on the discharge bore.")] = 2.0


class ControlValve(Part):
    """The valve in the discharge line."""

    kv_open_m3h: Annotated[float, quantity("m³/h", 0.01, 1e5, "Flow coefficient Kv, fully open.")] = 63.0
    characteristic: Annotated[
        Literal["linear", "equal-percentage", "quick-opening"], choice("Inherent characteristic of the trim.")
    ] = "equal-percentage"
    rangeability: Annotated[float, quantity("-", 5, 200, "Kv fully open over the least controllable Kv.")] = 50.0
    opening: Annotated[float, quantity("-", 0, 1, "Stem position: 0 shut, 1 fully open.")] = 0.6


class Discharge(Part):
    """The line from the pump station through the control valve to the delivery vessel."""

    attached: Annotated[bool, choice("false: the line is off at the pump, which discharges into the open.")] = True
    length_m: Annotated[float, quantity("m", 0.1, 1e5, "Length of the pipe.")] = 120.0
    bore_mm: Annotated[float, quantity("mm", 5, 2000, "Inside diameter of the pipe.")] = 80.0
    roughness_mm: Annotated[float, quantity("mm", 0, 5, "Roughness of the wall; at most 1/20 of the bore.")] = 0.05
    fittings_k: Annotated[float, quantity("-", 0, 1e5, "Loss coefficients of fittings and exit, added up.")] = 6.0


class Delivery(Part):
    """The vessel at the far end."""

    surface_m: Annotated[float, quantity("m", -30, 1000, "Height of the liquid's surface above the floor.")] = 14.0
    bottom_m: Annotated[float, quantity("m", -35, 1000, "Height of the vessel's bottom above the floor.")] = 12.0
    top_m: Annotated[float, quantity("m", -30, 1010, "Height of the vessel's rim above the floor.")] = 16.0
    gas_bar: Annotated[float, quantity("bar", -0.9, 100, "Gauge pressure of the gas on the surface.")] = 0.0
    outlet_m: Annotated[float, quantity("m", -30, 1000, "Height of the pipe's end; above the surface it pours in freely.")] | None = None


class Gauge(Part):
    """A dial gauge; `class` is its greatest error in per cent of the span (EN 837-1)."""

    height_m: Annotated[float, quantity("m", -30, 1000, "Height of the dial above the floor.")] = 0.5
    range_bar: Annotated[tuple[float, float], Meta(description="Ends of the dial.", extra={"unit": "bar"})] = (0.0, 6.0)
    accuracy_class: Annotated[
        float, quantity("%", 0.1, 4, "Accuracy class: greatest error in per cent of the span.")
    ] = field(default=1.6, name="class")


class Gauges(Part):
    """Three dials: at the suction, at the discharge before the control valve, and after it."""

    suction: Gauge = Gauge(range_bar=(-1.0, 1.5))
    discharge: Gauge = Gauge()
    after_valve: Gauge = Gauge()


class Meters(Part):
    """Flow meter in the discharge line, ammeter and tachometer at each pump."""

    flow_range_m3h: Annotated[float, quantity("m³/h", 0.1, 1e5, "Upper end of the flow meter.")] = 100.0
    flow_percent: Annotated[float, quantity("%", 0.05, 10, "Greatest error of the flow meter, in per cent of its range.")] = 1.0
    current_range_a: Annotated[float, quantity("A", 0.1, 1e5, "Upper end of the ammeter.")] | None = None
    current_percent: Annotated[float, quantity("%", 0.05, 10, "Greatest error of the ammeter, in per cent of its range.")] = 1.5
    speed_percent: Annotated[float, quantity("%", 0.01, 10, "Greatest error of the tachometer, in per cent of the reading.")] = 0.1


class Plant(Part, kw_only=True):
    """A whole plant file."""

    format: Annotated[Literal[1], choice("Number of this file format.")]
    title: Annotated[str, words("What people call the plant.", 80)]
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
