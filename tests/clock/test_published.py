"""Transients whose course is known in closed form, as plants."""

from __future__ import annotations

from math import atanh, pi, sqrt, tanh

import numpy as np
import pytest
from msgspec.structs import replace
from tests.clocks import happenings
from tests.rig import rig

from loadfirst.clock.begin import begin
from loadfirst.clock.run import run
from loadfirst.clock.shafts import FRICTION, Motors
from loadfirst.plant.build import build, liquid_of
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.services import services
from loadfirst.plant.solved import solve_plants
from loadfirst.units import G

ROUGH = 5.0
"""Roughness at a twentieth of the bore: the friction factor then hardly depends on the flow. [mm]"""
SLOW = {"supply": {"area_m2": 1e5}, "delivery": {"area_m2": 1e5}}
"""Vessels so wide that their levels stand still."""


def downhill(**more: dict[str, object]) -> ResolvedPlant:
    """A pump that stands, in a line that runs downhill by itself; nearly all of the loss goes with q²."""
    tables: dict[str, dict[str, object]] = {
        "supply": {"surface_m": 12.0, "bottom_m": 10.0, "top_m": 14.0},
        "delivery": {"surface_m": 2.0, "bottom_m": 0.0, "top_m": 4.0},
        "pump": {"running": False},
        "suction": {"length_m": 0.1, "bore_mm": 100.0, "roughness_mm": ROUGH},
        "discharge": {"length_m": 100.0, "bore_mm": 100.0, "roughness_mm": ROUGH, "fittings_k": 100.0},
        "valve": {"opening": 1.0},
        "check": {"fitted": False},
    }
    return rig(**{name: tables.get(name, {}) | more.get(name, {}) for name in tables | more})


def test_a_rigid_column_gets_going_as_the_hyperbolic_tangent() -> None:
    """V/V0 = tanh(t / 2 τ), τ = L V0/(2 g H) · … : from memory, exact for a loss that goes with q²."""
    plant = downhill(**SLOW)
    built = build([plant])
    full = float(solve_plants(built).solution.flow["discharge-line"][0])
    inert = 4 / (pi * G) * (100.0 / 0.1**2 + 0.1 / 0.1**2)
    constant = inert * full / 10.0  # of tanh(t/constant): head 10 m
    still = replace(begin(plant), flows={"suction-line": 0.0, "discharge-line": 0.0})
    for share in (0.3, 1.0, 2.0):
        flow = run(plant, still, share * constant, tolerance=1e-5).moment.flows["discharge-line"]
        assert flow / full == pytest.approx(tanh(share), rel=2e-3)
    assert run(plant, still, 1.0 * constant).moment.flows["discharge-line"] == pytest.approx(
        full * tanh(1.0), rel=5e-3
    )  # as accurate as the page has it
    assert tanh(0.5) == pytest.approx(0.4621, abs=1e-4)  # the printed fraction at t = L V0/(2 g H)


def test_a_tank_empties_through_an_orifice_in_the_time_of_torricelli() -> None:
    """t = 2 A √C (√h0 - √h1) with h = C q², TK-DRAIN-CD and Çengel & Cimbala's example 5-2 (closed form)."""
    plant = rig(
        supply={"surface_m": 2.0, "bottom_m": 0.0, "top_m": 4.0, "area_m2": 1.0},
        pump={"running": False, "centre_m": 0.0},
        suction={"length_m": 0.1, "bore_mm": 50.0, "roughness_mm": 2.5, "fittings_k": 900.0},
        discharge={"attached": False, "bore_mm": 50.0, "roughness_mm": 2.5},
    )
    flow = float(solve_plants(build([plant])).solution.flow["end"][0])
    constant = 2.0 / flow**2
    time = 2 * sqrt(constant) * (sqrt(2.0) - sqrt(0.5))
    ran = run(plant, begin(plant), time)
    assert ran.moment.supply.volume[0] == pytest.approx(0.5, rel=1e-3)
    assert run(plant, begin(plant), time, tolerance=1e-5).moment.supply.volume[0] == pytest.approx(
        0.5, rel=1e-4
    )


