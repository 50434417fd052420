"""Closing in on many roots at once."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.physics.law import Array, Index
from loadfirst.physics.root import Remembered, rising_root

LEFT, RIGHT = np.array([[0.0, 0.0, 0.0]]), np.array([[1.0, 1.0, 1.0]])


@given(st.lists(st.floats(0, 1), min_size=3, max_size=3), st.sampled_from([1, 3, 9]))
def test_roots_are_found_to_the_last_digits(at: list[float], power: int) -> None:
    """Three at a time, flat ones too, from bounds whose signs differ or are nought."""
    wanted = np.array([at])

    def function(x: Array) -> Array:
        return np.asarray((x - wanted) ** power)

    root = rising_root(function, LEFT, RIGHT)[0]
    flat = 1e-12 if power == 1 else 3e-12
    if power < 9:
        assert root == pytest.approx(wanted, abs=flat)
    assert np.abs(function(root)).max() <= flat


def test_a_steep_corner_is_no_trouble() -> None:
    """A shut valve's line beside an ordinary slope."""

    def function(x: Array) -> Array:
        return np.where(x < 0.3, 1e10 * (x - 0.3), x - 0.3) + 0.1

    root = rising_root(function, LEFT, RIGHT)[0]
    assert root == pytest.approx(np.full((1, 3), 0.3 - 1e-11), abs=1e-12)


def test_it_takes_few_steps_where_the_function_is_smooth() -> None:
    """Some ten calls, not fifty: a call may be a whole network."""
    calls = 0

    def function(x: Array) -> Array:
        nonlocal calls
        calls += 1
        return np.exp(x) - np.array([[1.5, 2.0, 2.5]])

    root = rising_root(function, LEFT, RIGHT)[0]
    assert root == pytest.approx(np.log([[1.5, 2.0, 2.5]]), abs=1e-12)
    assert calls < 16


roots = st.lists(st.floats(-3.0, 3.0), min_size=1, max_size=8)


@given(roots, st.floats(1.0, 9.0))
def test_each_row_finds_its_own_root(root: list[float], power: float) -> None:
    """Steep, flat and bent functions; to a billionth of the bracket where the function is not flat."""
    wanted = np.array(root)

    def miss(x: np.ndarray) -> np.ndarray:
        return np.sign(x - wanted) * np.abs(x - wanted) ** power + 1e-3 * (x - wanted)

    at, left = rising_root(miss, np.full(wanted.shape, -4.0), np.full(wanted.shape, 5.0))
    assert at == pytest.approx(wanted, abs=1e-9)
    assert np.abs(left).max() < 1e-9


@pytest.mark.native
@given(st.floats(0.1, 3.0), st.floats(0.1, 50.0))
def test_it_agrees_with_scipy(a: float, b: float) -> None:
    """`scipy.optimize.brentq` on a x³ + b x = 1."""
    from scipy.optimize import brentq

    wanted = brentq(lambda x: a * x**3 + b * x - 1, 0.0, 10.0, xtol=1e-14)
    at, _ = rising_root(lambda x: a * x**3 + b * x - 1, np.array(0.0), np.array(10.0))
    assert float(at) == pytest.approx(wanted, rel=1e-11)


def test_without_a_root_the_nearer_end_is_the_answer() -> None:
    """Above nought everywhere: the low end; below: the high end; and what is missing there."""
    at, left = rising_root(lambda x: x + np.array([9.0, -9.0]), np.zeros(2), np.ones(2))
    assert at.tolist() == [0.0, 1.0]
    assert left.tolist() == [9.0, -8.0]


def test_a_leap_over_nought_is_found_where_it_leaps() -> None:
    """Nothing is within reach there, and what is left says so."""
    at, left = rising_root(lambda x: np.where(x < 0.3, -1.0, 2.0), np.zeros(1), np.ones(1))
    assert at[0] == pytest.approx(0.3, abs=1e-12)
    assert abs(left[0]) >= 1


def test_it_stops_as_soon_as_it_is_near_enough() -> None:
    """The answer may cost a plant's solution at each step."""
    asked = []

    def miss(x: np.ndarray) -> np.ndarray:
        asked.append(x)
        return x**2 - 0.25

    _, left = rising_root(miss, np.zeros(1), np.ones(1), within=1e-6)
    assert abs(left[0]) <= 1e-6
    assert len(asked) < 14


def test_a_bracket_without_width_is_its_own_answer() -> None:
    """Limits that coincide leave nothing to find."""
    at, left = rising_root(lambda x: x - 1, np.array([2.0, 0.5]), np.array([2.0, 0.5]))
    assert at.tolist() == [2.0, 0.5] and left.tolist() == [1.0, -0.5]


@given(st.lists(st.floats(-0.9, 0.9), min_size=2, max_size=6), st.floats(1.0, 5.0))
def test_remembering_asks_each_row_once_for_an_argument_and_finds_the_same(
    at: list[float], power: float
) -> None:
    """Rows that are found are left alone while the others are still sought."""
    wanted = np.array(at)
    asked: list[tuple[int, float]] = []

    def function(rows: Index, x: Array) -> Array:
        asked.extend(zip(rows.tolist(), x.tolist(), strict=True))
        return np.asarray(np.sign(x - wanted[rows]) * np.abs(x - wanted[rows]) ** power)

    def plain(x: Array) -> Array:
        return np.asarray(np.sign(x - wanted) * np.abs(x - wanted) ** power)

    low, high = np.full(len(at), -1.0), np.full(len(at), 1.0)
    found = rising_root(Remembered(function, len(at)), low, high, within=1e-9)
    assert [x.tolist() for x in found] == [x.tolist() for x in rising_root(plain, low, high, within=1e-9)]
    assert len(set(asked)) == len(asked)
