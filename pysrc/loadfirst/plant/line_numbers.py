"""Numbers of pipes and hand valves, as their laws ask for them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from loadfirst.units import TO_SI

if TYPE_CHECKING:
    from loadfirst.plant.elements.section import Given

MM = TO_SI["mm"]


class Line(Protocol):
    """The table of any line."""

    @property
    def bore_mm(self) -> float: ...
    @property
    def roughness_mm(self) -> float: ...


class HandValve(Protocol):
    """The table of a line with a valve of its own."""

    @property
    def kv_open_m3h(self) -> float: ...
    @property
    def opening(self) -> float: ...


def pipe(given: Given, line: Line, length: float, k: float) -> tuple[float, ...]:
    """Numbers of the law "pipes".

    Parameters
    ----------
    length : of the pipe, or of the part of the line that stands here. [m]
    k : loss coefficients of its fittings, added up. [-]
    """
    return length, line.bore_mm * MM, line.roughness_mm * MM, k, given.liquid.kinematic


def hand_valve(valve: HandValve) -> tuple[float, ...]:
    """Numbers of the law "valves": the flow coefficient goes with the opening (common practice). [m³/h]"""
    return (valve.kv_open_m3h * valve.opening,)
