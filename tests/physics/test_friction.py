"""The friction factor as a function: exact, smooth and always costing more for more flow."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.physics.friction import LAMINAR_BELOW, STILL, TURBULENT_ABOVE, darcy_factor

ROUGHNESS = np.concatenate([[0.0], np.geomspace(1e-7, 0.05, 60)])


def test_the_turbulent_factor_solves_colebrook_white_exactly() -> None:
    """Against a fixed-point iteration run to the end: less than 1e-12 off over the whole Moody chart."""
    reynolds, roughness = np.meshgrid(np.geomspace(TURBULENT_ABOVE, 1e8, 120), ROUGHNESS)
    root = np.full_like(reynolds, 5.0)  # 1/√f
    for _ in range(60):
        root = -2 * np.log10(roughness / 3.7 + 2.51 * root / reynolds)
    factor, _ = darcy_factor(reynolds, roughness)
    assert np.abs(factor * root**2 - 1).max() < 1e-12


@pytest.mark.parametrize("reynolds", [1e-3, 1.0, 500.0, 2000.0])
def test_laminar_flow_does_not_feel_the_wall(reynolds: float) -> None:
    """Hagen–Poiseuille, 64/Re, whatever the roughness."""
    factor, exponent = darcy_factor(np.full(ROUGHNESS.shape, reynolds), ROUGHNESS)
    assert factor == pytest.approx(np.full(ROUGHNESS.shape, 64 / reynolds), rel=1e-15)
    assert (exponent == -1).all()


def test_still_liquid_has_a_finite_factor() -> None:
    """At Re 0 and far below anything that flows, alone or beside a turbulent pipe."""
    factor, exponent = darcy_factor(np.array([0.0, 1e-300, 1e5]), np.zeros(3))
    assert factor[0] == factor[1] == 64 / STILL
    assert exponent[0] == -1
    assert np.isfinite(factor).all() and np.isfinite(exponent).all()


@pytest.mark.parametrize("seam", [LAMINAR_BELOW, TURBULENT_ABOVE])
def test_factor_and_slope_meet_at_both_ends_of_the_bridge(seam: float) -> None:
    """Just below and just above each seam the two regimes agree, for every roughness."""
    below, above = (np.full(ROUGHNESS.shape, seam * side) for side in (1 - 1e-9, 1 + 1e-9))
    factor, exponent = darcy_factor(below, ROUGHNESS)
    factor_on, exponent_on = darcy_factor(above, ROUGHNESS)
    assert factor_on == pytest.approx(factor, rel=1e-8)
    assert exponent_on == pytest.approx(exponent, abs=1e-7)


def test_more_flow_always_costs_more_head_through_the_transition() -> None:
    """f·Re² goes as the head loss: on a fine grid from 1000 to 10 000 it rises at every roughness."""
    reynolds = np.geomspace(1000.0, 10_000.0, 4001)[:, None]
    factor, exponent = darcy_factor(reynolds, ROUGHNESS[None, :])
    assert (np.diff(factor * reynolds**2, axis=0) > 0).all()
    assert (2 + exponent >= 1 - 1e-12).all()


@given(st.floats(0.1, 1e9), st.one_of(st.just(0.0), st.floats(1e-8, 0.05)))
def test_the_exponent_is_the_slope_of_the_factor(reynolds: float, roughness: float) -> None:
    """Against a central difference in the logarithms, in all three regimes."""
    step = 1e-5
    around = reynolds * np.exp([-step, 0.0, step])
    factor, exponent = darcy_factor(around, np.full(3, roughness))
    assert np.log(factor[2] / factor[0]) / (2 * step) == pytest.approx(exponent[1], abs=1e-4)


@given(st.floats(TURBULENT_ABOVE, 1e8), st.floats(1e-7, 0.04))
def test_a_rougher_wall_never_costs_less(reynolds: float, roughness: float) -> None:
    """In turbulent flow."""
    factor, _ = darcy_factor(np.full(2, reynolds), np.array([roughness, 1.2 * roughness]))
    assert factor[1] > factor[0]


def test_a_table_of_pipes_is_the_pipes_one_by_one() -> None:
    """Regimes mixed in one array do not disturb one another."""
    reynolds = np.array([[0.0, 100.0, 2500.0, 3999.0, 4000.0, 1e6], [5e3, 3e3, 2e3, 1e-9, 1e8, 7e4]])
    factor, exponent = darcy_factor(reynolds, ROUGHNESS[None, :6])
    for at in np.ndindex(reynolds.shape):
        alone = darcy_factor(reynolds[at].reshape(1, 1), ROUGHNESS[at[1]].reshape(1, 1))
        assert factor[at] == pytest.approx(alone[0][0, 0], rel=1e-14)
        assert exponent[at] == pytest.approx(alone[1][0, 0], rel=1e-14)
