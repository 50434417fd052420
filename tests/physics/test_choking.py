"""Choked valves, and places that let no more than a flow through."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.choking import WATER_CRITICAL, choked_drop, critical_ratio, flow_at_drop
from loadfirst.physics.flow_limit import FlowLimits
from loadfirst.physics.law import Array, column
from loadfirst.physics.network import Element, Network, solve
from loadfirst.physics.root import rising_root
from loadfirst.physics.valve import Valves
from loadfirst.units import ATMOSPHERE, G

WATER, VAPOUR = 998.2, 2339.0


@given(st.floats(0.0, WATER_CRITICAL), st.floats(0.0, 1.0))
def test_the_critical_ratio_falls_with_the_vapour_pressure(vapour: float, share: float) -> None:
    """From 0.96 cold to 0.68 at the critical point."""
    assert 0.68 - 1e-12 <= critical_ratio(vapour) <= critical_ratio(share * vapour) <= 0.96


@given(st.floats(0.0, 1e7), st.floats(0.0, 1e6), st.floats(0.1, 1.0), st.floats(0.0, 1e5))
def test_the_choked_drop_grows_with_the_pressure_before_and_falls_with_heat(
    before: float, more: float, recovery: float, vapour: float
) -> None:
    """Never negative; never all of the pressure before."""
    low, high = choked_drop(before, vapour, recovery), choked_drop(before + more, vapour, recovery)
    assert 0 <= low <= high <= before + more
    assert choked_drop(before, vapour + 1000.0, recovery) <= low


@given(st.floats(0.1, 1000.0), st.floats(0.0, 1e6), st.floats(500.0, 1500.0))
def test_the_flow_at_a_drop_is_that_of_the_valves_law(kv: float, drop: float, density: float) -> None:
    """The two ways to say the same."""
    flow = flow_at_drop(kv, drop, density)
    assert Valves(kv).head_drop(column(flow))[0] * density * G == pytest.approx(column(drop))


def test_lowering_the_pressure_behind_a_choked_valve_brings_no_more_flow() -> None:
    """A valve and its limit in series: beyond the choked drop the answer stands still."""
    kv, before = 40.0, 30.0  # [m³/h], [m] gauge head before the valve
    drop = choked_drop(ATMOSPHERE + WATER * G * before, VAPOUR, 0.6)
    most = flow_at_drop(kv, drop, WATER)
    elements = (
        Element("valve", "before", "throat", "valve", 0),
        Element("limit", "throat", "behind", "limit", 0),
    )
    behind = np.array([25.0, 20.0, 10.0, 0.0, -9.0])
    laws = {"valve": Valves(kv), "limit": FlowLimits(most)}
    network = Network(elements, laws, {"before": np.array([before]), "behind": behind})
    flow = solve(network, 40.0, 0.02).flow["limit"]
    free = flow_at_drop(kv, WATER * G * (before - behind), WATER)
    assert flow == pytest.approx(np.minimum(free, most), rel=1e-6)
    assert free[1] < most < free[3]


@given(st.floats(5.0, 60.0), st.floats(1e3, 1e5), st.floats(1.0, 100.0))
def test_with_everything_upstream_given_one_flow_equals_its_own_limit(
    supply: float, square: float, kv: float
) -> None:
    """Pressure before the valve falls with flow, and so does the limit: one crossing, as its formula says."""

    def limit(flow: Array) -> Array:
        pressure = ATMOSPHERE + WATER * G * (supply - square * flow**2)
        return flow_at_drop(kv, choked_drop(pressure, VAPOUR), WATER)

    found, left = rising_root(lambda q: q - limit(q), column(0.0), column(1.0))
    per = (kv / 3600) ** 2 * 999.1 / WATER / 1e5 * 0.81  # flow² per Pa
    head = ATMOSPHERE + WATER * G * supply - float(critical_ratio(VAPOUR)) * VAPOUR
    wanted = np.sqrt(per * head / (1 + per * WATER * G * square))
    assert float(found[0, 0]) == pytest.approx(float(wanted), rel=1e-8)


def test_a_limit_costs_nothing_below_and_holds_above() -> None:
    """Its corner is the limit; backward it is open."""
    law = FlowLimits(0.01)
    drop, slope = law.head_drop(np.array([[-0.5], [0.0], [0.0099], [0.0101]]))
    assert drop[:3, 0].tolist() == [0.0, 0.0, 0.0] and slope[:3, 0].tolist() == [0.0, 0.0, 0.0]
    assert drop[3, 0] == pytest.approx(1e6) and law.corners().tolist() == [[0.01]]
    assert law.shut(np.array([[0.0101], [0.0099]]))[:, 0].tolist() == [True, False]


def test_what_could_not_be_is_refused() -> None:
    """Recovery above 1, vapour above its critical pressure, negative flows, drops and coefficients."""
    for wrong in (
        lambda: choked_drop(1e5, 2e3, 1.1),
        lambda: critical_ratio(3e7),
        lambda: critical_ratio(1e3, 0.0),
        lambda: flow_at_drop(-1.0, 1e5, 1000.0),
        lambda: flow_at_drop(1.0, -1e5, 1000.0),
        lambda: flow_at_drop(1.0, 1e5, 0.0),
        lambda: FlowLimits(-1e-3),
    ):
        with pytest.raises(InputError):
            wrong()
