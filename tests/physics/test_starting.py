"""Motors that run up, or hang."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.physics.breakdown import torque_at
from loadfirst.physics.inertia import motor_inertia, pump_inertia
from loadfirst.physics.law import Array
from loadfirst.physics.motor import Motor
from loadfirst.physics.starting import Asked, direct, pull_up_torque, ramp

MOTOR = Motor.rated(7500.0, poles=4)
RUNNING = float(MOTOR.speed(MOTOR.rated_torque)[0, 0])
RATED = float(MOTOR.rated_torque[0, 0])


def square(share: float) -> Asked:
    """A load whose torque goes with the square of the speed, to a share of the rated torque."""
    return lambda speed: np.asarray(share * RATED * (speed / RUNNING) ** 2)


def steady(share: float) -> Asked:
    """A load of the same torque at any speed."""
    return lambda speed: np.full(np.shape(speed), share * RATED)


@given(st.floats(0.1, 1.5), st.floats(0.5, 1.0))
def test_a_pump_that_the_motor_can_turn_runs_up_unless_the_voltage_is_low(share: float, volts: float) -> None:
    """Less load or more voltage never leaves less to run up with; the current goes with the voltage."""
    weak = MOTOR._replace(relative_voltage=np.full((1, 1), volts))
    sound, low = direct(MOTOR, square(share)), direct(weak, square(share))
    assert not sound.hangs and low.spare <= sound.spare
    assert low.current == pytest.approx(volts * sound.current)
    assert direct(MOTOR, square(share / 2)).spare >= sound.spare


def test_a_motor_hangs_where_the_loads_torque_crosses_its_own() -> None:
    """At 60 % of the voltage the breakdown torque is 0.9 of the rated one: an overloaded pump is too much."""
    weak = MOTOR._replace(relative_voltage=np.full((1, 1), 0.6))
    found = direct(weak, square(1.4))
    assert found.hangs and 0 < found.speed < RUNNING
    at: Array = np.full((1, 1), found.speed)
    assert float(square(1.4)(at)[0, 0]) > float(torque_at(weak, at)[0, 0])


def test_a_steady_torque_above_the_pull_up_torque_never_moves() -> None:
    """As a displacement pump against full pressure; from standstill on."""
    pull_up = float((pull_up_torque(MOTOR) / RATED)[0, 0])
    assert direct(MOTOR, steady(1.3 * max(pull_up, 1.0))).speed == 0.0 or pull_up > 1.3
    weak = MOTOR._replace(relative_voltage=np.full((1, 1), 0.7))
    found = direct(weak, steady(0.9))
    assert found.hangs and found.speed == 0.0


def test_a_drive_starts_with_little_current_and_a_short_ramp_asks_more() -> None:
    """Never the several times that a direct start draws; too short a ramp is more than the drive gives."""
    power = MOTOR.rated_power
    inert = float((pump_inertia(power, RUNNING) + motor_inertia(power, RUNNING))[0, 0])
    slow, quick, abrupt = (
        ramp(MOTOR, square(0.8), RUNNING, inert * RUNNING / seconds) for seconds in (20.0, 1.0, 0.2)
    )
    assert slow.current < 1.0 * float(MOTOR.rated_current[0, 0]) < direct(MOTOR, square(0.8)).current / 6
    assert slow.spare > quick.spare > abrupt.spare and slow.current < quick.current
    assert abrupt.hangs and not quick.hangs
