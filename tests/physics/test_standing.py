"""Pumps whose motors are off, as resistances."""

from __future__ import annotations

import numpy as np
import pytest

from loadfirst.physics.motor import Motor
from loadfirst.physics.standing import StandingPumps

FLOW = np.linspace(-0.1, 0.1, 2001)[:, None]


def pumps(straight: float, forward: float, backward: float) -> StandingPumps:
    """One pump with these numbers."""
    numbers = [np.array([[number]]) for number in (straight, forward, backward, 2e4, 7e4)]
    return StandingPumps(Motor.rated(7500.0), *numbers, *(np.array([[x]]) for x in (50.0, 0.02, 0.01)))


@pytest.mark.parametrize("numbers", [(0.0, 1.6e5, 9.6e5), (1e6, 1e8, 1e8), (1e10, 0.0, 0.0)])
def test_the_drop_rises_over_the_whole_range_with_the_slope_that_is_said(numbers: tuple[float, ...]) -> None:
    """A law as the solver needs it."""
    law = pumps(*numbers)
    drop, slope = law.head_drop(FLOW)
    assert (np.diff(drop[:, 0]) > 0).all() and (slope >= 0).all()
    there = np.gradient(drop[:, 0], FLOW[:, 0])[1:-1]
    near = np.abs(there - slope[1:-1, 0]) <= 1e-6 * slope.max() + 2e-3 * slope[1:-1, 0]
    assert near[np.abs(FLOW[1:-1, 0]) > 2e-4].all()


def test_everything_that_needs_a_motor_is_nought() -> None:
    """Only head and speed are left, and the speed has the flow's sign."""
    running = pumps(0.0, 1.6e5, 9.6e5).running(FLOW)
    nought = (running.torque, running.shaft_power, running.current, running.motor_input, running.load)
    assert all((part == 0).all() for part in nought)
    assert (np.sign(running.speed) == np.sign(FLOW)).all()
    assert (np.sign(running.head) == -np.sign(FLOW)).all()
