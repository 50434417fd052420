"""Belts between motor and pump."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import RADIAL, across, far_and_wide, motors

from loadfirst.errors import InputError
from loadfirst.physics.belt import Belted
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor

MOTOR = Motor.rated(7500.0)
ratios = st.floats(0.3, 3.0)


@given(motors(), ratios, st.floats(0.0, 0.05), st.floats(0.0, 1.5))
def test_the_straight_line_is_the_two_slips_but_for_their_product(
    motor: Motor, ratio: float, creep: float, load: float
) -> None:
    """Against slip of the motor and creep of the belt, one after the other."""
    belted = Belted.of(motor, ratio, creep=creep)
    torque = load * belted.rated_torque
    in_turn = ratio * motor.speed(ratio * torque) * (1 - creep * load)
    slip = load * motor.droop * motor.rated_torque / motor.synchronous_speed
    product = belted.synchronous_speed * slip * creep * load
    assert belted.speed(torque) == pytest.approx(in_turn - product, rel=1e-9, abs=1e-9)


@given(motors(), ratios)
def test_a_belt_without_creep_turns_power_into_power(motor: Motor, ratio: float) -> None:
    """Torque falls as the speed grows; nothing is lost, and the ammeter shows the motor's current."""
    belted = Belted.of(motor, ratio, creep=0.0)
    torque = 0.8 * belted.rated_torque
    speed = belted.speed(torque)
    assert torque * speed == pytest.approx(0.8 * motor.rated_torque * motor.speed(0.8 * motor.rated_torque))
    assert belted.heat(torque, speed) == pytest.approx(
        np.zeros((1, 1)), abs=1e-6 * float(motor.rated_power[0, 0])
    )
    direct = motor.input_power(0.8 * motor.rated_torque, motor.speed(0.8 * motor.rated_torque))
    assert belted.input_power(torque, speed) == pytest.approx(direct)
    assert belted.current(direct) == motor.current(direct)


def test_creep_turns_its_share_of_the_power_into_heat() -> None:
    """One per cent at rated torque, less the product with the slip."""
    belted = Belted.of(MOTOR, 1.0, creep=0.01)
    torque = belted.rated_torque
    heat = float((belted.heat(torque, belted.speed(torque)) / MOTOR.rated_power)[0, 0])
    assert heat == pytest.approx(0.01, rel=0.03)


@given(ratios, st.floats(0.0, 0.1))
def test_a_pump_on_a_belt_still_gives_less_head_at_more_flow(ratio: float, creep: float) -> None:
    """The pump's law takes the belt for a motor with more droop."""
    pump = Machines.build([[RADIAL]], Belted.of(MOTOR, ratio, creep=creep), 998.2)
    flow = far_and_wide(pump)
    drop, slope = pump.head_drop(flow)
    assert (np.diff(drop[:, 0]) >= -1e-9 * np.abs(drop).max()).all() and (slope >= 0).all()


def test_a_looser_belt_makes_a_pump_that_looks_worn() -> None:
    """Less speed, less head at the same flow; the tachometer tells."""
    tight, loose = (
        Machines.build([[RADIAL]], Belted.of(MOTOR, 1.0, creep=creep), 998.2).running(across(0.008))
        for creep in (0.01, 0.06)
    )
    assert loose.head[0, 0] < 0.96 * tight.head[0, 0]
    assert loose.speed[0, 0] < 0.98 * tight.speed[0, 0]


@given(st.floats(0.05, 1.2), ratios)
def test_beyond_its_grip_the_belt_slips_and_the_pump_slows(tightness: float, ratio: float) -> None:
    """A pump never takes more torque than the belt holds, and its head still falls with the flow.

    At the maker's own points the speed is the one at which the pump asks for just that: torque with
    the square of the speed (affinity law).
    """
    belted = Belted.of(MOTOR, ratio, grip=tightness)
    pump = Machines.build([[RADIAL]], belted, 998.2)
    flow = far_and_wide(pump)
    drop, slope = pump.head_drop(flow)
    assert (np.diff(drop[:, 0]) >= -1e-9 * np.abs(drop).max()).all() and (slope >= 0).all()
    there = pump.running(flow)
    assert (there.torque <= belted.grip * (1 + 1e-9)).all()
    assert all(np.isfinite(part).all() for part in there)
    assert (belted.heat(there.torque, there.speed) >= -1e-9 * belted.rated_power).all()
    at = pump.curves.knots[0, 0]
    known = pump.running(at[:, None])
    slips = belted.slips(known.torque)[:, 0]
    asked = RADIAL.power / RADIAL.speed * (998.2 / RADIAL.density) * (known.speed[:, 0] / RADIAL.speed) ** 2
    assert asked[slips] == pytest.approx(known.torque[slips, 0], rel=1e-6)


def test_a_slipping_belt_turns_much_into_heat_and_the_motor_bears_no_more_than_the_grip() -> None:
    """The motor stays near its usual speed; what the pump does not get heats the belt."""
    belted = Belted.of(MOTOR, 1.0, grip=0.3)
    there = Machines.build([[RADIAL]], belted, 998.2).running(across(0.012))
    assert belted.slips(there.torque)[0, 0] and there.load[0, 0] == pytest.approx(0.3, rel=0.05)
    assert belted.heat(there.torque, there.speed)[0, 0] > 0.1 * there.shaft_power[0, 0]


def test_some_of_the_plants_keep_their_belts() -> None:
    """Rows picked."""
    many = Belted.of(MOTOR, [[1.0], [0.8], [1.2]], creep=[[0.0], [0.01], [0.02]])
    some = many.rows(np.array([2, 0]))
    assert some.ratio[:, 0].tolist() == [1.2, 1.0] and some.creep[:, 0].tolist() == [0.02, 0.0]
    assert some.rated_power == MOTOR.rated_power and some.rated_current == MOTOR.rated_current


@pytest.mark.parametrize(
    "given", [{"ratio": 0.0}, {"ratio": 1.0, "creep": 0.5}, {"ratio": 1.0, "grip": -1.0}]
)
def test_a_belt_that_could_not_be_is_refused(given: dict[str, float]) -> None:
    """Ratio, creep and grip have their ranges."""
    with pytest.raises(InputError, match="belt."):
        Belted.of(MOTOR, **given)


def test_a_displacement_pump_takes_a_belt_for_a_motor() -> None:
    """Twice the speed at half the torque: twice the flow free, and stalled at half the pressure or so."""
    from tests.displacement import GEAR, OIL, THICKNESS

    from loadfirst.physics.breakdown import breakdown_torque
    from loadfirst.physics.displacement import DisplacementMachines

    motor = Motor.rated(4000.0, poles=4)
    fast = Belted.of(motor, 2.0, creep=0.0)
    direct, belted = (DisplacementMachines.build([[GEAR]], m, OIL, THICKNESS) for m in (motor, fast))
    assert belted.last_flow == pytest.approx(2 * direct.last_flow, rel=0.02)
    assert breakdown_torque(fast) == pytest.approx(breakdown_torque(motor) / 2)
    shut = np.zeros((1, 1))
    assert belted.running(shut).pressure < 0.7 * direct.running(shut).pressure
    assert np.isfinite(np.array([float(part[0, 0]) for part in belted.running(shut)])).all()
    loose = DisplacementMachines.build([[GEAR]], Belted.of(motor, 2.0, grip=0.8), OIL, THICKNESS)
    held = loose.running(shut)
    assert held.stalled[0, 0] and held.pressure[0, 0] < 0.6 * belted.running(shut).pressure[0, 0]
    assert held.current[0, 0] < 1.1 * motor.rated_current[0, 0]
