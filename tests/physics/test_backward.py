"""Machines that pump backward: the law turned round, and what is left of it for want of liquid."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests import displacement
from tests.pumps import RADIAL, across, far_and_wide, machine, motors, pumps

from loadfirst.physics.backward import Backward
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.displacement import DisplacementRunning
from loadfirst.physics.law import column
from loadfirst.physics.motor import Motor

LEFT = st.sampled_from([0.0, 0.3, 1.0])


def check_monotone(law: Backward, flow: np.ndarray) -> None:
    """Finite everywhere, and the head that is taken never falls as the flow along the way rises."""
    drop, slope = law.head_drop(flow)
    assert np.isfinite([drop, slope]).all() and (slope >= 0).all()
    assert (np.diff(drop, axis=0) >= -1e-9 * np.abs(drop).max()).all()
    parts = [np.asarray(part, dtype=float) for part in law.running(flow)]
    assert all(np.isfinite(part).all() for part in parts)


@given(pumps(), motors(), LEFT)
def test_any_pump_turned_round_is_a_monotone_law(pump: PumpCurve, motor: Motor, left: float) -> None:
    """Whatever its curve, its motor and what is left of its head."""
    own = machine(pump, motor)
    check_monotone(Backward(own, column(left)), -far_and_wide(own)[::-1])


@given(displacement.pumps(), displacement.services(), LEFT)
def test_any_displacement_pump_turned_round_is_a_monotone_law(
    pump: displacement.DisplacementPump, service: displacement.Service, left: float
) -> None:
    """Likewise, past the stall on either side."""
    own = service.of(pump)
    check_monotone(Backward(own, column(left)), -displacement.far_and_wide(own)[::-1])


def test_it_does_backward_what_it_did_forward() -> None:
    """Same speed, torque and power at the flow turned round; head and its sense are turned."""
    own, flow = machine(RADIAL), across([0.0, 0.005, 0.01])
    forward, back = own.running(flow), Backward(own).running(-flow)
    for name in ("speed", "torque", "shaft_power", "efficiency", "npsh_required", "current"):
        assert getattr(back, name) == pytest.approx(getattr(forward, name), rel=1e-12)
    assert back.head == pytest.approx(-forward.head, rel=1e-12)


def test_a_displacement_pump_that_is_not_filled_has_the_torque_of_its_pressure() -> None:
    """Not that of the small flow, which filled it would have at a stall."""
    own = displacement.machine()
    flow = np.array([[0.2]]) * own.last_flow
    left = column(1e-3)
    law = Backward(own, left)
    head = float(-law.head_drop(-flow)[0][0, 0]) * -1
    running = law.running(-flow)
    assert isinstance(running, DisplacementRunning)
    filled = own.running(own.flow_at(np.array([[head]])))
    assert running.torque == pytest.approx(filled.torque)
    assert running.pressure == pytest.approx(-filled.pressure)
    assert running.volumetric_efficiency[0, 0] < 0.3 < filled.volumetric_efficiency[0, 0]  # type: ignore[attr-defined]
    assert not running.stalled.any()


def test_what_has_no_liquid_drives_the_pump_all_the_same() -> None:
    """The share counts where it gives head, not where the liquid drives it: there the law stays upright."""
    own = displacement.machine()
    beyond = -1.5 * own.last_flow
    with_none, with_all = (Backward(own, column(left)).head_drop(beyond)[0] for left in (0.0, 1.0))
    assert with_none == pytest.approx(with_all)


def test_rows_and_corners_are_those_of_its_machines() -> None:
    """Some of the plants only; corners on the other side of no flow."""
    law = Backward(displacement.machine(), np.array([[0.5], [1.0]]))
    assert law.rows(np.array([1])).left == 1.0
    assert law.corners() == pytest.approx(-displacement.machine().corners())
    assert Backward(machine(RADIAL)).corners() is None
    assert Backward(machine(RADIAL)).limit_head == pytest.approx(machine(RADIAL).shut_off_head)
