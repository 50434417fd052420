"""What each element of a plant loses, for the checker: plain numbers, one element at a time."""

from __future__ import annotations

from collections.abc import Callable
from math import copysign, exp, log, log10, pi, sqrt
from typing import NamedTuple

from scipy.interpolate import CubicHermiteSpline
from scipy.optimize import brentq

from loadfirst.plant.plant import Plant

G = 9.80665
STEEP = 1e10  # [m/(m³/s)] anything shut
ROUND_OFF = 1e-18  # [m³/s] a backward flow that is none
Law = Callable[[float], float]


class Piece(NamedTuple):
    """An element between two nodes, with what it loses at a flow."""

    inlet: str
    outlet: str
    loss: Law


class Fluid(NamedTuple):
    """Density [kg/m³], dynamic viscosity [Pa·s], vapour pressure [Pa]; water's are checked elsewhere."""

    density: float
    viscosity: float
    vapour: float


def pipe_law(length: float, bore_mm: float, roughness_mm: float, k: float, fluid: Fluid) -> Law:
    """Darcy–Weisbach and fittings: (f L/D + K) v²/2g. [m³/s] -> [m]"""
    bore, kinematic = bore_mm / 1000, fluid.viscosity / fluid.density

    def loss(flow: float) -> float:
        if flow == 0:
            return 0.0
        speed = abs(flow) / (pi / 4 * bore**2)
        factor = friction_factor(speed * bore / kinematic, roughness_mm / bore_mm)
        return copysign((factor * length / bore + k) * speed**2 / (2 * G), flow)

    return loss


def friction_factor(reynolds: float, roughness: float) -> float:
    """64/Re below 2000, Colebrook above 4000, a cubic of logarithm over logarithm between."""
    if reynolds <= 2000:
        return 64 / reynolds
    if reynolds >= 4000:
        return _colebrook(reynolds, roughness)
    end = _colebrook(4000, roughness)
    bridge = CubicHermiteSpline(
        [log(2000), log(4000)], [log(64 / 2000), log(end)], [-1.0, _colebrook_exponent(end, roughness)]
    )
    return exp(float(bridge(log(reynolds))))


def _colebrook(reynolds: float, roughness: float) -> float:
    x = 8.0  # 1/√f
    for _ in range(60):
        x = -2 * log10(roughness / 3.7 + 2.51 * x / reynolds)
    return x**-2


def _colebrook_exponent(factor: float, roughness: float) -> float:
    """d ln f / d ln Re at Re 4000, by implicit differentiation of Colebrook's equation."""
    x = 1 / sqrt(factor)
    rough, smooth = roughness / 3.7, 2.51 * x / 4000
    gain = 2 / log(10) * smooth / (rough + smooth)
    return -2 * gain / (x + gain)


def kv_law(kv: float) -> Law:
    """Head lost at a flow coefficient. [m³/h]"""
    scale = 1e5 * 3600**2 / (999.1 * G)
    if kv <= 10 * sqrt(scale) / STEEP:  # passes at 100 m no more than a shut one
        return lambda flow: STEEP * flow
    return lambda flow: scale / kv**2 * abs(flow) * flow


def check_law(k: float, bore_mm: float, holds: bool) -> Law:
    """K v²/2g forward; backward one steep line where it holds, else the same."""
    area = pi / 4 * (bore_mm / 1000) ** 2

    def loss(flow: float) -> float:
        if holds and flow < 0:
            return STEEP * flow
        return k * flow * abs(flow) / (2 * G * area**2)

    return loss


def summit_law(full: Law, above: float, bore_mm: float, held: bool) -> Law:
    """The pipe beyond, or what it takes to get over: whichever asks for more.

    Nothing comes back where the summit stands above; else no more than leaves it its least head.
    """

    def spare(flow: float) -> float:
        return full(flow) - above - velocity_head(flow, bore_mm)

    most = -sqrt(max(-above, 0.0) / velocity_head(1.0, bore_mm))
    limit = float(brentq(spare, most, 0.0, xtol=1e-300, rtol=1e-15)) if spare(most) < 0 < spare(0.0) else most

    def loss(flow: float) -> float:
        if flow >= 0:
            return max(full(flow), above + velocity_head(flow, bore_mm))
        if above <= 0:
            if flow >= limit:
                return full(flow)
            steep = min(STEEP, 1e6 * above / limit) if limit else STEEP
            return full(limit) + steep * (flow - limit)
        return above + (STEEP * flow if held else full(flow))

    return loss


def velocity_head(flow: float, bore_mm: float) -> float:
    """v²/2g. [m]"""
    return (flow / (pi / 4 * (bore_mm / 1000) ** 2)) ** 2 / (2 * G)


def filter_law(plant: Plant, fluid: Fluid) -> Law:
    """The clean drop of water at 20 °C, as much more as it is fouled and the liquid thicker; and a square."""
    own = plant.filter
    per_flow = own.clean_drop_bar * 1e5 * 3600 / own.clean_flow_m3h * fluid.viscosity / 1.0016e-3
    line = per_flow * (1 + own.fouling) / (fluid.density * G)
    square = own.housing_k * velocity_head(1.0, plant.discharge.bore_mm)
    return lambda flow: line * flow + square * flow * abs(flow)


def relief_law(plant: Plant, fluid: Fluid) -> Law:
    """On its seat steep (or a leaky orifice) to the set head, then in proportion, then an orifice."""
    relief, weight = plant.relief, fluid.density * G
    assert relief.set_bar is not None and relief.capacity_m3h is not None
    lifts, full = relief.set_bar * 1e5 / weight, relief.capacity_m3h / 3600
    most = lifts * (1 + relief.accumulation_percent / 100)
    leak = relief.passing_percent / 100 * full if relief.state == "passing" else 0.0
    tight = leak <= 10 * lifts / STEEP
    seat = lifts / STEEP if tight else leak

    def loss(flow: float) -> float:
        if relief.state == "blocked" or (tight and flow <= seat):
            return STEEP * flow
        if flow <= seat:
            return lifts * flow * abs(flow) / seat**2
        if flow <= full:
            return lifts + (most - lifts) * (flow - seat) / (full - seat)
        return most * (flow / full) ** 2

    return loss


def valve_law(plant: Plant) -> Law:
    """IEC 60534: Kv m³/h pass at 1 bar, in water of 999.1 kg/m³; at opening 0 nothing."""
    valve = plant.valve
    share = {
        "equal-percentage": valve.rangeability ** (valve.opening - 1),
        "linear": 1 / valve.rangeability + (1 - 1 / valve.rangeability) * valve.opening,
        "quick-opening": sqrt(valve.opening),
    }[valve.characteristic]
    return kv_law(valve.kv_open_m3h * share if valve.opening > 0 else 0.0)


def check_valve_law(plant: Plant) -> Law:
    """Fitted, stuck open, or with a seat that lets so much by."""
    check, bore = plant.check, plant.discharge.bore_mm
    k = check.k if check.fitted else 0.0
    if not check.fitted or check.stuck_open:
        return lambda flow: k * copysign(velocity_head(flow, bore), flow)
    seat = kv_law(check.leak_kv_m3h)
    return lambda flow: k * velocity_head(flow, bore) if flow >= -ROUND_OFF else seat(flow)
