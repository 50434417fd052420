"""Pumps in their place: with the NPSH that is there, and no more flow than reaches them."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.displacement import machine as gear
from tests.pumps import RADIAL, STEADY, across, far_and_wide, machine, pumps

from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.check import CheckValves
from loadfirst.physics.law import column
from loadfirst.physics.starved import (
    PLENTY,
    DryDisplacement,
    SoleMachines,
    StarvedMachines,
    lacking,
    unfilled,
)
from loadfirst.physics.suction import Suction


def starved(pump: PumpCurve = RADIAL, available: float = PLENTY) -> StarvedMachines:
    """One pump on a motor that holds its speed."""
    return StarvedMachines.of(machine(pump, STEADY), column(available))


@given(pumps(), st.floats(-20, 60))
def test_in_its_place_no_pump_gains_head_with_flow(pump: PumpCurve, available: float) -> None:
    """Any maker's points, falling NPSH too, with any NPSH available; finite everywhere."""
    law = starved(pump, available)
    flow = far_and_wide(law)
    drop, slope = law.head_drop(flow)
    assert np.isfinite(drop).all() and (slope >= 0).all()
    assert (np.diff(drop[:, 0]) >= -1e-12 * np.abs(drop[1:, 0])).all()


@given(pumps(), st.floats(-5, 30), st.floats(1e-3, 50))
def test_alone_at_its_suction_line_no_pump_gains_head_with_flow(
    pump: PumpCurve, rest: float, lost: float
) -> None:
    """The NPSH falls with its own flow; `lost` at the last point. The same as with that NPSH as a number."""
    line = Suction(column(rest), CheckValves(lost / pump.last_flow**2, False), column(0.1))
    plain = machine(pump, STEADY)
    law, flow = SoleMachines.sole(plain, line), far_and_wide(plain)
    drop, slope = law.head_drop(flow)
    assert np.isfinite(drop).all() and (slope >= 0).all()
    assert (np.diff(drop[:, 0]) >= -1e-12 * np.abs(drop[1:, 0])).all()
    assert (drop == StarvedMachines.of(plain, line.available(flow)[0]).head_drop(flow)[0]).all()
    assert (law.rows(np.array([0])).head_drop(flow)[0] == drop).all()


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


def test_what_a_pump_lacks_is_missing_in_head_and_efficiency() -> None:
    """A quarter of the head lost, a quarter of the efficiency; more lost than there is makes a resistance."""
    running = machine(RADIAL, STEADY).running(across([40 / 3600]))
    less, none = lacking(running, 0.25 * running.head), lacking(running, 2 * running.head)
    assert less.head == pytest.approx(0.75 * running.head, rel=1e-14)
    assert less.efficiency == pytest.approx(0.75 * running.efficiency, rel=1e-14)
    assert none.head == pytest.approx(-running.head, rel=1e-14) and none.efficiency == 0


def test_an_unfilled_displacement_pump_works_as_against_the_same_head_but_gives_less() -> None:
    """Speed, torque and pressure are those of the filled pump at that head; flow and efficiencies are not."""
    law = gear()
    filled = law.running(across([0.9 * float(law.last_flow[0, 0])]))
    flow = across([0.3 * float(law.last_flow[0, 0])])
    lost = -law.head_drop(flow)[0] - filled.head
    short = unfilled(law, flow, lost)
    for name in ("head", "speed", "torque", "shaft_power", "pressure"):
        assert getattr(short, name) == pytest.approx(getattr(filled, name), rel=1e-9), name
    assert short.volumetric_efficiency == pytest.approx(filled.volumetric_efficiency / 3, rel=1e-9)
    assert short.efficiency == pytest.approx(filled.efficiency / 3, rel=1e-9)


def test_a_dry_displacement_pump_pushes_nothing() -> None:
    """No head at no flow, some against a flow that comes back; one with liquid is as it was."""
    law, still = gear(), across([0.0])
    dry, filled = DryDisplacement.of(law, across([1.0]) > 0), DryDisplacement.of(law, across([0.0]) > 0)
    assert dry.head_drop(still)[0] == 0 and dry.head_drop(still - 1e-6)[0] < 0
    assert filled.head_drop(still)[0] == law.head_drop(still)[0]


@given(st.floats(-1e3, 1e3))
def test_the_flow_against_any_head_is_the_inverse_of_the_law(head: float) -> None:
    """Pulling as well as pushing: stalled, running, driven, run away with."""
    law = gear()
    flow = law.flow_at(across([head]))
    assert -law.head_drop(flow)[0] == pytest.approx(head, rel=1e-9, abs=1e-6)


def test_some_of_a_batch_are_the_same_as_alone() -> None:
    """Each plant keeps its own NPSH."""
    law = StarvedMachines.of(machine(), across([1.0, 3.0, 9.0]))
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
