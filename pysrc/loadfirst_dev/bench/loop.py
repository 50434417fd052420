"""A plant with one pump as one equation in one unknown, for scipy's root finder.

The yardstick of the solver: the same physics written independently, as an
engineer would who has only this one plant to solve, and fairly fast (plain
numbers, coefficients made beforehand). It shares no code with the package's
physics; the liquid's properties and the plant's data are given to it.

The unknown is the flow φ on the maker's curve. The motor's line answers the
torque there with the speed x (of the test's), x = a - c(φ) x², so the pump adds
x² H0(φ) at the flow x φ, and the root is where the load takes just that.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable
from math import log, pi, sqrt

from fluids import friction_factor
from scipy.interpolate import PchipInterpolator  # type: ignore[import-untyped]
from scipy.optimize import brentq  # type: ignore[import-untyped]

from loadfirst.plant.plant import Curve, Plant
from loadfirst.plant.pumps import ResolvedPlant

G = 9.80665  # [m/s²]
SLIPS = ((0.373, 0.05), (3.73, 0.03), (11.2, 0.025), (37.3, 0.017), (186.0, 0.008))  # [kW], [-]
SMALL = 1e-6  # [-] of the last flow: where the search begins

Loss = Callable[[float], float]


class Loop:
    """One plant: a single pump, its line attached, the valve not shut.

    Parameters
    ----------
    one : the plant with its pump's points.
    density : of the liquid. [kg/m³]
    viscosity : of the liquid, kinematic. [m²/s]
    """

    def __init__(self, one: ResolvedPlant, density: float, viscosity: float) -> None:
        plant, curve = one.plant, one.curve
        assert isinstance(curve, Curve)
        self.test = curve.speed_rpm * pi / 30
        self.knots = [flow / 3600 for flow in curve.flow_m3h]
        torques = [power / self.test for power in shaft_powers(curve)]
        self.pieces = cubics(self.knots, list(curve.head_m), torques)
        field, droop = motor(plant, curve)
        self.no_load = field / self.test
        self.lost = droop * density / curve.density_kgm3 / self.test
        self.losses = losses(plant, viscosity)
        self.static = static_head(plant, density)

    def pump(self, reduced: float) -> tuple[float, float]:
        """Flow and head of the pump where its maker's curve stands at a flow. [m³/s] -> [m³/s], [m]"""
        k = min(bisect_right(self.knots, reduced), len(self.pieces)) - 1
        a, b, c, d, e, f, g, h = self.pieces[k]
        s = reduced - self.knots[k]
        torque = e + s * (f + s * (g + s * h))
        x = 2 * self.no_load / (1 + sqrt(1 + 4 * self.no_load * self.lost * torque))
        return x * reduced, x * x * (a + s * (b + s * (c + s * d)))

    def missing(self, reduced: float) -> float:
        """What the pump adds beyond what the load takes. [m³/s] -> [m]"""
        flow, head = self.pump(reduced)
        for loss in self.losses:
            head -= loss(flow)
        return head - self.static

    def solve(self) -> float:
        """The flow where nothing is missing. [m³/s]"""
        return self.pump(brentq(self.missing, SMALL * self.knots[-1], self.knots[-1]))[0]


def cubics(knots: list[float], *columns: list[float]) -> list[tuple[float, ...]]:
    """For each stretch between knots the four coefficients of every column, the constant first."""
    tables = [PchipInterpolator(knots, column).c for column in columns]
    stretches = range(len(knots) - 1)
    return [tuple(float(table[3 - power, k]) for table in tables for power in range(4)) for k in stretches]


def shaft_powers(curve: Curve) -> list[float]:
    """At the points; where efficiency is given, at no flow along the line through the next two. [W]"""
    if curve.power_kw is not None:
        return [power * 1000 for power in curve.power_kw]
    assert curve.efficiency_percent is not None
    points = list(zip(curve.flow_m3h, curve.head_m, curve.efficiency_percent, strict=True))[1:]
    powers = [curve.density_kgm3 * G * q / 3600 * h / (e / 100) for q, h, e in points]
    first, second = points[0][0], points[1][0]
    at_rest = powers[0] - (powers[1] - powers[0]) / (second - first) * first
    return [min(max(at_rest, powers[0] / 4), powers[0] * 4), *powers]


def motor(plant: Plant, curve: Curve) -> tuple[float, float]:
    """Speed of the field, and speed lost per torque. [rad/s] [rad/s per N·m]"""
    drive = plant.drive
    supply = float(drive.supply_hz)
    frequency = supply if drive.frequency_hz is None else drive.frequency_hz
    kw = curve.motor_kw if drive.motor_kw is None else drive.motor_kw
    synchronous = 4 * pi * supply / drive.poles
    rated = slip(kw)
    droop = synchronous * rated / (kw * 1000 / (synchronous * (1 - rated)))
    return 4 * pi * frequency / drive.poles, droop * max(frequency / supply, 1.0) ** 2


def slip(kw: float) -> float:
    """At rated load, between the table's points along the logarithm of the power. [-]"""
    for (low, slip_low), (high, slip_high) in zip(SLIPS, SLIPS[1:], strict=False):
        if low < kw <= high:
            return slip_low + (slip_high - slip_low) * log(kw / low) / log(high / low)
    return SLIPS[0][1] if kw <= SLIPS[0][0] else SLIPS[-1][1]


def losses(plant: Plant, viscosity: float) -> list[Loss]:
    """Everything that takes head as the flow grows: both lines, and valve with check valve. [m³/s] -> [m]"""
    suction, discharge, valve = plant.suction, plant.discharge, plant.valve
    kv = (
        valve.kv_open_m3h
        * {
            "equal-percentage": valve.rangeability ** (valve.opening - 1),
            "linear": 1 / valve.rangeability + (1 - 1 / valve.rangeability) * valve.opening,
            "quick-opening": sqrt(valve.opening),
        }[valve.characteristic]
    )
    area = pi / 4 * (discharge.bore_mm / 1000) ** 2
    square = 1e5 * 3600**2 / (999.1 * G * kv**2) + plant.check.k / (2 * G * area**2)
    return [
        pipe(
            suction.length_m,
            suction.bore_mm,
            suction.roughness_mm,
            suction.fittings_k + suction.strainer_k,
            viscosity,
        ),
        pipe(discharge.length_m, discharge.bore_mm, discharge.roughness_mm, discharge.fittings_k, viscosity),
        lambda flow: square * flow * flow,
    ]


def pipe(length: float, bore_mm: float, roughness_mm: float, k: float, viscosity: float) -> Loss:
    """Darcy and Weisbach, and fittings. [m] [mm] [mm] [-] [m²/s] -> ([m³/s] -> [m])"""
    bore, relative = bore_mm / 1000, roughness_mm / bore_mm
    area, slender = pi / 4 * bore**2, length / bore

    def loss(flow: float) -> float:
        speed = flow / area
        factor: float = friction_factor(speed * bore / viscosity, relative)
        return (factor * slender + k) * speed * speed / (2 * G)

    return loss


def static_head(plant: Plant, density: float) -> float:
    """From the supply's surface to where the line ends, gas pressures included. [m]"""
    far, near = plant.delivery, plant.supply
    end = far.surface_m if far.outlet_m is None else max(far.surface_m, far.outlet_m)
    return end - near.surface_m + (far.gas_bar - near.gas_bar) * 1e5 / (density * G)
