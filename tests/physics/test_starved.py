"""Pumps in their place: with the NPSH that is there, and no more flow than reaches them."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import RADIAL, STEADY, across, far_and_wide, machine, pumps

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.law import SHUT, column
from loadfirst.physics.starved import PLENTY, WITHOUT_END, StarvedMachines


def starved(
    pump: PumpCurve = RADIAL, available: float = PLENTY, most: float = WITHOUT_END
) -> StarvedMachines:
    """One pump on a motor that holds its speed."""
    return StarvedMachines.of(machine(pump, STEADY), column(available), column(most))


@given(pumps(), st.floats(-20, 60), st.floats(0, 3))
def test_in_its_place_no_pump_gains_head_with_flow(pump: PumpCurve, available: float, most: float) -> None:
    """Any maker's points, falling NPSH too, with any NPSH available and any cliff; finite everywhere."""
    law = starved(pump, available, most * pump.last_flow)
    flow = far_and_wide(law)
    drop, slope = law.head_drop(flow)
    assert np.isfinite(drop).all() and (slope >= 0).all()
    assert (np.diff(drop[:, 0]) >= -1e-12 * np.abs(drop[1:, 0])).all()


@given(pumps())
def test_with_plenty_of_npsh_it_is_the_same_pump_to_the_last_digit(pump: PumpCurve) -> None:
    """Head, slope, and everything else that runs."""
    plain, placed = machine(pump, STEADY), starved(pump)
    flow = far_and_wide(plain)
    assert (placed.head_drop(flow)[0] == plain.head_drop(flow)[0]).all()
    assert (placed.head_drop(flow)[1] == plain.head_drop(flow)[1]).all()
    for before, after in zip(plain.running(flow), placed.running(flow), strict=True):
        assert (before == after).all()


def test_where_available_is_required_npsh_three_per_cent_are_gone() -> None:
    """At 40 m³/h on a maker's point: 0.97 of the head, and of the efficiency."""
    plain = machine(RADIAL, STEADY)
    flow = across([40 / 3600])
    running = plain.running(flow)
    placed = starved(available=float(running.npsh_required[0, 0])).running(flow)
    assert placed.head == pytest.approx(0.97 * running.head, rel=1e-12)
    assert placed.efficiency == pytest.approx(0.97 * running.efficiency, rel=1e-12)
    assert placed.torque == running.torque and placed.npsh_required == running.npsh_required


def test_no_more_flows_than_the_suction_lets_through() -> None:
    """Beyond the edge the curve is a cliff, as steep as anything shut."""
    law = starved(most=0.01)
    at, beyond = law.head_drop(across([0.01, 0.01 + 1e-9]))[0][:, 0]
    assert beyond - at == pytest.approx(1e-9 * SHUT, rel=1e-6)
    assert law.corners() == 0.01 and not law.shut(across([0.02])).any()


def test_some_of_a_batch_are_the_same_as_alone() -> None:
    """Each plant keeps its own NPSH and its own edge."""
    law = StarvedMachines.of(machine(), across([1.0, 3.0, 9.0]), across([0.01, 0.02, 0.03]))
    flow = across([0.012, 0.009])
    assert (
        law.rows(np.array([2, 0])).head_drop(flow)[0] == law.head_drop(across([0.009, 0, 0.012]))[0][[2, 0]]
    ).all()


def test_a_falling_npsh_curve_counts_by_its_rising_envelope() -> None:
    """Required 3 m at no flow, 2 m at most in the middle: with 2.5 m the head is short at no flow already."""
    pump = PumpCurve.from_points(
        RADIAL.speed, RADIAL.flow, RADIAL.head, [3.0, 2.0, 1.8, 1.8, 2.2, 3.0, 4.2], power=RADIAL.power
    )
    flow = across([0.0, 20 / 3600])
    plain, placed = machine(pump, STEADY).running(flow), starved(pump, 2.5).running(flow)
    share = (placed.head / plain.head)[:, 0]
    assert share[0] < 0.6 and share[1] == pytest.approx(share[0], rel=1e-12)
