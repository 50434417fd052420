"""Drives that cut back to keep the motor's current."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import RADIAL

from loadfirst.errors import InputError
from loadfirst.physics.current_limit import cut_back
from loadfirst.physics.law import Array
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor

FLOW_AT_50 = 0.015  # [m³/s]


def currents(frequency: Array) -> Array:
    """The pump on an open load: its flow goes with the frequency. (B,) [Hz] -> (B,) [A]"""
    pump = Machines.build([[RADIAL]], Motor.rated(5500.0, frequency=frequency[:, None]), 998.2)
    return np.asarray(pump.running(FLOW_AT_50 / 50 * frequency[:, None]).current[:, 0])


FULL = float(currents(np.array([50.0]))[0])


@given(st.floats(0.5, 0.99))
def test_the_current_stands_at_its_limit_and_the_pump_slows(share: float) -> None:
    """The frequency is cut back as far as it takes, no farther."""
    limit = share * FULL
    cut = cut_back(50.0, limit, currents)
    assert cut.limited.all() and not cut.overloaded.any()
    assert cut.current[0] == pytest.approx(limit, rel=1e-8)
    assert currents(cut.frequency)[0] == pytest.approx(limit, rel=1e-8)
    assert 5.0 < cut.frequency[0] < 50.0


def test_a_limit_out_of_reach_changes_nothing() -> None:
    """The drive gives what it was asked for, and the current is the plant's."""
    cut = cut_back([50.0, 40.0], 2 * FULL, currents)
    assert cut.frequency.tolist() == [50.0, 40.0]
    assert not cut.limited.any() and cut.current[0] == pytest.approx(FULL)


def test_constant_torque_ends_at_the_lowest_frequency_still_over_the_limit() -> None:
    """A displacement pump at its relief valve draws the same current at any speed."""
    cut = cut_back(50.0, 8.0, lambda f: 10.0 + 0 * f)
    assert cut.overloaded.all() and cut.limited.all()
    assert cut.frequency[0] == 5.0 and cut.current[0] == pytest.approx(10.0)


@pytest.mark.parametrize("limit, lowest", [(0.0, 5.0), (10.0, 60.0), (float("nan"), 5.0)])
def test_a_drive_that_could_not_be_is_refused(limit: float, lowest: float) -> None:
    """No current at all, or a lowest frequency above the one asked for."""
    with pytest.raises(InputError, match="drive"):
        cut_back(50.0, limit, currents, lowest)
