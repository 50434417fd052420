"""Displacement pumps and relief valves against textbooks, Wilson's relations and the rules of the trade."""

from __future__ import annotations

import math
from functools import partial

import numpy as np
import pytest
from tests.displacement import GEAR, MOTOR, OIL, RPM, at_pressure, machine, steady
from tests.published.printed import Printed, each

from loadfirst.physics.displacement import DisplacementRunning
from loadfirst.physics.displacement_pump import (
    KINDS,
    DisplacementPump,
    laminar_share,
)
from loadfirst.physics.law import Law
from loadfirst.physics.network import Element, Network, solve
from loadfirst.physics.pipe import Pipes
from loadfirst.physics.relief import ReliefValves
from loadfirst.physics.valve import Valves, flow_coefficient
from loadfirst.units import BAR, G

INCH, GALLON, POUND = 0.0254, 231 * 0.0254**3, 0.45359237 * G  # [m] [m³] US [N]
GPM, PSI, INCH_POUND = GALLON / 60, POUND / INCH**2, POUND * INCH  # [m³/s] [Pa] [N·m]
LITRE, MINUTE = 1e-3, 60.0

esposito = partial(Printed, source="A. Esposito, Fluid Power with Applications, chapter 5")
INPUTS_READ = "computed: inputs read in FOSSEE/Scilab-TBC-Uploads, 788/CH5; answers from memory, recomputed"


def gear_displacement(outside: float, inside: float, width: float) -> float:
    """Volume per turn: the ring between tip and root (Esposito, chapter 5, from memory). [m] [m³]"""
    return math.pi / 4 * (outside**2 - inside**2) * width


def pump(displacement: float, speed: float, volumetric: float, **more: float) -> DisplacementPump:
    """A gear pump on oil, of which an example gives a few numbers only."""
    usual = {"pressure": 70 * BAR, "mechanical_efficiency": 0.9, "npsh_required": 3.0}
    return DisplacementPump(
        kind="gear",
        displacement=displacement,
        speed=speed,
        volumetric_efficiency=volumetric,
        viscosity=0.03,
        density=OIL,
        **(usual | more),
    )


def running(made: DisplacementPump, flow: float) -> DisplacementRunning:
    """What it does at a flow, held at its speed, on the liquid of its test."""
    held = machine(made, steady(made.speed), density=made.density, viscosity=made.viscosity)
    return held.running(np.array([[flow]]))


@each(
    esposito(
        "example 5-1",
        given={"outside": 3, "inside": 2, "width": 1, "rpm": 1800, "gpm": 28},
        answer={"in³ a turn": 3.93, "theoretical gpm": 30.6, "volumetric efficiency": 0.913},
        within=0.004,
        provenance=INPUTS_READ,
        why="the book goes on with 3.93 and 30.6, rounded",
    )
)
def test_an_external_gear_pumps_displacement_and_volumetric_efficiency(row: Printed) -> None:
    """The ring between tip and root for a turn; 28 gpm of it arrive."""
    size = gear_displacement(*(row.given[name] * INCH for name in ("outside", "inside", "width")))
    made = pump(size, row.given["rpm"] * RPM, 0.9)
    found = running(made, row.given["gpm"] * GPM)
    assert {
        "in³ a turn": size / INCH**3,
        "theoretical gpm": made.per_radian * float(found.speed[0, 0]) / GPM,
        "volumetric efficiency": float(found.volumetric_efficiency[0, 0]),
    } == row.expected


@each(
    esposito(
        "example 5-2",
        given={"outside": 75, "inside": 50, "width": 25, "rpm": 1000, "volumetric": 0.9},
        answer={"litre a turn": 0.0614, "m³/min": 0.0553},
        within=0.002,
        provenance=INPUTS_READ,
        why="the book goes on with 0.0614, rounded",
    )
)
def test_a_metric_gear_pump_delivers_what_the_book_says(row: Printed) -> None:
    """At the rated pressure, from the volumetric efficiency there."""
    size = gear_displacement(*(row.given[name] * 1e-3 for name in ("outside", "inside", "width")))
    made = pump(size, row.given["rpm"] * RPM, row.given["volumetric"])
    machines = machine(made, steady(made.speed), density=OIL, viscosity=made.viscosity)
    flow = at_pressure(machines, made.pressure)
    assert {"litre a turn": size / LITRE, "m³/min": flow * MINUTE} == row.expected


