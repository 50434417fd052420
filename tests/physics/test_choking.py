"""Choked valves: the boiling throat, and the flow that its inlet leaves it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.choking import WATER_CRITICAL, critical_ratio, throat
from loadfirst.physics.law import column
from loadfirst.physics.valve import Valves

WATER = 998.2


@given(st.floats(0.0, WATER_CRITICAL), st.floats(0.0, 1.0))
def test_the_critical_ratio_falls_with_the_vapour_pressure(vapour: float, share: float) -> None:
    """From 0.96 cold to 0.68 at the critical point."""
    assert 0.68 - 1e-12 <= critical_ratio(vapour) <= critical_ratio(share * vapour) <= 0.96


@given(st.floats(0.1, 1000.0), st.floats(0.1, 1.0), st.floats(0.001, 0.1))
def test_the_way_to_the_throat_costs_the_free_drop_over_f_l_squared(
    kv: float, recovery: float, flow: float
) -> None:
    """So that a valve without recovery chokes where its own drop reaches the throat's pressure."""
    _, square = throat(kv, recovery, 2339.0, WATER)
    free = Valves(kv).head_drop(column(flow))[0]
    assert square * flow**2 == pytest.approx(free / recovery**2)


@pytest.mark.parametrize(
    ("given", "where"),
    [
        ((1.0, 1.1, 2e3, WATER), "valve.recovery"),
        ((0.0, 0.9, 2e3, WATER), "valve.kv"),
        ((1.0, 0.9, -1.0, WATER), "valve.throat_pressure"),
        ((1.0, 0.9, 1e3, 0.0), "liquid.density"),
    ],
)
def test_what_could_not_be_is_refused(given: tuple[float, ...], where: str) -> None:
    """Recovery above 1, no coefficient, less than no pressure, no density."""
    with pytest.raises(InputError, match=where):
        throat(*given)


@pytest.mark.parametrize(("vapour", "critical"), [(3e7, WATER_CRITICAL), (1e3, 0.0)])
def test_vapour_above_its_critical_pressure_is_refused(vapour: float, critical: float) -> None:
    """Nor is there a critical pressure of nothing."""
    with pytest.raises(InputError, match="liquid."):
        critical_ratio(vapour, critical)
