"""The torque line from standstill to the field's speed."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import motors

from loadfirst.errors import InputError
from loadfirst.physics.breakdown import (
    breakdown_slip,
    breakdown_torque,
    starting_current,
    torque_at,
)
from loadfirst.physics.law import column
from loadfirst.physics.motor import Motor

MOTOR = Motor.rated(7500.0)
ratios = st.floats(1.2, 5.0)


@given(motors(), ratios)
def test_the_line_meets_the_rated_point_and_breakdown(motor: Motor, ratio: float) -> None:
    """On its own supply; the largest torque anywhere is the breakdown torque."""
    motor = motor._replace(frequency=motor.supply_frequency)
    rated = motor.speed(motor.rated_torque)
    assert torque_at(motor, rated, ratio) == pytest.approx(motor.rated_torque)
    speeds = np.linspace(-0.5, 1.5, 4001)[:, None] * motor.synchronous_speed
    torque = torque_at(motor, speeds, ratio)
    assert torque.max() <= breakdown_torque(motor, ratio)[0, 0] * (1 + 1e-12)
    at_breakdown = motor.synchronous_speed * (1 - breakdown_slip(motor.rated_slip, ratio))
    assert torque_at(motor, at_breakdown, ratio) == pytest.approx(breakdown_torque(motor, ratio))


@given(motors(), st.floats(0.5, 1.2))
def test_at_running_load_the_line_is_the_straight_one(motor: Motor, load: float) -> None:
    """`Motor.speed` and Kloss differ by less than a sixth of the torque, up to 1.2 times the rated one.

    Where the field is not weakened: in field weakening breakdown comes nearer.
    """
    motor = motor._replace(frequency=np.minimum(motor.frequency, motor.supply_frequency))
    torque = load * motor.rated_torque
    assert torque_at(motor, motor.speed(torque)) == pytest.approx(torque, rel=1 / 6)


def test_ten_per_cent_less_voltage_takes_a_fifth_of_the_breakdown_torque() -> None:
    """With the square: 0.81."""
    weak = Motor.rated(7500.0, relative_voltage=0.9)
    assert breakdown_torque(weak) == pytest.approx(0.81 * breakdown_torque(MOTOR))


@given(motors())
def test_a_pump_is_run_up_from_standstill_to_its_speed(motor: Motor) -> None:
    """With a load that grows with the square of the speed to 0.9 of rated torque, started on its supply."""
    motor = motor._replace(frequency=motor.supply_frequency)
    speeds = np.linspace(0, 0.999, 200)[:, None] * motor.speed(motor.rated_torque)
    load = 0.9 * motor.rated_torque * (speeds / motor.speed(motor.rated_torque)) ** 2
    assert (torque_at(motor, speeds, 3.0) > load).all()
    assert torque_at(motor, motor.synchronous_speed, 3.0) < load[-1:]


def test_the_starting_current_goes_with_the_voltage() -> None:
    """Seven times the rated current, at 0.8 of the voltage 5.6 times."""
    weak = Motor.rated(7500.0, relative_voltage=0.8)
    assert starting_current(weak) / weak.rated_current == pytest.approx(column(5.6))


@pytest.mark.parametrize(("motor", "ratio"), [(Motor.rated(7500.0, slip=0.0), 2.5), (MOTOR, 1.0)])
def test_a_line_without_bend_is_refused(motor: Motor, ratio: float) -> None:
    """No slip, or a breakdown torque that is the rated one."""
    with pytest.raises(InputError, match="motor."):
        torque_at(motor, 1.0, ratio)


def test_two_fields_pull_both_ways_at_standstill_and_most_of_the_torque_is_left_at_speed() -> None:
    """Symmetrical components (textbook): no starting torque; at breakdown well below that of three phases."""
    three, two = Motor.rated(7500.0), Motor.rated(7500.0, phases=2)
    assert float(torque_at(two, 0.0)[0, 0]) == pytest.approx(0.0, abs=1e-9)
    share = float((breakdown_torque(two) / breakdown_torque(three))[0, 0])
    assert 0.4 < share < 0.75
    near = np.linspace(0.5, 1.0, 2001)[:, None] * two.synchronous_speed
    assert float(torque_at(two, near).max()) == pytest.approx(float(breakdown_torque(two)[0, 0]), rel=0.02)