@each(
    esposito(
        "example 5-8",
        given={"in³ a turn": 5, "gpm": 20, "rpm": 1000, "psi": 1000, "overall": 0.816},
        answer={"torque in·lb": 900, "theoretical torque in·lb": 793, "overall": 0.816},
        within=0.004,
        provenance=INPUTS_READ,
        why="the book goes on with 21.6 gpm for 21.65 and cuts off the last digits",
    )
)
def test_torque_follows_pressure_and_displacement(row: Printed) -> None:
    """The liquid's own torque is D Δp; the shaft's is that over the mechanical efficiency."""
    given = row.given
    size, speed = given["in³ a turn"] * INCH**3, given["rpm"] * RPM
    volumetric = given["gpm"] * GPM / (size * given["rpm"] / MINUTE)
    made = pump(
        size,
        speed,
        volumetric,
        pressure=given["psi"] * PSI,
        mechanical_efficiency=given["overall"] / volumetric,
    )
    found = running(made, given["gpm"] * GPM)
    shaft = float(found.torque[0, 0])
    assert {
        "torque in·lb": shaft / INCH_POUND,
        "theoretical torque in·lb": shaft * float(found.mechanical_efficiency[0, 0]) / INCH_POUND,
        "overall": float(found.efficiency[0, 0]),
    } == row.expected


def test_a_two_lobe_pump_moves_four_lobe_volumes_a_turn() -> None:
    """Çengel & Cimbala, Fluid Mechanics, Example 14-3 (from memory; recomputed).

    0.45 cm³ at 900 1/min make 1620 cm³/min, exact. The example knows no slip;
    against no pressure the machine has none.
    """
    free = machine(pump(4 * 0.45e-6, 900 * RPM, 0.9), steady(900 * RPM)).last_flow[0, 0]
    assert free * MINUTE / 1e-6 == pytest.approx(1620, rel=1e-9)


@pytest.mark.parametrize("thickness", [0.05, 0.2, 1.0])
@pytest.mark.parametrize("speed", [600.0, 1450.0, 2900.0])
def test_on_oil_it_keeps_to_wilsons_efficiencies(thickness: float, speed: float) -> None:
    """W. E. Wilson, Positive-Displacement Pumps and Fluid Motors, 1950 (from memory).

    With σ = μ ω/Δp: volumetric 1 - C_s/σ; mechanical 1/(1 + C_d σ + C_f + T_c/(D Δp)).
    Tolerance 0.001: Wilson leaves out what entering and leaving the clearances
    costs, which on this oil or a thicker one, to the rated pressure, is less
    than 0.2 % of the pressure (`laminar_share`) over a slip of at most 17 %.
    """
    assert laminar_share(KINDS["gear"], GEAR.pressure, 0.05, OIL) > 0.998
    machines = machine(motor=steady(speed * RPM), viscosity=thickness)
    flow = np.array([[at_pressure(machines, pressure * BAR)] for pressure in (0.5, 1, 2, 4, 7, 10)])
    found = machines.running(flow)
    sigma = thickness * speed * RPM / found.pressure
    slip = 1 / (GEAR.laminar * GEAR.per_radian)
    constant = GEAR.bearings / (GEAR.per_radian * found.pressure)
    volumetric = 1 - slip / sigma
    mechanical = 1 / (1 + GEAR.drag / GEAR.per_radian * sigma + GEAR.friction + constant)
    assert found.volumetric_efficiency == pytest.approx(volumetric, abs=0.001)
    assert found.mechanical_efficiency == pytest.approx(mechanical, rel=1e-9)
    assert found.efficiency == pytest.approx(volumetric * mechanical, abs=0.001)


