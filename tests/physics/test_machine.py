"""A pump on its motor: one falling law, consistent with itself at any flow."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import RADIAL, STEADY, WATER, across, at_speed, far_and_wide, machine, motors, pumps

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.law import Array
from loadfirst.physics.machine import Machines, Running
from loadfirst.physics.motor import Motor
from loadfirst.units import G

WEAK = Motor.rated(1500.0)
densities = st.sampled_from([300.0, 998.2, 3000.0])


def every(running: Running) -> Array:
    """All that a machine does, as one array."""
    return np.stack([np.asarray(part, dtype=float) for part in running])


@given(pumps(), motors(), densities)
def test_the_head_never_rises_with_the_flow(pump: PumpCurve, motor: Motor, density: float) -> None:
    """Whatever the curve, the motor, the frequency and the liquid: the solver relies on it."""
    machines = machine(pump, motor, density)
    flow = far_and_wide(machines)
    drop, slope = machines.head_drop(flow)
    scale = machines.shut_off_head[0, 0] * (1 + np.abs(flow / machines.last_flow)) ** 2
    assert (np.diff(drop, axis=0) >= -1e-12 * scale[1:]).all()
    assert (slope >= 0).all()
    assert np.isfinite(drop).all() and np.isfinite(slope).all()


@given(pumps(), motors(), densities)
def test_everything_a_machine_does_is_finite(pump: PumpCurve, motor: Motor, density: float) -> None:
    """At any flow, forced backwards or far out; the shaft always turns, the motor always takes power."""
    machines = machine(pump, motor, density)
    running = machines.running(far_and_wide(machines))
    assert np.isfinite(every(running)).all()
    assert (running.speed > 0).all() and (running.shaft_power > 0).all()
    assert (running.motor_input > running.shaft_power).all()
    assert (running.current > 0).all() and (running.npsh_required >= 0).all()


@given(pumps(), motors())
def test_the_slope_is_the_derivative_of_the_drop(pump: PumpCurve, motor: Motor) -> None:
    """Checked by central differences inside each piece, to the error of those."""
    machines = machine(pump, motor)
    knots = machines.curves.knots[0, 0]
    middle, width = across((knots[:-1] + knots[1:]) / 2), across(np.diff(knots) * 1e-4)
    ahead, behind = machines.head_drop(middle + width)[0], machines.head_drop(middle - width)[0]
    scale = np.abs(ahead - behind).max() + 1e-6 * machines.shut_off_head[0, 0]
    assert 2 * width * machines.head_drop(middle)[1] == pytest.approx(ahead - behind, abs=1e-4 * scale)


def test_value_and_slope_have_no_step_at_the_ends_of_the_points() -> None:
    """The parabolas outside start with the value and the slope that they meet."""
    machines = machine()
    for end in (0.0, float(machines.last_flow[0, 0])):
        inside, outside = machines.head_drop(across([end - 1e-12, end + 1e-12]))[0].ravel()
        assert inside == pytest.approx(outside, rel=1e-9)
        before, after = machines.head_drop(across([end - 1e-12, end + 1e-12]))[1].ravel()
        assert before == pytest.approx(after, rel=1e-6, abs=1e-6)


def test_outside_the_points_the_curve_gets_steeper_and_steeper() -> None:
    """A pump forced backwards or far out becomes a resistance."""
    machines = machine()
    last = float(machines.last_flow[0, 0])
    beyond = machines.head_drop(across(np.linspace(last, 3 * last, 20)))[1].ravel()
    below = machines.head_drop(across(np.linspace(-2 * last, 0, 20)))[1].ravel()
    assert (np.diff(beyond) > 0).all() and (np.diff(below) < 0).all()


def test_speed_torque_and_power_stand_on_the_motors_line() -> None:
    """The slip is inside: at every flow the speed is what the motor holds at that torque."""
    machines = machine()
    running = machines.running(across(np.linspace(0, 0.02, 50)))
    assert running.speed == pytest.approx(machines.motor.speed(running.torque), rel=1e-14)
    assert running.shaft_power == pytest.approx(running.torque * running.speed)
    assert running.load == pytest.approx(running.shaft_power / 7500.0)
    assert (running.speed < machines.motor.synchronous_speed).all()


@pytest.mark.native
@pytest.mark.parametrize(
    "motor",
    [
        Motor.rated(7500.0),
        Motor.rated(5500.0, frequency=60),
        Motor.rated(7500.0, frequency=12),
        Motor.rated(1100.0, poles=4),
    ],
    ids=["usual", "overloaded at 60 Hz", "slow", "four poles"],
)
def test_between_the_points_it_keeps_to_the_implicit_equation(motor: Motor) -> None:
    """Solved apart: x = a - b r x² T0(q/x) by scipy's brentq on scipy's monotone curve of the points.

    At the points the two are equal; between them within 1e-5 of the shut-off
    head, as `physics.machine_curve` promises (our own number).
    """
    from scipy.interpolate import PchipInterpolator
    from scipy.optimize import brentq

    head = PchipInterpolator(RADIAL.flow, RADIAL.head)
    torque = PchipInterpolator(RADIAL.flow, RADIAL.power / RADIAL.speed)
    machines = machine(RADIAL, motor)
    a, b = (float(number[0, 0]) / RADIAL.speed for number in (motor.synchronous_speed, motor.droop))
    for flow in np.linspace(0, float(machines.last_flow[0, 0]), 60):
        least = flow / RADIAL.last_flow
        x = brentq(
            lambda x, q=flow: x - a + b * x**2 * torque(q / x), max(0.98 * least, 0.5 * a), a, xtol=1e-14
        )
        running = machines.running(across([flow]))
        wanted = x**2 * head(flow / x)
        assert running.head[0, 0] == pytest.approx(wanted, abs=1e-5 * machines.shut_off_head[0, 0])
        assert running.speed[0, 0] == pytest.approx(x * RADIAL.speed, rel=1e-5)


def test_at_the_makers_points_the_affinity_laws_hold_exactly_with_slip() -> None:
    """Flow, head, torque and NPSH of each moved point, at the speed that stands there, on brine."""
    machines = machine(density=1200.0)
    knots = machines.curves.knots[0, 0]
    running = machines.running(across(knots))
    x = running.speed / RADIAL.speed
    assert knots == pytest.approx(x[:, 0] * RADIAL.flow, rel=1e-12)
    assert running.head == pytest.approx(x**2 * across(RADIAL.head), rel=1e-12)
    assert running.npsh_required == pytest.approx(x**2 * across(RADIAL.npsh_required), rel=1e-12)
    assert running.shaft_power == pytest.approx(1200 / WATER * x**3 * across(RADIAL.power), rel=1e-12)


@given(pumps(), st.floats(0.1, 1.5), st.floats(0, 1))
def test_without_slip_the_affinity_laws_hold_at_every_flow(
    pump: PumpCurve, ratio: float, part: float
) -> None:
    """Flow with the speed, head and NPSH with its square, power with its cube."""
    flow = across([part * pump.last_flow])
    one, other = at_speed(pump, pump.speed), at_speed(pump, ratio * pump.speed)
    here, there = one.running(flow), other.running(ratio * flow)
    assert there.head == pytest.approx(ratio**2 * here.head, rel=1e-9, abs=1e-9 * pump.shut_off_head)
    assert there.npsh_required == pytest.approx(ratio**2 * here.npsh_required, rel=1e-9, abs=1e-9)
    assert there.shaft_power == pytest.approx(ratio**3 * here.shaft_power, rel=1e-9)
    assert there.efficiency == pytest.approx(here.efficiency, rel=1e-9, abs=1e-9)


def test_at_the_tests_own_speed_the_curve_is_the_makers() -> None:
    """No slip, same speed, same liquid: nothing is changed, between the points either."""
    flow = np.linspace(0, RADIAL.last_flow, 97)
    running = at_speed(RADIAL, RADIAL.speed).running(across(flow))
    head, power, npsh = RADIAL.at(flow)
    assert running.head[:, 0] == pytest.approx(head, rel=1e-12)
    assert running.shaft_power[:, 0] == pytest.approx(power, rel=1e-12)
    assert running.npsh_required[:, 0] == pytest.approx(npsh, rel=1e-12)


def test_a_heavier_liquid_takes_more_power_but_gets_the_same_head() -> None:
    """Without slip the head is the same to the last digit and the power goes with the density."""
    flow = across(np.linspace(0, 0.016, 9))
    light, heavy = machine(motor=STEADY, density=1000.0), machine(motor=STEADY, density=1500.0)
    assert heavy.running(flow).head == pytest.approx(light.running(flow).head, rel=1e-14)
    assert heavy.running(flow).shaft_power == pytest.approx(1.5 * light.running(flow).shaft_power, rel=1e-13)


def test_a_weaker_motor_turns_slower_and_gives_less_head() -> None:
    """Overload costs speed, and speed costs head."""
    flow = across([0.01])
    strong, weak = machine().running(flow), machine(motor=WEAK).running(flow)
    assert weak.speed < strong.speed and weak.head < strong.head
    assert weak.load > 1 > strong.load


def test_the_last_point_moves_with_the_speed_and_what_lies_beyond_is_flagged() -> None:
    """At half the frequency the curve ends at about half the flow."""
    full, half = machine(), machine(motor=Motor.rated(7500.0, frequency=25))
    assert half.last_flow / full.last_flow == pytest.approx(0.5, abs=0.02)
    last = full.last_flow
    assert not full.running(last * (1 - 1e-12)).beyond and full.running(last * 1.01).beyond
    assert half.running(0.6 * last).beyond and not full.running(0.6 * last).beyond
    assert half.best_efficiency_flow / full.best_efficiency_flow == pytest.approx(0.5, abs=0.02)


def test_no_flow_and_reversed_flow_have_no_efficiency_and_a_steady_power() -> None:
    """Nothing useful leaves the pump; the power is that of the shut valve."""
    running = machine().running(across([-0.02, -1e-6, 0.0]))
    assert (running.efficiency == 0).all()
    assert running.shaft_power == pytest.approx(running.shaft_power[2, 0])


def test_an_ordinary_pump_on_an_ordinary_motor_is_not_held_back() -> None:
    """The guard against absurd curves stays idle, overload and all frequencies included."""
    for motor in (Motor.rated(7500.0, frequency=np.linspace(5, 75, 8)[:, None]), WEAK):
        assert not machine(motor=motor).limited.any()


def test_a_drooping_combination_is_held_back_and_says_so() -> None:
    """A flat head with a power that falls to a third: with slip alone the head would rise with the flow."""
    pump = PumpCurve.from_points(
        RADIAL.speed, [0, 0.01, 0.02], [30.0, 29.99, 29.98], [1, 1, 1], power=[21e3, 14e3, 7e3]
    )
    free, held = machine(pump, STEADY), machine(pump, Motor.rated(5000.0))
    assert held.limited.all() and not free.limited.any()
    drop = held.head_drop(across(np.linspace(-0.01, 0.03, 200)))[0]
    assert (np.diff(drop, axis=0) > 0).all()
    running = held.running(across([0.01]))
    assert running.speed == pytest.approx(held.motor.speed(running.torque))


def test_a_machine_held_back_leaves_the_others_of_its_batch_as_they_are() -> None:
    """Whether a machine is held is its own affair, also beside one that is, and with points filled up."""
    absurd = PumpCurve.from_points(
        RADIAL.speed, [0, 0.01, 0.02], [30.0, 29.99, 29.98], [1, 1, 1], power=[21e3, 14e3, 7e3]
    )
    flat = PumpCurve.from_points(
        RADIAL.speed, [0, 0.01, 0.02], [30.0, 29.9, 29.8], [1, 1, 1], power=[9e3, 9e3, 9e3]
    )
    motor = Motor.rated(5000.0)
    together = Machines.build([[absurd], [RADIAL], [flat]], motor, WATER)
    assert together.limited.ravel().tolist() == [True, False, False]
    for row, pump in enumerate((absurd, RADIAL, flat)):
        alone, flow = machine(pump, motor), np.array([[0.0123]])
        assert (every(together.rows(np.array([row])).running(flow)) == every(alone.running(flow))).all()


def test_a_batch_of_machines_equals_one_by_one() -> None:
    """Different pumps, motors, frequencies and liquids in one batch, curves of unequal length."""
    short = PumpCurve.from_points(
        RADIAL.speed, [0, 0.02, 0.03], [60, 50, 30], [1, 2, 4], power=[9e3, 14e3, 17e3]
    )
    rows = [[RADIAL, short], [short, RADIAL], [RADIAL, RADIAL]]
    power = np.array([[7500.0, 15e3], [15e3, 5500.0], [1500.0, 90e3]])
    frequency, density = np.array([[50.0], [35.0], [60.0]]), np.array([[998.2], [870.0], [1300.0]])
    many = Machines.build(rows, Motor.rated(power, frequency=frequency), density)
    flow = np.array([[0.01, -0.01], [0.05, 0.012], [0.0, 0.016]])
    together = every(many.running(flow))
    for b in range(3):
        for m in range(2):
            motor = Motor.rated(power[b, m], frequency=frequency[b, 0])
            alone = machine(rows[b][m], motor, density[b, 0])
            assert together[:, b, m] == pytest.approx(
                every(alone.running(flow[b : b + 1, m : m + 1]))[:, 0, 0], rel=1e-12
            )
            wanted = alone.shut_off_head[0, 0], alone.last_flow[0, 0], alone.best_efficiency_flow[0, 0]
            assert (
                many.shut_off_head[b, m],
                many.last_flow[b, m],
                many.best_efficiency_flow[b, m],
            ) == pytest.approx(wanted)


def test_rows_of_a_batch_behave_as_in_the_batch() -> None:
    """Picked plants keep their own curves."""
    many = machine(motor=Motor.rated(7500.0, frequency=np.array([[20.0], [40.0], [60.0]])))
    flow = np.full((3, 1), 0.006)
    index = np.array([2, 0])
    picked = many.rows(index)
    assert picked.count == 1
    assert every(picked.running(flow[index])) == pytest.approx(every(many.running(flow))[:, index], rel=1e-15)
    assert picked.last_flow == pytest.approx(many.last_flow[index])


def test_one_pump_type_in_many_plants_is_kept_once() -> None:
    """Plants that differ in nothing but the valve share one curve."""
    machines = Machines.build([[RADIAL, RADIAL]] * 500, Motor.rated(7500.0), WATER)
    assert machines.curves.table.shape[0] == 2 * (len(RADIAL.flow) + 1)
    drop, slope = machines.head_drop(np.full((500, 2), 0.01))
    assert drop.shape == slope.shape == (500, 2)
    assert not machines.shut(drop).any() and machines.corners() is None


def test_efficiency_is_the_liquids_share_of_the_shaft_power() -> None:
    """ρ g Q H over the shaft power, at the density pumped."""
    flow = across([0.004, 0.011])
    running = machine(density=1100.0).running(flow)
    assert running.efficiency == pytest.approx(1100.0 * G * flow * running.head / running.shaft_power)
