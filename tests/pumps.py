"""Pumps for tests: one ordinary radial pump, and any that a file may describe."""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt
from hypothesis import strategies as st

from loadfirst.physics.centrifugal import PumpCurve, specific_speed
from loadfirst.physics.law import Array, column
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.units import HOUR, G

RPM = math.pi / 30  # [rad/s] one turn a minute
WATER = 998.2  # [kg/m³]

RADIAL = PumpCurve.from_points(
    2900 * RPM,
    np.array([0, 10, 20, 30, 40, 50, 60]) / HOUR,
    [42.0, 41.6, 40.2, 37.6, 33.4, 27.4, 19.0],
    [1.5, 1.5, 1.6, 1.8, 2.2, 3.0, 4.2],
    efficiency=[0.0, 0.34, 0.56, 0.68, 0.72, 0.68, 0.54],
)
"""An ordinary end-suction pump; our own numbers."""


def suction_specific_speed(pump: PumpCurve) -> float:
    """At the best-efficiency point. [1/min, m³/s, m]"""
    npsh = float(pump.at([pump.best_efficiency_flow])[2][0])
    return specific_speed(pump.speed, pump.best_efficiency_flow, npsh)


STEADY = Motor.rated(7500.0, slip=0.0)
"""A motor that holds 3000 1/min whatever the load."""


def machine(pump: PumpCurve = RADIAL, motor: Motor | None = None, density: npt.ArrayLike = WATER) -> Machines:
    """One pump on its motor."""
    return Machines.build([[pump]], Motor.rated(7500.0) if motor is None else motor, density)


def at_speed(pump: PumpCurve, speed: float) -> Machines:
    """A pump held at a speed in rad/s, without slip."""
    frequency = speed / (2 * math.pi)
    return machine(pump, Motor.rated(7500.0, slip=0.0, frequency=frequency), pump.density)


def across(flow: npt.ArrayLike) -> Array:
    """Flows for one plant with one machine, as a batch: (F, 1)."""
    return np.asarray(flow, dtype=float).reshape(-1, 1)


@st.composite
def pumps(draw: st.DrawFn) -> PumpCurve:
    """Any pump that the rules of a pump file allow, sensible or not.

    Flow rises from 0, head falls, power is anything above what the liquid
    takes away: flat heads, leaping and dropping powers, steps tiny and large.
    """
    count = draw(st.integers(3, 12))
    number = st.floats(0.001, 1.0)
    steps = draw(st.lists(number, min_size=count - 1, max_size=count - 1))
    falls = draw(st.lists(st.floats(1e-6, 1.0), min_size=count, max_size=count))
    scale_flow, scale_head = 10.0 ** draw(st.floats(-4, 0.5)), 10.0 ** draw(st.floats(-1, 2.5))
    flow = scale_flow * np.concatenate([[0.0], np.cumsum(steps)])
    head = scale_head * np.cumsum(falls)[::-1]
    density = draw(st.sampled_from([300.0, 998.2, 3000.0]))
    over = 10.0 ** np.array(draw(st.lists(st.floats(0.01, 3), min_size=count, max_size=count)))
    power = np.maximum(density * G * flow * head, 1.0) * over
    npsh = draw(st.lists(st.floats(0.01, 20), min_size=count, max_size=count))
    speed = draw(st.sampled_from([100.0, 960.0, 2900.0, 12000.0])) * RPM
    return PumpCurve.from_points(speed, flow, head, npsh, power=power, density=density)


@st.composite
def motors(draw: st.DrawFn) -> Motor:
    """Any motor that a plant file allows: 10 W to 20 MW, 5 to 75 Hz."""
    return Motor.rated(
        10.0 ** draw(st.floats(1, 7.3)),
        poles=draw(st.sampled_from([2, 4, 6, 8])),
        supply_frequency=draw(st.sampled_from([50, 60])),
        frequency=draw(st.floats(5, 75)),
    )


def far_and_wide(machines: Machines) -> Array:
    """Flows from far below zero to far beyond the last point, (F, 1) rising. [m³/s]"""
    last = float(machines.last_flow[0, 0])
    knots = machines.curves.knots[0, 0]
    fine = np.linspace(-2 * last, 4 * last, 601)
    around = np.concatenate([knots * (1 - 1e-9), knots, knots * (1 + 1e-9)])
    return column(np.unique(np.concatenate([fine, around, [-1e3 * last, 1e3 * last]]))).T
