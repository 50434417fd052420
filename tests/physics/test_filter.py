"""Filters: laminar in the medium, square in the housing."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.filter import Filters, medium_resistance
from loadfirst.physics.law import column
from loadfirst.units import G


def drop(flow: float, **given: float) -> float:
    """Head lost in one filter. [m]"""
    return float(
        Filters(**{"resistance": 1e10, "fouling": 0.0, "viscosity": 1e-6, **given}).head_drop(column(flow))[
            0
        ][0, 0]
    )


@given(st.floats(1e3, 1e5), st.floats(1e-4, 0.1), st.floats(5e-4, 0.5), st.floats(500.0, 1500.0))
def test_a_filter_known_by_one_drop_has_that_drop(
    pressure: float, flow: float, thick: float, density: float
) -> None:
    """Resistance from pressure, flow and viscosity, and back as a head."""
    resistance = medium_resistance(pressure, flow, thick)
    head = Filters(resistance, 0.0, thick / density).head_drop(column(flow))[0]
    assert float(head[0, 0]) * density * G == pytest.approx(pressure)


def test_cake_as_resistant_as_the_medium_doubles_the_drop() -> None:
    """Fouling 1, no housing."""
    assert drop(0.01, fouling=1.0) == pytest.approx(2 * drop(0.01))


def test_cold_oil_looks_like_fouling() -> None:
    """Ten times the viscosity and a fouling of 9 cost the same; the gauge cannot tell."""
    assert drop(0.01, viscosity=1e-5) == pytest.approx(drop(0.01, fouling=9.0))


def test_the_housing_adds_a_square() -> None:
    """And is not touched by fouling."""
    added = [drop(0.01, k_head=2e4, fouling=f) - drop(0.01, fouling=f) for f in (0.0, 5.0)]
    assert added == pytest.approx([2.0, 2.0])


def test_it_is_the_same_both_ways_and_never_shut() -> None:
    """No corner, no steep line."""
    law = Filters(1e10, 3.0, 1e-6, 1e4)
    assert law.head_drop(column(-0.01))[0] == -law.head_drop(column(0.01))[0]
    assert law.corners() is None and not law.shut(np.array([[0.01], [-0.01]])).any()


@pytest.mark.parametrize(
    "given", [{"resistance": -1.0}, {"fouling": -0.1}, {"viscosity": 0.0}, {"k_head": -1.0}]
)
def test_a_filter_that_could_not_be_is_refused(given: dict[str, float]) -> None:
    """Each number has its range."""
    with pytest.raises(InputError, match="filter."):
        drop(0.01, **given)


@pytest.mark.parametrize("given", [(-1.0, 1.0, 1.0), (1.0, 0.0, 1.0), (1.0, 1.0, 0.0)])
def test_a_drop_that_was_never_measured_is_refused(given: tuple[float, float, float]) -> None:
    """Neither without flow nor without viscosity."""
    with pytest.raises(InputError, match="filter."):
        medium_resistance(*given)
