"""Pumps that stand still, held against the complete characteristics of a radial pump."""

from __future__ import annotations

from math import atan2, hypot, pi

import numpy as np
import pytest

from loadfirst.physics.standing import BACKWARD, FORWARD, TURNS_BACKWARD

# Wylie and Streeter, "Fluid Transients", radial pump, quadrant x = π + atan(q/n): from x = 0 in steps of π/44
# (from memory). Head and torque over (flow² + speed²), each over that of the best point.
HEAD = (0.634, 0.643, 0.646, 0.640, 0.629, 0.613, 0.595, 0.575, 0.552, 0.533)
TORQUE = (-0.684, -0.547, -0.414, -0.292, -0.187, -0.105, -0.053, -0.012, 0.042, 0.097)


def test_backward_without_torque_head_and_speed_are_those_of_the_complete_characteristics() -> None:
    """Where the table's torque is nought: 2.3 of head per flow squared, turning 1.8 per flow; two digits."""
    x = np.arange(len(HEAD)) * pi / 44
    at = float(np.interp(0.0, TORQUE, x))
    flow, speed = -np.sin(at), -np.cos(at)
    assert atan2(flow, speed) + pi == pytest.approx(at)
    assert hypot(flow, speed) == pytest.approx(1)
    assert float(np.interp(at, x, HEAD)) / flow**2 == pytest.approx(BACKWARD, abs=0.05)
    assert speed / flow == pytest.approx(TURNS_BACKWARD, abs=0.05)


def test_forward_the_loss_is_a_third_to_a_half_of_the_head() -> None:
    """Common practice, no source: held only to what it says."""
    assert 1 / 3 <= FORWARD <= 1 / 2