def test_overall_efficiency_has_a_best_sommerfeld_number() -> None:
    """Wilson (from memory): too thin slips, too thick drags; without T_c the best is where dη/dσ = 0.

    (1 - C_s/σ)/(1 + C_f + C_d σ) is greatest at σ = C_s + √(C_s² + C_s (1 + C_f)/C_d).
    Tolerance 10 %: the bearings' torque is small, not nought, and the top is flat.
    """
    pressure, speed = 8 * BAR, GEAR.speed
    thickness = np.geomspace(0.005, 1.0, 120)
    found = []
    for thick in thickness:
        machines = machine(motor=steady(speed), viscosity=float(thick))
        found.append(machines.running(np.array([[at_pressure(machines, pressure)]])).efficiency[0, 0])
    slip, drag = 1 / (GEAR.laminar * GEAR.per_radian), GEAR.drag / GEAR.per_radian
    best = slip + math.sqrt(slip**2 + slip * (1 + GEAR.friction) / drag)
    assert thickness[int(np.argmax(found))] * speed / pressure == pytest.approx(best, rel=0.1)


# --- rules of the trade -----------------------------------------------------


LINE = (
    Element("pump", "supply", "discharge", "pumps", 0),
    Element("relief", "discharge", "supply", "reliefs", 0),
    Element("valve", "discharge", "after-valve", "valves", 0),
    Element("line", "after-valve", "delivery", "pipes", 0),
)


def readings(opening: float = 0.8, thickness: float = 0.05, *, blocked: bool = False) -> dict[str, float]:
    """Of pump, relief valve and line: pressure [bar], flows [of the rated flow], current [of the rated]."""
    pumps = machine(viscosity=thickness)
    laws: dict[str, Law] = {
        "pumps": pumps,
        "reliefs": ReliefValves(12 * BAR, 0.003, OIL, blocked=blocked),
        "valves": Valves(flow_coefficient(10.0, opening)),
        "pipes": Pipes(40.0, 0.05, 5e-5, 4.0, thickness / OIL),
    }
    network = Network(LINE, laws, {"supply": np.zeros(1), "delivery": np.array([5.0])})
    found = solve(network, 140.0, GEAR.rated_flow)
    assert found.converged.all()
    does = pumps.running(found.flow["pump"][:, None])
    return {
        "pressure": float(does.pressure[0, 0]) / BAR,
        "flow": float(found.flow["line"][0]) / GEAR.rated_flow,
        "pump": float(found.flow["pump"][0]) / GEAR.rated_flow,
        "relief": float(found.flow["relief"][0]) / GEAR.rated_flow,
        "current": float(does.current[0, 0] / MOTOR.rated_current[0, 0]),
    }


def test_against_a_shut_valve_the_pressure_rises_to_the_relief_valves_and_the_whole_flow_passes_it() -> None:
    """Common practice (API 676 and HI 3 require the relief valve; from memory)."""
    shut = readings(0.0)
    assert shut["relief"] == pytest.approx(shut["pump"], rel=1e-4)
    assert shut["pump"] > 0.95
    assert 12 <= shut["pressure"] <= 12 * 1.1


def test_without_a_working_relief_valve_something_else_must_give() -> None:
    """Common practice: the pressure goes far beyond the rating; the motor stalls, unless a casing bursts."""
    unrelieved = readings(0.0, blocked=True)
    assert unrelieved["pressure"] * BAR > 3 * GEAR.pressure_limit
    assert unrelieved["current"] > 4


def test_a_restricted_discharge_raises_pressure_and_current_and_hardly_touches_the_flow() -> None:
    """Common practice: torque follows the pressure difference."""
    before, after = readings(0.8), readings(0.68)
    assert after["pressure"] > 1.5 * before["pressure"]
    assert 0.9 * before["flow"] < after["flow"] < before["flow"]
    assert after["current"] > before["current"]


def test_a_lighter_load_lowers_pressure_and_current_and_hardly_touches_the_flow() -> None:
    """Common practice: pressure is made by the load, flow by the speed."""
    before, after = readings(0.68), readings(1.0)
    assert after["pressure"] < before["pressure"] / 1.5
    assert before["flow"] < after["flow"] < 1.1 * before["flow"]
    assert after["current"] < before["current"]


def test_a_thicker_liquid_raises_pressure_and_current_and_keeps_the_flow() -> None:
    """Common practice: line friction lifts the pressure, less slip keeps the flow."""
    before, after = readings(), readings(thickness=0.2)
    assert after["pressure"] > before["pressure"]
    assert after["flow"] == pytest.approx(before["flow"], rel=0.03)
    assert after["current"] > before["current"]
