"""A motor's speed, input power and current, from idling to overload."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import motors

from loadfirst.errors import InputError
from loadfirst.physics.law import Array, column
from loadfirst.physics.motor import Motor, rated_power_factor
from loadfirst.physics.motor_efficiency import rated_efficiency

powers = st.floats(10.0, 2e7)
poles = st.sampled_from([2, 4, 6, 8])
supplies = st.sampled_from([50, 60])


def current(motor: Motor, load: float) -> float:
    """Current at a part of the rated torque, as part of the rated current."""
    torque = load * motor.rated_torque
    return float((motor.current(motor.input_power(torque, motor.speed(torque))) / motor.rated_current)[0, 0])


def efficiency(motor: Motor, load: float) -> float:
    """Shaft power over input power at a part of the rated torque."""
    torque = load * motor.rated_torque
    speed = motor.speed(torque)
    return float((torque * speed / motor.input_power(torque, speed))[0, 0])


@given(powers, poles, supplies)
def test_at_rated_torque_the_name_plate_holds(power: float, poles: int, supply: int) -> None:
    """Speed, power, efficiency, power factor and current belong together."""
    motor = Motor.rated(power, poles=poles, supply_frequency=supply)
    speed = motor.speed(motor.rated_torque)
    assert speed * motor.rated_torque == pytest.approx(column(power))
    assert speed == pytest.approx(motor.synchronous_speed * (1 - motor.rated_slip))
    assert efficiency(motor, 1.0) == pytest.approx(float(motor.efficiency[0, 0]))
    assert current(motor, 1.0) == pytest.approx(1.0)
    apparent = math.sqrt(3) * motor.voltage * motor.rated_current
    assert apparent * motor.power_factor * motor.efficiency == pytest.approx(column(power))


@given(powers, poles, supplies)
def test_current_is_not_proportional_to_load(power: float, poles: int, supply: int) -> None:
    """Common practice (no published source): about a third idling, 55 to 60 % at half load."""
    motor = Motor.rated(power, poles=poles, supply_frequency=supply)
    assert 0.33 < current(motor, 0.0) < 0.40
    assert 0.55 < current(motor, 0.5) < 0.60 + 0.05 * (power < 120)


@given(motors(), st.floats(0.0, 2.0), st.floats(0.01, 0.5))
def test_more_torque_means_less_speed_more_input_and_more_current(
    motor: Motor, load: float, more: float
) -> None:
    """Monotone, so that an ammeter tells which way the load went."""
    low, high = load * motor.rated_torque, (load + more) * motor.rated_torque
    assert (motor.speed(high) < motor.speed(low)).all()
    if (motor.speed(high) > 0.3 * motor.synchronous_speed).all():
        power = [motor.input_power(torque, motor.speed(torque)) for torque in (low, high)]
        assert (power[1] > power[0]).all()
        assert (motor.current(power[1]) > motor.current(power[0])).all()


@given(powers, poles)
def test_efficiency_is_best_near_three_quarters_of_the_load(power: float, poles: int) -> None:
    """U.S. DOE fact sheet "Determining Electric Motor Load and Efficiency" (read): usually near 75 %."""
    motor = Motor.rated(power, poles=poles)
    loads = np.linspace(0.1, 1.3, 121)
    best = loads[int(np.argmax([efficiency(motor, load) for load in loads]))]
    assert best == pytest.approx(0.75, abs=0.05)


def test_at_lower_frequency_the_same_torque_takes_the_same_slip_in_turns_a_minute() -> None:
    """Constant voltage per hertz shifts the torque line without tilting it."""
    full, half = Motor.rated(7500.0), Motor.rated(7500.0, frequency=25)
    torque = full.rated_torque
    lost = [motor.synchronous_speed - motor.speed(torque) for motor in (full, half)]
    assert lost[0] == pytest.approx(lost[1])


def test_above_the_supplys_frequency_the_slip_grows_with_its_square() -> None:
    """Constant voltage: 60 Hz on a 50 Hz motor, 1.44 times the slip at the same torque."""
    full, fast = Motor.rated(7500.0), Motor.rated(7500.0, frequency=60)
    torque = full.rated_torque
    lost = [motor.synchronous_speed - motor.speed(torque) for motor in (full, fast)]
    assert lost[1] == pytest.approx(1.44 * lost[0])


def test_an_idling_motor_draws_less_magnetising_current_in_field_weakening() -> None:
    """The field is weaker, so it takes less current to make it."""
    assert current(Motor.rated(7500.0, frequency=75), 0) < current(Motor.rated(7500.0), 0)


def test_fixed_losses_fall_faster_than_the_frequency_and_slower_than_its_square() -> None:
    """Between hysteresis (exponent 1) and eddy currents (2), at 1.5; an idle motor takes nothing else."""
    whole, half = (
        float(motor.input_power(np.zeros((1, 1)), motor.synchronous_speed)[0, 0])
        for motor in (Motor.rated(7500.0), Motor.rated(7500.0, frequency=25))
    )
    assert half / whole == pytest.approx(0.5**1.5, rel=1e-12)


def test_larger_motors_and_fewer_poles_have_the_better_power_factor() -> None:
    """Common practice: 0.86 at 5.5 kW and 2 poles, 0.03 more per decade and 0.03 less per pair of poles."""
    found = rated_power_factor([550.0, 5500.0, 55e3, 5500.0], [2, 2, 2, 6])
    assert found == pytest.approx([0.83, 0.86, 0.89, 0.80], rel=1e-12)


def test_a_motor_without_slip_keeps_its_speed() -> None:
    """Slip can be ignored on request."""
    motor = Motor.rated(7500.0, slip=0.0)
    assert motor.speed(9 * motor.rated_torque) == motor.synchronous_speed


@given(st.floats(100.0, 2e6), st.floats(1.01, 5.0), poles, supplies)
def test_larger_motors_are_no_less_efficient(power: float, times: float, poles: int, supply: int) -> None:
    """To 0.35 points, by which the 50 Hz polynomials of the standard sag in places."""
    small, large = rated_efficiency(power, poles, supply), rated_efficiency(power * times, poles, supply)
    assert large >= small - 0.0035
    assert 0.5 < small < 0.97


def test_beyond_the_standards_range_the_nearest_efficiency_is_kept() -> None:
    """The 50 Hz polynomial reaches from 0.12 to 200 kW; farther out it would bend back."""
    assert rated_efficiency([300e3, 50.0], 2, 50) == pytest.approx(rated_efficiency([200e3, 120.0], 2, 50))


@given(powers, poles)
def test_power_factor_stays_where_a_motor_can_have_it(power: float, poles: int) -> None:
    """Below 0.94, or the magnetising current alone would be more than the reactive part."""
    assert 0.6 <= rated_power_factor(power, poles) <= 0.92


def test_a_batch_is_the_same_as_one_by_one() -> None:
    """Rows of mixed motors, and some of them picked."""
    sizes, pole = np.array([[750.0], [5500.0], [90e3]]), np.array([[2], [4], [8]])
    supply = np.array([[50], [60], [50]])
    many = Motor.rated(
        sizes, poles=pole, supply_frequency=supply, frequency=np.array([[50.0], [45.0], [60.0]])
    )
    picked = many.rows(np.array([2, 0]))
    for row, k in ((0, 2), (1, 0)):
        one = Motor.rated(
            sizes[k, 0], poles=pole[k, 0], supply_frequency=supply[k, 0], frequency=many.frequency[k, 0]
        )
        torque: Array = 0.7 * one.rated_torque
        wanted = one.current(one.input_power(torque, one.speed(torque)))
        all_of = np.broadcast_to(torque, (2, 1))
        got = picked.current(picked.input_power(all_of, picked.speed(all_of)))
        assert got[row] == pytest.approx(wanted[0], rel=1e-14)


@given(motors(), st.floats(0.8, 1.0), st.floats(0.0, 1.5))
def test_low_voltage_costs_slip_with_its_inverse_square(motor: Motor, volts: float, load: float) -> None:
    """The same torque at a weaker field; the speed without load stays."""
    weak = motor._replace(relative_voltage=column(volts))
    torque = load * motor.rated_torque
    lost, more = (m.synchronous_speed - m.speed(torque) for m in (motor, weak))
    assert more == pytest.approx(lost / volts**2)


@given(powers, poles, supplies, st.floats(0.7, 1.3))
def test_more_torque_means_more_input_and_current_at_any_voltage(
    power: float, poles: int, supply: int, volts: float
) -> None:
    """The ammeter still tells which way the load went."""
    motor = Motor.rated(power, poles=poles, supply_frequency=supply, relative_voltage=volts)
    torque = np.linspace(0, 1.5, 40)[:, None] * motor.rated_torque
    taken = motor.input_power(torque, motor.speed(torque))
    assert (np.diff(taken, axis=0) > 0).all() and (np.diff(motor.current(taken), axis=0) > 0).all()


def test_a_supply_that_sags_in_frequency_at_full_voltage_draws_more_idling() -> None:
    """47 Hz at the voltage of 50: slower, and the field stronger."""
    sound, sagging = Motor.rated(7500.0), Motor.rated(7500.0, frequency=47.0, relative_voltage=50 / 47)
    assert sagging.synchronous_speed == pytest.approx(0.94 * sound.synchronous_speed)
    assert current(sagging, 0) > 1.04 * current(sound, 0)


def test_an_efficiency_given_is_the_one_on_the_name_plate() -> None:
    """For motors of another class than IE3."""
    assert efficiency(Motor.rated(7500.0, efficiency=0.86), 1.0) == pytest.approx(0.86)


@pytest.mark.parametrize("given", [{"efficiency": 1.0}, {"efficiency": 0.0}, {"relative_voltage": 0.3}])
def test_a_motor_that_could_not_be_is_refused(given: dict[str, float]) -> None:
    """No loss at all, no efficiency, or a voltage at which none runs."""
    with pytest.raises(InputError, match="motor."):
        Motor.rated(7500.0, **given)
