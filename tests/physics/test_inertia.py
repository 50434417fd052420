"""What resists a change of speed."""

from __future__ import annotations

import numpy as np
import pytest

from loadfirst.physics.inertia import RigidColumns, inertance, motor_inertia, pump_inertia
from loadfirst.physics.pipe import Pipes
from loadfirst.units import RPM, G

PIPES = Pipes([[100.0, 4.0]], [[0.1, 0.05]], 5e-5, [[3.0, 0.0]], 1e-6)


def test_the_inertance_is_that_of_a_body_of_liquid() -> None:
    """ρ L A dv/dt = ρ g A h: a column of 100 m takes 10.2 m of head for 1 m/s²."""
    area = np.pi / 4 * 0.1**2
    assert float(inertance(100.0, 0.1)) * area * 1.0 == pytest.approx(100.0 / G)


@pytest.mark.parametrize("steep", [0.0, 1.0, 1e9])
def test_the_law_rises_however_short_the_step(steep: float) -> None:
    """So that a network of rigid columns has one answer."""
    flow = np.linspace(-0.1, 0.1, 401)[:, None] * np.ones((1, 2))
    drop, slope = RigidColumns.of(PIPES, [[steep, 0.0]], [[0.01, 0.0]]).head_drop(flow)
    assert (np.diff(drop, axis=0) >= 0).all() and (slope >= 0).all()


def test_drop_is_loss_and_acceleration() -> None:
    """And nothing else; at the flow of the beginning the loss alone."""
    column, flow = RigidColumns.of(PIPES, 500.0, 0.01), np.array([[0.02, 0.01]])
    friction, fittings = PIPES.breakdown(flow)
    assert column.head_drop(flow)[0] == pytest.approx(friction + fittings + column.acceleration(flow))
    assert column.acceleration(flow) == pytest.approx(np.array([[5.0, 0.0]]))
    some = column.rows(np.array([0, 0]))
    assert some.head_drop(np.repeat(flow, 2, axis=0))[0][1] == pytest.approx(column.head_drop(flow)[0][0])


def test_typical_inertias_are_of_the_size_of_real_machines() -> None:
    """Two-pole motors of 5.5 kW: 0.01 to 0.02 kg·m²; four-pole of 55 kW: 0.4 to 0.8 (common practice)."""
    assert 0.005 < float(motor_inertia(5500, 2900 * RPM)) < 0.02
    assert 0.3 < float(motor_inertia(55e3, 1475 * RPM)) < 1.0
    assert float(pump_inertia(5500, 2900 * RPM)) < float(motor_inertia(5500, 2900 * RPM))