def test_two_tanks_level_out_in_the_time_of_the_closed_form() -> None:
    """t = 2 A1 A2 √h √C / (A1 + A2) to level, as TK-EQUALISE: after half of it a quarter of h is left."""
    plant = downhill(
        supply={"surface_m": 3.5, "bottom_m": 0.0, "top_m": 4.0, "area_m2": 2.0},
        delivery={"surface_m": 2.0, "bottom_m": 0.0, "top_m": 4.0, "area_m2": 1.0},
        discharge={"length_m": 0.1, "fittings_k": 900.0},
    )
    flow = float(solve_plants(build([plant])).solution.flow["end"][0])
    whole = 2 * (2.0 * 1.0) / 3.0 * 1.5 / flow
    moment = run(plant, begin(plant), whole / 2).moment
    left = moment.supply.volume[0] / 2.0 - moment.delivery.volume[0] / 1.0
    assert left == pytest.approx(1.5 / 4, rel=3e-3)


def test_a_tank_fills_by_its_inflow_over_its_area() -> None:
    """TK-FILL: 36 m³/h into 5 m² is 2.0 mm/s, exactly."""
    plant = rig(supply={"area_m2": 5.0, "inflow_m3h": 36.0}, pump={"running": False})
    moment = run(plant, begin(plant), 100.0).moment
    assert moment.supply.volume[0] / 5.0 == pytest.approx(2.0 + 0.2, rel=1e-9)


def motor_of(plant: ResolvedPlant, on: bool) -> Motors:
    """The motor of the first pump."""
    return Motors.of(plant, 0, services(plant, liquid_of(plant.plant))[0], on)


def shut(**drive: object) -> ResolvedPlant:
    """A pump against a shut valve: its torque goes with the square of its speed, exactly."""
    return rig(valve={"opening": 0.0}, drive=drive)


def load_of(plant: ResolvedPlant) -> float:
    """Torque over speed squared at the shut valve. [N·m s²]"""
    running = solve_plants(build([plant])).running["pumps"]
    return float(running.torque[0, 0] / running.speed[0, 0] ** 2)


def test_a_motor_runs_up_in_the_time_that_the_torque_balance_gives() -> None:
    """t = ∫ J dω / (T_motor - T_pump), by a fine sum; any textbook on drives."""
    plant = shut(inertia_kgm2=0.05)
    motor, load = motor_of(plant, True), load_of(plant)
    off = replace(begin(plant), shafts=(replace(begin(plant).shafts[0], regime="standing", speed=0.0),))
    ran = run(plant, off, 5.0)
    assert happenings(ran)[-1] == ("running", "pump-1")
    speeds = np.linspace(0, 290.0, 20001)
    spare = np.array([motor.torque(speed) - load * speed**2 for speed in speeds])
    wanted = 0.05 * float(np.trapezoid(1 / spare, speeds))
    assert wanted < ran.events[-1].time < 1.3 * wanted  # the last few turns were still to come
    for late in (0.97, 1.03):
        assert (run(plant, off, late * wanted).moment.shafts[0].speed > 290.0) == (late > 1)


def test_a_pump_coasts_down_as_its_torque_brakes_it() -> None:
    """J dω/dt = -k ω² - c: the arctangent's law."""
    plant, stopped = (
        shut(inertia_kgm2=0.5),
        rig(valve={"opening": 0.0}, pump={"running": False}, drive={"inertia_kgm2": 0.5}),
    )
    load, friction = load_of(plant), FRICTION * motor_of(plant, True).rated
    begun = begin(plant)
    first, rate = begun.shafts[0].speed, sqrt(load * friction) / 0.5
    for time in (1.0, 5.0, 20.0):
        angle = np.arctan(first * sqrt(load / friction)) - rate * time
        speed = run(stopped, begun, time).moment.shafts[0].speed
        assert speed == pytest.approx(sqrt(friction / load) * np.tan(angle), rel=0.01)


def test_the_printed_start_of_a_long_main_is_the_closed_form() -> None:
    """T-RIGID-BITTLE: 12.6 s to 99 % at 4.67 m/s (steady velocity read; time in closed form)."""
    assert 100.0 * 4.67 / (G * 10.0) * atanh(0.99) == pytest.approx(12.6, rel=2e-3)


def test_a_shaft_that_liquid_drives_gains_what_its_torque_gives() -> None:
    """Δω = T t / J in closed form; no speed is beyond all bounds."""
    motor = motor_of(rig(), on=False)
    speed, torque, span = 100.0, 5.0, 50.0
    gained = (torque - FRICTION * motor.rated) * span / motor.inertia
    assert motor.after(speed, span, -torque / speed**2) == pytest.approx(speed + gained, rel=1e-9)
