"""Displacement pumps for tests: one ordinary gear pump, and any that a file may describe."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from hypothesis import strategies as st

from loadfirst.physics.displacement import DisplacementMachines, DisplacementRunning
from loadfirst.physics.displacement_pump import KINDS, DisplacementPump
from loadfirst.physics.law import Array
from loadfirst.physics.motor import Motor
from loadfirst.units import BAR, G

RPM = math.pi / 30  # [rad/s] one turn a minute
OIL, THICKNESS = 870.0, 0.05  # [kg/m³] [Pa·s]

GEAR = DisplacementPump(
    kind="gear",
    displacement=100e-6,
    speed=1450 * RPM,
    pressure=10 * BAR,
    viscosity=THICKNESS,
    density=OIL,
    volumetric_efficiency=0.93,
    mechanical_efficiency=0.85,
    npsh_required=3.0,
    pressure_limit=12 * BAR,
)
"""An ordinary gear pump of 8 m³/h on oil; our own numbers."""

MOTOR = Motor.rated(4000.0, poles=4)


def machine(
    pump: DisplacementPump = GEAR,
    motor: Motor = MOTOR,
    *,
    density: float = OIL,
    viscosity: float = THICKNESS,
    clearance: float = 1.0,
    gas: float = 0.0,
) -> DisplacementMachines:
    """One pump on its motor."""
    return DisplacementMachines.build([[pump]], motor, density, viscosity, clearance=clearance, gas=gas)


def steady(speed: float) -> Motor:
    """A motor that holds a speed in rad/s, strong enough for anything here."""
    return Motor.rated(1e6, slip=0.0, frequency=speed / (2 * math.pi))


def at_pressure(machines: DisplacementMachines, pressure: float) -> float:
    """The flow at a pressure difference, by interpolation in a fine table of the law. [Pa] -> [m³/s]"""
    flow = np.linspace(-0.5, 1.0, 40001)[:, None] * machines.last_flow
    rising = machines.head_drop(flow)[0][:, 0]
    return float(np.interp(-pressure / (machines.density[0, 0] * G), rising, flow[:, 0]))


def every(running: DisplacementRunning) -> Array:
    """All that a machine does, as one array."""
    return np.stack([np.asarray(part, dtype=float) for part in running])


@st.composite
def pumps(draw: st.DrawFn) -> DisplacementPump:
    """Any pump that a maker could print, sensible or not: 1 mm³ to 1 m³ a turn, 0.01 to 400 bar."""
    return DisplacementPump(
        kind=draw(st.sampled_from(sorted(KINDS))),
        displacement=10.0 ** draw(st.floats(-7, 0)),
        speed=draw(st.floats(10, 6000)) * RPM,
        pressure=10.0 ** draw(st.floats(3, 7.6)),
        viscosity=10.0 ** draw(st.floats(-4, 2)),
        density=draw(st.floats(300, 3000)),
        volumetric_efficiency=draw(st.floats(0.05, 0.9999)),
        mechanical_efficiency=draw(st.floats(0.05, 1)),
        npsh_required=draw(st.floats(0, 20)),
    )


@dataclass(frozen=True)
class Service:
    """What a pump is put to: motor, liquid, wear, gas."""

    motor: Motor
    density: float
    viscosity: float
    clearance: float
    gas: float

    def of(self, pump: DisplacementPump) -> DisplacementMachines:
        """The pump in this service."""
        return machine(
            pump,
            self.motor,
            density=self.density,
            viscosity=self.viscosity,
            clearance=self.clearance,
            gas=self.gas,
        )


@st.composite
def services(draw: st.DrawFn) -> Service:
    """Any motor from 10 W to 20 MW, any liquid from petrol to pitch, new or worn to three times the gap."""
    motor = Motor.rated(
        10.0 ** draw(st.floats(1, 7.3)),
        poles=draw(st.sampled_from([2, 4, 6, 8])),
        supply_frequency=draw(st.sampled_from([50, 60])),
        frequency=draw(st.floats(5, 75)),
        slip=draw(st.sampled_from([None, 0.0])),
    )
    return Service(
        motor,
        density=draw(st.floats(300, 3000)),
        viscosity=10.0 ** draw(st.floats(-4, 2)),
        clearance=draw(st.floats(0.5, 3)),
        gas=draw(st.sampled_from([0.0, 0.1, 0.9])),
    )


def far_and_wide(machines: DisplacementMachines) -> Array:
    """Flows from far below zero to far beyond the free flow, (F, 1) rising. [m³/s]"""
    usual = float(machines.best_efficiency_flow[0, 0])
    knots = machines.curves.knots[:, 0, 0]
    fine = np.linspace(-3 * usual, 5 * usual, 401)
    around = np.concatenate([knots * (1 - 1e-9), knots, knots * (1 + 1e-9)])
    ends = [-1e6 * usual, -1e3 * usual, 1e3 * usual, 1e6 * usual]
    return np.unique(np.concatenate([fine, around, ends]))[:, None]
