"""Curves through points: smooth, never overshooting, found with one search."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loadfirst.physics.interpolate import (
    Pieces,
    limit_slopes,
    monotone_slopes,
    pieces,
    slope,
    value,
)
from loadfirst.physics.law import Array

X = np.array([0.0, 1.0, 2.5, 3.0, 7.0])
Y = np.array([5.0, 5.5, 2.0, 2.0, 1.0])


def curve(x: Array, y: Array) -> Pieces:
    """One curve of one quantity that goes on level outside its points."""
    last, ends = np.array([[len(x) - 1]]), np.zeros((1, 1, 1, 2))
    return pieces(
        x[None, None], last, y[None, None, None], monotone_slopes(x, y)[None, None, None], ends, ends
    )


def read(curves: Pieces, x: Array) -> Array:
    """Values of the first quantity at some x."""
    return value(*curves.find(np.asarray(x, dtype=float).reshape(-1, 1)))[:, 0]


@st.composite
def points(draw: st.DrawFn) -> tuple[Array, Array]:
    """Any points with rising x."""
    count = draw(st.integers(3, 20))
    steps = draw(st.lists(st.floats(1e-3, 1e3), min_size=count, max_size=count))
    heights = draw(st.lists(st.integers(-(10**6), 10**6), min_size=count, max_size=count))
    return np.cumsum(steps), np.array(heights) / 1e3


@pytest.mark.native
@settings(deadline=None)
@given(points())
def test_the_slopes_are_those_of_scipys_monotone_interpolant(given_points: tuple[Array, Array]) -> None:
    """Reference library: scipy 1.17.1, PchipInterpolator; rounding only."""
    from scipy.interpolate import PchipInterpolator

    x, y = given_points
    wanted = PchipInterpolator(x, y).derivative()(x)
    assert monotone_slopes(x, y) == pytest.approx(wanted, rel=1e-9, abs=1e-9 * np.ptp(y) / np.diff(x).min())


@pytest.mark.native
@settings(deadline=None)
@given(points())
def test_the_values_are_those_of_scipys_monotone_interpolant(given_points: tuple[Array, Array]) -> None:
    """Reference library: scipy 1.17.1, PchipInterpolator; rounding only."""
    from scipy.interpolate import PchipInterpolator

    x, y = given_points
    at = np.linspace(x[0], x[-1], 101)
    assert read(curve(x, y), at) == pytest.approx(
        PchipInterpolator(x, y)(at), rel=1e-9, abs=1e-9 * (1 + np.ptp(y))
    )


@given(points())
def test_a_curve_never_leaves_the_box_of_two_neighbouring_points(given_points: tuple[Array, Array]) -> None:
    """Monotone between points means: no overshoot, whatever the points."""
    x, y = given_points
    at = np.linspace(x[:-1], x[1:], 21).T.ravel()
    found = read(curve(x, y), at).reshape(-1, 21)
    slack = 1e-9 * (1 + np.abs(y).max())
    assert (found >= np.minimum(y[:-1], y[1:])[:, None] - slack).all()
    assert (found <= np.maximum(y[:-1], y[1:])[:, None] + slack).all()


def test_value_and_slope_agree_where_two_pieces_meet() -> None:
    """The curve is smooth: no step and no corner at a point."""
    curves = curve(X, Y)
    for knot in X[1:-1]:
        before, after = np.array([[knot - 1e-9]]), np.array([[knot]])
        assert value(*curves.find(before)) == pytest.approx(value(*curves.find(after)), abs=1e-7)
        assert slope(*curves.find(before)) == pytest.approx(slope(*curves.find(after)), abs=1e-7)


def test_a_straight_line_stays_straight() -> None:
    """Points on a line give that line, between them too."""
    x = np.array([0.0, 1.0, 4.0, 5.0])
    at = np.linspace(0, 5, 31)
    assert read(curve(x, 7 - 2 * x), at) == pytest.approx(7 - 2 * at, rel=1e-14)


def test_slopes_are_limited_to_three_times_the_flatter_secant() -> None:
    """Fritsch and Carlson 1980 (from memory): a sufficient condition for a monotone cubic."""
    left, right = np.array([-1.0, -1.0, -1.0, 0.0]), np.array([-2.0, -2.0, 2.0, -2.0])
    limited = limit_slopes(np.array([-9.0, -2.0, -1.0, -1.0]), left, right)
    assert limited == pytest.approx([-3.0, -2.0, 0.0, 0.0])
    assert limit_slopes(np.array([5.0]), left[:1], right[:1]) == 0


def test_curves_of_unequal_length_share_one_table() -> None:
    """A shorter curve is filled up; what stands behind its last point is never used."""
    long, short = X, np.array([0.0, 1.0, 2.0, 9.0, 9.5])
    y = np.array([3.0, 2.0, 0.5, -1.0, -7.0])
    knots, last = np.stack([long, short])[None], np.array([[4, 2]])
    ends = np.zeros((1, 1, 2, 2))
    slopes = np.stack([monotone_slopes(long, Y), np.append(monotone_slopes(short[:3], y[:3]), [0, 0])])
    both = pieces(knots, last, np.stack([Y, y])[None, None], slopes[None, None], ends, ends)
    at = np.array([[0.3, 0.3], [2.7, 1.9], [8.0, 2.5]])
    found = value(*both.find(at))
    assert found[:, 0] == pytest.approx(read(curve(long, Y), at[:, 0]))
    assert found[:2, 1] == pytest.approx(read(curve(short[:3], y[:3]), at[:2, 1]))
    assert found[2, 1] == 0.5
    assert both.beyond(at).tolist() == [[False, False], [False, False], [True, True]]
