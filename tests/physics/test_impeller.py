"""The shape of an impeller follows the specific speed."""

from __future__ import annotations

import pytest

from loadfirst.physics.centrifugal import specific_speed
from loadfirst.physics.impeller import AXIAL, MIXED, impeller_shape
from loadfirst.units import RPM


@pytest.mark.parametrize(("nq", "shape"), [(10, "radial"), (40, "radial"), (100, "mixed"), (250, "axial")])
def test_the_shapes_stand_in_the_order_of_the_specific_speed(nq: float, shape: str) -> None:
    """From memory, the middles of the ranges that handbooks give."""
    assert impeller_shape(nq) == shape


def test_a_boundary_belongs_to_the_mixed_flow_pump() -> None:
    """A convention of ours: at either end it is still called mixed."""
    assert impeller_shape(MIXED) == impeller_shape(AXIAL) == "mixed"
    assert impeller_shape(MIXED * 0.999) == "radial"
    assert impeller_shape(AXIAL * 1.001) == "axial"


def test_the_same_duty_at_half_the_speed_asks_for_a_more_radial_wheel() -> None:
    """Common practice: nq goes with the speed, so a slow pump is less of a propeller."""
    fast, slow = (impeller_shape(specific_speed(n * RPM, 200 / 3600, 4.5)) for n in (2900, 1450))
    assert (fast, slow) == ("axial", "mixed")
