"""A pump on a system: duty points of handbooks and textbooks, through the network solver."""

from __future__ import annotations

from math import pi

import numpy as np
import pytest
from tests.laws import Parabola, parabola, square

from loadfirst.physics.law import column
from loadfirst.physics.network import Element, Network, Solution, solve
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.plant.stack import total_head
from loadfirst.units import HOUR, G

FT = 0.3048  # [m]
GPM = 231 * 0.0254**3 / 60  # [m³/s] US gallon per minute
LPM = 1e-3 / 60  # [m³/s]


def duty(pump: Parabola, static: float, k: float, pumps: str = "one") -> Solution:
    """One pump, or two equal ones "side by side" or "in line", on a load static + k q². SI."""
    second = {
        "one": (),
        "side by side": (Element("pump-2", "supply", "header", "pumps", 1),),
        "in line": (Element("pump-2", "between", "header", "pumps", 1),),
    }[pumps]
    first = Element("pump-1", "supply", "between" if pumps == "in line" else "header", "pumps", 0)
    elements = (first, *second, Element("load", "header", "delivery", "load", 0))
    fixed = {"supply": np.zeros(1), "delivery": np.array([static])}
    return solve(Network(elements, {"pumps": pump, "load": square(k)}, fixed), static + 100, 0.01)


def hi_pump() -> Parabola:
    """Head 380 - 0.06 Q - 0.0018 Q² in ft over gpm."""
    return parabola(380 * FT, 0.06 * FT / GPM, 0.0018 * FT / GPM**2)


@pytest.mark.parametrize(
    ("static", "flow", "head", "tolerance"), [(265, 200.0, 296.0, 0.003), (275, 190.6, None, 0.001)]
)
def test_the_duty_point_is_that_of_the_hi_data_book(
    static: float, flow: float, head: float | None, tolerance: float
) -> None:
    """HI Engineering Data Book 1.C, worked example and the same with 10 ft more static head.

    200 gpm at 296 ft; 190.6 gpm. Read; recomputed. Tolerances 0.3 % and 0.1 %,
    the printed digits.
    """
    found = duty(hi_pump(), static * FT, 7.75e-4 * FT / GPM**2)
    assert found.flow["load"][0] / GPM == pytest.approx(flow, rel=tolerance)
    if head is not None:
        assert found.head["header"][0] / FT == pytest.approx(head, rel=tolerance)


def test_the_system_coefficients_are_those_of_the_hi_data_book() -> None:
    """HI Engineering Data Book 1.A, Calc 1.A.2 and 1.A.3(c): 1.22 v² ft, 7.75e-4 Q² ft (Q in gpm).

    f = 0.02, 1255 ft of 0.3355 ft bore, ΣK = 3.79. Read; recomputed. The book
    rounds v²/2g; tolerance 0.6 %, the printed digits.
    """
    size = (0.02 * 1255 / 0.3355 + 3.79) * velocity_head(GPM, 0.3355 * FT) / FT
    speed = GPM / (pi / 4 * (0.3355 * FT) ** 2) / FT
    assert size / speed**2 == pytest.approx(1.22, rel=0.006)
    assert size == pytest.approx(7.75e-4, rel=0.006)


def test_the_system_coefficients_in_metric_units_are_those_of_the_hi_data_book() -> None:
    """HI Engineering Data Book 1.A, metric twin: 4.01 v² m, 4.59e-3 Q² m (Q in m³/h).

    f = 0.02, 382.52 m of 102.26 mm bore, ΣK = 3.79. Read; recomputed.
    Tolerance 0.8 %, as the metric figures are themselves converted.
    """
    size = (0.02 * 382.52 / 0.10226 + 3.79) * velocity_head(1 / HOUR, 0.10226)
    speed = 1 / HOUR / (pi / 4 * 0.10226**2)
    assert size / speed**2 == pytest.approx(4.01, rel=0.008)
    assert size == pytest.approx(4.59e-3, rel=0.008)


@pytest.mark.parametrize(
    ("pumps", "flow", "gain"), [("one", 15.2, 0.0), ("side by side", 16.3, 0.07), ("in line", 21.5, 0.414)]
)
def test_one_and_two_pumps_give_the_flows_of_white_11_6_to_11_8(pumps: str, flow: float, gain: float) -> None:
    """White, Fluid Mechanics, Examples 11.6, 11.7, 11.8: 15.2, 16.3 and 21.5 thousand gpm.

    32-in pump, 490 - 0.26 Q² ft; 120 ft lift, 1500 ft of 16-in pipe, f = 0.030.
    From memory, recomputed. Tolerance 0.6 % on the flow; the gain over one
    pump to half a unit of its last digit and what the flows' own digits leave.
    """
    count = 1 if pumps == "one" else 2
    pump = parabola(490 * FT, 0.0, 0.26e-6 * FT / GPM**2, count)
    k = 0.03 * 1500 / (16 / 12) * float(velocity_head(1.0, 16 / 12 * FT))
    one = duty(parabola(490 * FT, 0.0, 0.26e-6 * FT / GPM**2), 120 * FT, k).flow["load"][0]
    found = duty(pump, 120 * FT, k, pumps).flow["load"][0]
    assert found / GPM / 1000 == pytest.approx(flow, rel=0.006)
    assert found / one - 1 == pytest.approx(gain, abs=0.006)


