"""The field's speed, the slip, and what a frequency above the supply's does to them."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import RPM

from loadfirst.physics.drive import rated_slip, synchronous_speed, weakening


@given(st.floats(10.0, 2e7), st.floats(1.001, 10.0))
def test_larger_motors_never_slip_more(power: float, times: float) -> None:
    """Between the bounds of the table, over all powers a file may give."""
    small, large = rated_slip(power), rated_slip(power * times)
    assert 0.008 <= large <= small <= 0.05


@given(st.floats(5, 75), st.sampled_from([2, 4, 6, 8]))
def test_the_field_turns_twice_as_fast_at_twice_the_frequency(frequency: float, poles: int) -> None:
    """Speed is proportional to frequency and falls with the number of poles."""
    assert synchronous_speed(2 * frequency, poles) == pytest.approx(2 * synchronous_speed(frequency, poles))
    assert synchronous_speed(frequency, 2 * poles) == pytest.approx(synchronous_speed(frequency, poles) / 2)


def test_the_field_weakens_only_above_the_supply() -> None:
    """Up to 50 Hz the voltage follows the frequency, beyond it cannot."""
    assert weakening([5, 25, 50, 60, 75], 50).tolist() == [1, 1, 1, 1.2, 1.5]


def test_arrays_and_numbers_are_taken_alike() -> None:
    """A batch of frequencies gives a batch of speeds."""
    speeds = synchronous_speed(np.array([[25.0], [50.0]]), 2) / RPM
    assert speeds == pytest.approx(np.array([[1500.0], [3000.0]]))
