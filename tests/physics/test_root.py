"""Closing in on many roots at once, and on turns."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.physics.law import Array
from loadfirst.physics.root import close_in, least

LEFT, RIGHT = np.array([[0.0, 0.0, 0.0]]), np.array([[1.0, 1.0, 1.0]])


@given(st.lists(st.floats(0, 1), min_size=3, max_size=3), st.sampled_from([1, 3, 9]))
def test_roots_are_found_to_the_last_digits(at: list[float], power: int) -> None:
    """Three at a time, flat ones too, from bounds whose signs differ or are nought."""
    wanted = np.array([at])

    def function(x: Array) -> Array:
        return np.asarray((x - wanted) ** power)

    root = close_in(function, (LEFT, RIGHT), (function(LEFT), function(RIGHT)))
    flat = 1e-12 if power == 1 else 3e-12
    if power < 9:
        assert root == pytest.approx(wanted, abs=flat)
    assert np.abs(function(root)).max() <= flat


def test_a_steep_corner_is_no_trouble() -> None:
    """A shut valve's line beside an ordinary slope."""

    def function(x: Array) -> Array:
        return np.where(x < 0.3, 1e10 * (x - 0.3), x - 0.3) + 0.1

    root = close_in(function, (LEFT, RIGHT), (function(LEFT), function(RIGHT)))
    assert root == pytest.approx(np.full((1, 3), 0.3 - 1e-11), abs=1e-12)


def test_a_turn_is_found_to_the_root_of_the_rounding() -> None:
    """Parabolas, which are flat to the last digit for 1e-8 around."""
    at = np.array([[0.1, 0.5, 0.987]])
    assert least(lambda x: (x - at) ** 2 + 3, LEFT, RIGHT) == pytest.approx(at, abs=5e-8)


def test_it_takes_few_steps_where_the_function_is_smooth() -> None:
    """Some ten calls, not fifty: a call may be a whole network."""
    calls = 0

    def function(x: Array) -> Array:
        nonlocal calls
        calls += 1
        return np.exp(x) - np.array([[1.5, 2.0, 2.5]])

    root = close_in(function, (LEFT, RIGHT), (function(LEFT), function(RIGHT)))
    assert root == pytest.approx(np.log([[1.5, 2.0, 2.5]]), abs=1e-12)
    assert calls < 16