def test_one_pump_meets_the_head_of_white_11_6() -> None:
    """White, Fluid Mechanics, Example 11.6(a): 430 ft. From memory, recomputed; tolerance 0.5 %."""
    k = 0.03 * 1500 / (16 / 12) * float(velocity_head(1.0, 16 / 12 * FT))
    found = duty(parabola(490 * FT, 0.0, 0.26e-6 * FT / GPM**2), 120 * FT, k)
    assert found.head["header"][0] / FT == pytest.approx(430, rel=0.005)


def test_no_speed_brings_whites_pump_to_its_best_efficiency_on_this_system() -> None:
    """White, Fluid Mechanics, Example 11.6(b): no real speed ratio exists (best point 20 000 gpm, 395 ft).

    From memory, recomputed. At every speed the duty stays left of the best
    point, whose flow moves with the speed.
    """
    k = 0.03 * 1500 / (16 / 12) * float(velocity_head(1.0, 16 / 12 * FT))
    speeds = np.linspace(0.6, 20, 200)
    pump = Parabola(column(490 * FT * speeds**2).T, column(0.0), column(0.26e-6 * FT / GPM**2))
    elements = (
        Element("pump-1", "supply", "header", "pumps", 0),
        Element("load", "header", "delivery", "load", 0),
    )
    network = Network(
        elements,
        {"pumps": pump, "load": square(k)},
        {"supply": np.zeros(200), "delivery": np.array([120 * FT])},
    )
    found = solve(network, 490 * FT * speeds**2, 20e3 * GPM * speeds)
    assert found.converged.all()
    assert (found.flow["load"] < 20e3 * GPM * speeds).all()


def test_a_small_pump_meets_its_load_as_in_cengel_and_cimbala() -> None:
    """Çengel & Cimbala, Fluid Mechanics, chapter 14, end-of-chapter problem: 7.43 L/min at 4.96 m.

    7.46 - 0.0453 Q² against 3.52 + 0.0261 Q². Inputs read in a public copy;
    answer recomputed exactly. Tolerance 0.2 %, the printed digits.
    """
    found = duty(parabola(7.46, 0.0, 0.0453 / LPM**2), 3.52, 0.0261 / LPM**2)
    assert found.flow["load"][0] / LPM == pytest.approx(7.43, rel=0.002)
    assert found.head["header"][0] == pytest.approx(4.96, rel=0.002)


def test_laws_put_together_by_hand_fall_more_than_the_speed_with_static_head() -> None:
    """60 x² - 0.004 Q² on 20 + 0.002 Q²: 81.65 m³/h at full speed, 69.04 at x = 0.9.

    Computed from the affinity rules (no outside source). Tolerance 1e-4.
    """
    full = duty(parabola(60.0, 0.0, 0.004 * HOUR**2), 20.0, 0.002 * HOUR**2).flow["load"][0] * HOUR
    slow = duty(parabola(60.0 * 0.81, 0.0, 0.004 * HOUR**2), 20.0, 0.002 * HOUR**2).flow["load"][0] * HOUR
    assert (full, slow) == pytest.approx((81.65, 69.04), rel=1e-4)
    assert slow / full == pytest.approx(0.8456, rel=1e-4)


def test_the_suction_lift_is_that_of_munson_12_3() -> None:
    """Munson, Young & Okiishi, Example 12.3: losses 10.2 ft, greatest height 7.65 ft.

    Water at 80 °F, 0.5 ft³/s through a 4-in suction line with a filter of
    K = 20; NPSH required 15 ft; 14.7 psia, vapour 0.5069 psia, 62.22 lbf/ft³.
    From memory, recomputed. Tolerance 0.6 %, the printed digits.
    """
    line = Pipes(length=0.0, bore=4 / 12 * FT, roughness=0.0, k=20.0, viscosity=0.93e-6)
    flow = column(0.5 * FT**3)
    network = Network(
        (Element("suction-line", "supply", "suction", "pipes", 0),), {"pipes": line}, {"supply": np.zeros(1)},
        {"suction": flow[0]},
    )  # fmt: skip
    found = solve(network, 10.0, 0.01)
    loss = -found.head["suction"][0] / FT
    assert loss == pytest.approx(10.2, rel=0.006)
    air = (14.7 - 0.5069) * 144 / 62.22  # [ft] barometer less vapour pressure
    assert air - loss - 15 == pytest.approx(7.65, rel=0.006)


def test_the_total_head_is_that_of_the_standards_definition() -> None:
    """ISO 9906 / HI: H = Δp/(ρg) + Δz + Δ(v²)/2g = 44.76 m for the readings given here.

    450 and 20 kPa, 0.6 m, 80 and 100 mm, 50 m³/h, 998.2 kg/m³. Computed;
    tolerance 0.1 %.
    """
    speeds = float(velocity_head(50 / HOUR, 0.08) - velocity_head(50 / HOUR, 0.1))
    found = total_head(450e3 - 20e3, 0.6, speeds, 998.2 * G)
    assert found.answer == pytest.approx(44.76, rel=0.001)
    assert found.answer == found.pressure_head + found.height + found.velocity_head
