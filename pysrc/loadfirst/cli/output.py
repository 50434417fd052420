"""What the command line prints as JSON: the unit of every number stands in its key.

The schema that `python -m loadfirst schema` prints is generated from these types.
"""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

Off = Literal["low", "high"] | None


class Pressure(Struct, tag="pressure", tag_field="quantity"):
    """A pressure gauge; `pressure_bar` is null where there is nothing to read."""

    id: str
    pressure_bar: float | None
    low_bar: float
    high_bar: float
    greatest_error_bar: float | None
    standard_uncertainty_bar: float | None
    off_scale: Off


class Flow(Struct, tag="flow", tag_field="quantity"):
    """A flow meter."""

    id: str
    flow_m3h: float | None
    low_m3h: float
    high_m3h: float
    greatest_error_m3h: float | None
    standard_uncertainty_m3h: float | None
    off_scale: Off


class Current(Struct, tag="current", tag_field="quantity"):
    """An ammeter."""

    id: str
    current_a: float | None
    low_a: float
    high_a: float
    greatest_error_a: float | None
    standard_uncertainty_a: float | None
    off_scale: Off


class Speed(Struct, tag="speed", tag_field="quantity"):
    """A tachometer."""

    id: str
    speed_rpm: float | None
    low_rpm: float
    high_rpm: float
    greatest_error_rpm: float | None
    standard_uncertainty_rpm: float | None
    off_scale: Off


class Level(Struct, tag="height", tag_field="quantity"):
    """A level gauge: height of the surface above the floor."""

    id: str
    height_m: float | None
    low_m: float
    high_m: float
    greatest_error_m: float | None
    standard_uncertainty_m: float | None
    off_scale: Off


class Output(Struct, tag="output", tag_field="quantity"):
    """The output that a controller shows, of its full output."""

    id: str
    output_percent: float | None
    low_percent: float
    high_percent: float
    greatest_error_percent: float | None
    standard_uncertainty_percent: float | None
    off_scale: Off


class Point(Struct):
    """A flow and a head. The duty point is that of the whole station."""

    flow_m3h: float
    head_m: float


class Possible(Struct):
    """One of several states that the plant may be in.

    Whether it lasts, and whether it is the one that all else is about.
    """

    flow_m3h: float
    head_m: float
    pump_flows_m3h: list[float]
    lasts: bool
    there: bool


class Block(Struct):
    """One part of the head that the load asks for; null where nobody knows how it is shared."""

    block: str
    head_m: float | None


class Balance(Struct):
    """The pumps' own head as two gauges give it: the first four add up to the fifth.

    Pressure and check valves (those between the gauges) are null where a pressure is undefined.
    """

    pressure_head_m: float | None
    height_m: float
    velocity_head_m: float
    check_valve_m: float | None
    answer_m: float


class Machine(Struct):
    """One pump and its motor.

    The speed is the pump's; that of the motor and the current at its start are null where it is off,
    the time until its relay trips where it does not.
    """

    name: str
    kind: str
    flow_m3h: float
    head_m: float
    speed_rpm: float
    shaft_power_kw: float
    efficiency_percent: float
    npsh_required_m: float
    npsh_available_m: float | None
    motor_input_kw: float
    current_a: float
    load_percent: float
    motor_speed_rpm: float | None
    start_current_a: float | None
    trips_after_s: float | None


class Note(Struct):
    """Something a person should know about this answer, and the numbers behind it; pressures are gauge."""

    kind: str
    where: str
    facts: dict[str, float]
    text: str


class ReadOutput(Struct):
    """What ``read --json`` prints."""

    file: str
    title: str
    converged: bool
    why: str | None
    instruments: list[Pressure | Flow | Current | Speed | Level | Output]
    duty: Point
    states: list[Possible]
    aside_m3h: dict[str, float]
    head_breakdown: list[Block]
    balance: Balance
    machines: list[Machine]
    notes: list[Note]


class CurvesOutput(Struct):
    """What ``curves --json`` prints: columns of equal length, null where a curve does not reach."""

    file: str
    title: str
    flow_m3h: list[float]
    load_head_m: list[float | None]
    machine_head_m: list[float | None]
    station_head_m: list[float | None]
    npsh_required_m: list[float]
    shaft_power_kw: list[float | None]
    duty: Point
