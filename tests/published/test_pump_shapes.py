"""The invented axial and mixed-flow pumps against the shapes that go with their specific speed."""

from __future__ import annotations

import numpy as np
import pytest
from tests.pumps import suction_specific_speed

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor
from loadfirst.plant.pumps import find_pump
from loadfirst.units import HOUR, RPM

RATINGS = (
    0.37,
    0.55,
    0.75,
    1.1,
    1.5,
    2.2,
    3,
    4,
    5.5,
    7.5,
    11,
    15,
    18.5,
    22,
)  # [kW] IEC 60072-1 (from memory)


def packaged(name: str) -> PumpCurve:
    """A pump of the package, as its file gives it."""
    curve = find_pump(name)
    assert curve.power_kw is not None
    return PumpCurve.from_points(
        curve.speed_rpm * RPM,
        np.array(curve.flow_m3h) / HOUR,
        curve.head_m,
        curve.npshr_m,
        power=1e3 * np.array(curve.power_kw),
        density=curve.density_kgm3,
    )


def ratios(pump: PumpCurve) -> tuple[float, float]:
    """Head and power at no flow over those at best efficiency."""
    best_power = float(pump.at([pump.best_efficiency_flow])[1][0])
    return pump.shut_off_head / pump.best_efficiency_head, float(pump.power[0]) / best_power


def test_a_mixed_flow_pump_has_a_nearly_flat_power_curve() -> None:
    """Mixed flow, nq 80 to 160 (from memory, handbook ranges; boundaries are soft).

    Head at no flow 1.4 to 2.0 times that at best efficiency, power 0.9 to 1.3
    times (from memory, charts of curves over specific speed). Nearly flat up to
    the best point: within 5 % (our bound).
    """
    pump = packaged("mixed")
    assert 80 <= pump.specific_speed <= 160
    head, power = ratios(pump)
    assert 1.4 <= head <= 2.0 and 0.9 <= power <= 1.3
    inside = pump.power[pump.flow <= pump.best_efficiency_flow]
    assert np.ptp(inside) < 0.05 * inside.mean()


def test_an_axial_pump_takes_most_power_against_a_shut_valve() -> None:
    """Axial flow, nq above 160 (from memory, where mixed flow ends).

    Head at no flow 2 to 3.5 times that at best efficiency, power 1.5 to 2.5
    times (from memory, charts of curves over specific speed); the power falls
    all the way.
    """
    pump = packaged("axial")
    assert 160 < pump.specific_speed < 400
    head, power = ratios(pump)
    assert 2.0 <= head <= 3.5 and 1.5 <= power <= 2.5
    assert (np.diff(pump.power) < 0).all()


@pytest.mark.parametrize(("name", "low", "high"), [("mixed", 0.76, 0.84), ("axial", 0.70, 0.82)])
def test_efficiency_is_usual_for_the_size(name: str, low: float, high: float) -> None:
    """Common practice, small pumps of their kind; Regulation (EU) 547/2012 stops at nq 80."""
    assert low <= packaged(name).best_efficiency <= high


@pytest.mark.parametrize("name", ["mixed", "axial"])
def test_required_npsh_is_least_near_the_best_point(name: str) -> None:
    """Suction specific speed 135 to 230 metric (from memory, HI Engineering Data Book eq. 1.D.5).

    Unlike a radial pump's it rises toward no flow as well (common practice:
    recirculation at the inlet of wide impellers).
    """
    pump = packaged(name)
    assert 135 <= suction_specific_speed(pump) <= 230
    least = pump.flow[int(pump.npsh_required.argmin())] / pump.best_efficiency_flow
    assert 0.5 < least < 1.1
    assert pump.npsh_required[0] > pump.npsh_required.min() < pump.npsh_required[-1]


@pytest.mark.parametrize(("name", "overloaded"), [("mixed", False), ("axial", True)])
def test_the_motor_suits_the_best_point(name: str, overloaded: bool) -> None:
    """A standard rating, 15 to 45 % to spare (common practice); shut-off overloads the axial pump's only."""
    pump, motor = packaged(name), find_pump(name).motor_kw
    assert motor in RATINGS
    needed = float(pump.at([pump.best_efficiency_flow])[1][0]) / 1e3
    assert 1.15 <= motor / needed <= 1.45
    machines = Machines.build([[pump]], Motor.rated(1e3 * motor), 998.2)
    assert bool(machines.running(np.zeros((1, 1))).load[0, 0] > 1) == overloaded


@pytest.mark.parametrize("name", ["mixed", "axial"])
def test_a_power_that_falls_does_not_upset_the_machines_law(name: str) -> None:
    """On its motor, over 5 to 60 Hz, no point has to be held back, and the head falls."""
    pump, motor = packaged(name), 1e3 * find_pump(name).motor_kw
    for frequency in (5.0, 20.0, 50.0, 60.0):
        machines = Machines.build([[pump]], Motor.rated(motor, frequency=frequency), 998.2)
        assert not machines.limited.any()
        flow = np.linspace(-0.5, 2, 401).reshape(-1, 1) * pump.last_flow
        assert (np.diff(machines.head_drop(flow)[0], axis=0) > 0).all()


def test_the_ammeter_tells_the_opposite_story() -> None:
    """Throttling lets a radial pump's current fall and an axial pump's rise; a mixed-flow pump's stays."""
    changes = {}
    for name in ("mixed", "axial"):
        pump = packaged(name)
        machines = Machines.build([[pump]], Motor.rated(1e3 * find_pump(name).motor_kw), 998.2)
        flow = np.array([[0.6], [1.0]]) * pump.best_efficiency_flow
        throttled, best = machines.running(flow).current.ravel()
        changes[name] = throttled / best - 1
    assert changes["axial"] > 0.2 and abs(changes["mixed"]) < 0.03
