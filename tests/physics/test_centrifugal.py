"""A maker's points as a pump curve, and what is refused as none."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from tests.pumps import RADIAL, RPM, WATER, pumps

from loadfirst.errors import InputError
from loadfirst.physics.centrifugal import PumpCurve, power_from_efficiency, specific_speed
from loadfirst.units import HOUR, G

GOOD: dict[str, Any] = {
    "speed": 2900 * RPM,
    "flow": [0.0, 0.01, 0.02],
    "head": [30.0, 25.0, 15.0],
    "npsh_required": [1.0, 2.0, 3.0],
    "efficiency": [0.0, 0.7, 0.6],
}


def test_the_curve_passes_through_the_makers_points() -> None:
    """Head and NPSH as given; power so that the efficiency is as given."""
    head, power, npsh = RADIAL.at(RADIAL.flow)
    assert head == pytest.approx(RADIAL.head, rel=1e-14)
    assert npsh == pytest.approx(RADIAL.npsh_required, rel=1e-14)
    efficiency = WATER * G * RADIAL.flow * head / power
    assert efficiency == pytest.approx([0.0, 0.34, 0.56, 0.68, 0.72, 0.68, 0.54], rel=1e-12)


def test_power_at_no_flow_goes_on_from_the_next_points() -> None:
    """A straight line through the two nearest points that have a power."""
    power = RADIAL.power
    assert power[0] == pytest.approx(2 * power[1] - power[2], rel=1e-12)


def test_power_at_no_flow_stays_positive_where_the_line_would_cross_zero() -> None:
    """A steep start would end below zero; a quarter of the nearest power is kept."""
    flow, head = np.array([0.0, 1.0, 2.0]), np.array([10.0, 9.0, 8.0])
    power = power_from_efficiency(flow, head, np.array([0.0, 0.9, 0.3]), 1000.0)
    assert power[0] == power[1] / 4


def test_power_goes_on_where_the_last_head_is_nought() -> None:
    """Nought over nought at the end of a curve is filled from the points before."""
    flow, head = np.array([0.0, 1.0, 2.0, 3.0]), np.array([10.0, 9.0, 6.0, 0.0])
    power = power_from_efficiency(flow, head, np.array([0.0, 0.5, 0.6, 0.0]), 1000.0)
    assert power[3] == pytest.approx(2 * power[2] - power[1])


def test_the_best_efficiency_point_is_the_top_of_the_efficiency_curve() -> None:
    """No flow near or far does better, and the numbers belong together."""
    flow = np.linspace(0, RADIAL.last_flow, 20_001)
    head, power, _ = RADIAL.at(flow)
    efficiency = WATER * G * flow * head / power
    best = flow[efficiency.argmax()]
    assert RADIAL.best_efficiency == pytest.approx(efficiency.max(), rel=1e-6)
    assert RADIAL.best_efficiency_flow == pytest.approx(best, abs=0.002 * RADIAL.last_flow)
    assert RADIAL.best_efficiency_head == pytest.approx(float(RADIAL.at([best])[0][0]), rel=0.005)


def test_a_given_power_is_kept() -> None:
    """Power in place of efficiency, for makers who print that."""
    given_power = [2000.0, 4000.0, 5000.0]
    pump = PumpCurve.from_points(**{**GOOD, "efficiency": None, "power": given_power})
    assert pump.at(GOOD["flow"])[1] == pytest.approx(given_power)


@given(pumps())
def test_every_legal_pump_has_finite_numbers_and_falling_head(pump: PumpCurve) -> None:
    """Nothing that a file may say makes a curve that cannot be used."""
    head, power, npsh = pump.at(np.linspace(0, pump.last_flow, 200))
    assert np.isfinite([head, power, npsh]).all()
    assert (np.diff(head) <= 1e-12 * pump.shut_off_head).all()
    assert (power > 0).all()
    assert pump.best_efficiency > 0
    assert np.isfinite(pump.specific_speed)


@pytest.mark.parametrize(
    ("change", "where"),
    [
        ({"flow": [0.0, 0.02, 0.01]}, "flow"),
        ({"flow": [0.001, 0.01, 0.02]}, "flow"),
        ({"flow": [0.0, 0.01]}, "flow"),
        ({"head": [30.0, 25.0, 31.0]}, "head"),
        ({"head": [30.0, 25.0, -1.0]}, "head"),
        ({"head": [30.0, float("nan"), 15.0]}, "head"),
        ({"head": [30.0, 25.0]}, "head"),
        ({"npsh_required": [1.0, -2.0, 3.0]}, "npsh_required"),
        ({"efficiency": [0.0, 1.2, 0.6]}, "efficiency"),
        ({"efficiency": [0.0, 0.7, 0.0]}, "efficiency"),
        ({"efficiency": [0.0, 0.7]}, "efficiency"),
        ({"efficiency": None}, "power"),
        ({"power": [9e3, 9e3, 9e3]}, "power"),
        ({"efficiency": None, "power": [1e3, 1e3, 1e3]}, "power"),
        ({"efficiency": None, "power": [0.0, 9e3, 9e3]}, "power"),
    ],
)
def test_points_that_are_no_pumps_are_refused_by_name(change: dict[str, Any], where: str) -> None:
    """The error names the list that is wrong."""
    with pytest.raises(InputError) as refused:
        PumpCurve.from_points(**{**GOOD, **change})
    assert refused.value.where == where
    assert refused.value.text.startswith(where)


def test_specific_speed_of_a_pump_is_that_of_its_best_point() -> None:
    """By hand: 2900 √(40/3600) / 33.4^0.75 = 22.0, at the point that is nearly the best."""
    by_hand = 2900 * np.sqrt(40 / HOUR) / 33.4**0.75
    assert RADIAL.specific_speed == pytest.approx(by_hand, rel=0.02)
    assert specific_speed(2900 * RPM, 40 / HOUR, 33.4) == pytest.approx(by_hand, rel=1e-12)
