"""Control valves against the standard, the trade's definitions and a reference library."""

from __future__ import annotations

from functools import partial

import pytest
from tests.published.printed import Printed, each

from loadfirst.physics.law import column
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.physics.valve import WATER_15C, Valves, flow_coefficient, inherent_flow
from loadfirst.units import BAR, HOUR, G

GALLON, PSI = 231 * 0.0254**3, 0.45359237 * 9.80665 / 0.0254**2  # [m³] US, [Pa]

trim = partial(
    Printed,
    source="IEC 60534-2-4, inherent flow characteristics",
    provenance="from memory; exact arithmetic",
    within=2e-4,
)


def head(kv: float, flow: float) -> float:
    """Head that a valve costs at one flow. [m]"""
    return float(Valves(kv).head_drop(column(flow))[0][0, 0])


def test_iec_60534_2_1_example_1_passes_its_flow_at_its_kv() -> None:
    """IEC 60534-2-1, worked example 1 (globe valve, not choked): Kv 165 for 360 m³/h.

    965.4 kg/m³, 680 to 220 kPa. Inputs quoted in the documentation of fluids
    1.3.1, which names the standard; the printed 165 likewise. Tolerance: half a
    unit of the last digit, 0.5/165 = 0.3 %; head goes as 1/Kv².
    """
    offered = (680e3 - 220e3) / (965.4 * G)
    assert head(165.0, 360 / HOUR) == pytest.approx(offered, rel=2 * 0.003)


def test_kv_25_asks_for_4_bar_at_50_cubic_metres_an_hour() -> None:
    """By the definition of Kv: (50/25)² bar of water at 15 °C; exact."""
    assert head(25.0, 50 / HOUR) * WATER_15C * G / BAR == pytest.approx(4.0, rel=1e-12)


@pytest.mark.parametrize(("kv", "cv", "within"), [(0.865, 1.0, 1e-4), (1.0, 1.156, 2e-4)])
def test_kv_and_the_american_coefficient_describe_the_same_valve(kv: float, cv: float, within: float) -> None:
    """IEC 60534-1, ISA-75.01: Cv 1 is Kv 0.865, Kv 1 is Cv 1.156; from memory, agrees with fluids 1.3.1.

    Cv is US gallons a minute of water at 60 °F for 1 psi. Head goes as the
    square, so twice the tolerance of the printed digits.
    """
    assert head(kv, cv * GALLON / 60) * WATER_15C * G / PSI == pytest.approx(1.0, rel=2 * within)


@each(
    trim("R 50, half open", {"R": 50, "x": 0.5}, {"share": 0.14142}),
    trim("R 50, on its seat", {"R": 50, "x": 0.0}, {"share": 0.02}),
    trim("R 30, half open", {"R": 30, "x": 0.5}, {"share": 0.18257}),
    trim("R 50, four fifths", {"R": 50, "x": 0.8}, {"share": 0.45731}),
)
def test_an_equal_percentage_trim_passes_the_standards_share(row: Printed) -> None:
    """R^(x-1) of the full flow."""
    found = inherent_flow(row.given["x"], "equal-percentage", row.given["R"])
    assert {"share": float(found)} == row.expected


def test_a_linear_trim_passes_the_standards_share() -> None:
    """IEC 60534-2-4: rangeability 30 at a quarter of the stroke, 0.275; from memory, exact arithmetic."""
    assert float(inherent_flow(0.25, "linear", 30)) == pytest.approx(0.275, rel=1e-12)


def test_each_tenth_of_an_equal_percentage_stroke_adds_the_same_share() -> None:
    """Rangeability 50: each step of 0.1 adds 47.88 % of what flows; from memory, exact."""
    kv = flow_coefficient(63.0, [0.1, 0.2, 0.3, 0.9, 1.0])
    steps = [kv[1] / kv[0] - 1, kv[2] / kv[1] - 1, kv[4] / kv[3] - 1]
    assert steps == pytest.approx([0.4788] * 3, rel=2e-4)


def test_a_globe_valve_is_as_long_as_the_pipe_of_crane_7_2() -> None:
    """Crane TP-410M, Example 7-2: Kv 500 in 154 mm is K 3.6, L/D 240, 37.0 m with fT 0.015.

    Quoted in the notebook 7.2 of CalebBell/fluids. Tolerance 0.2 %: printed digits.
    """
    bore, flow = 0.154, 0.1
    k = head(500.0, flow) / float(velocity_head(flow, bore))
    assert [k, k / 0.015, k / 0.015 * bore] == pytest.approx([3.6, 240, 37.0], rel=0.002)


def test_an_angle_valve_has_the_flow_coefficient_of_crane_7_3() -> None:
    """Crane TP-410M, Example 7-3: K = 150 fT = 2.475 on 97.2 mm is Kv 240.2.

    Quoted in the notebook 7.3 of CalebBell/fluids. Tolerance 0.2 % of Kv, so
    0.4 % of the head.
    """
    fitting, _ = Pipes(0, 0.0972, 0, 150 * 0.0165, 1e-6).head_drop(column(0.05))
    assert head(240.2, 0.05) == pytest.approx(float(fitting[0, 0]), rel=2 * 0.002)


@pytest.mark.native
def test_valves_cost_what_the_reference_library_says() -> None:
    """fluids 1.3.1: the coefficient it sizes for an unchoked flow gives back the pressure drop.

    It counts 999.1033 kg/m³ for water at 15 °C, 3e-6 more than here.
    """
    from fluids.control_valve import size_control_valve_l

    for flow, offered in ((0.1, 460e3), (0.05, 90e3), (0.002, 10e3)):
        kv = size_control_valve_l(
            rho=965.4, Psat=70.1e3, Pc=22120e3, mu=3.1472e-4, P1=680e3, P2=680e3 - offered, Q=flow
        )
        assert head(kv, flow) * 965.4 * G == pytest.approx(offered, rel=1e-5)
