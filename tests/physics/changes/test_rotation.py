"""Turning the wrong way: forward still, but badly."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.changed import at_ratio, check_same, check_sound, duty
from tests.pumps import RADIAL, pumps

from loadfirst.errors import InputError
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes import rotation

shares = st.builds(rotation.Shares, st.floats(0.1, 1), st.floats(0.1, 1), st.floats(0.1, 1))
AXIAL = replace(RADIAL, flow=100 * RADIAL.flow)


@given(pumps(), shares)
def test_a_pump_that_turns_the_wrong_way_is_a_pump(pump: PumpCurve, left: rotation.Shares) -> None:
    """Whatever the curve and the shares, the law stays one; a propeller's then holds backward."""
    check_sound(rotation.turn_wrong(pump, left), pump)


def test_head_flow_and_efficiency_are_the_shares_of_what_they_were() -> None:
    """At the best point."""
    changed = rotation.turn_wrong(RADIAL, rotation.Shares(head=0.5, flow=0.7, efficiency=0.6))
    assert changed.best_efficiency_head == pytest.approx(0.5 * RADIAL.best_efficiency_head, rel=1e-6)
    assert changed.best_efficiency_flow == pytest.approx(0.7 * RADIAL.best_efficiency_flow, rel=1e-6)
    assert changed.best_efficiency == pytest.approx(0.6 * RADIAL.best_efficiency, rel=1e-6)


@pytest.mark.parametrize(
    "left", [rotation.Shares(0.4, 0.5, 0.35), rotation.USUAL, rotation.Shares(0.6, 0.8, 0.6)]
)
def test_pressure_and_flow_fall_together_and_the_motor_takes_less(left: rotation.Shares) -> None:
    """On a load with a lift; pressure falls far, and the flow with it."""
    right, wrong = duty(RADIAL, 8.0, 1.2e5), duty(rotation.turn_wrong(RADIAL, left), 8.0, 1.2e5)
    assert wrong[0] < right[0] and wrong[1] < 0.7 * right[1] and wrong[2] < right[2]


def test_an_axial_pump_pumps_backward_a_radial_one_forward() -> None:
    """By its specific speed: a propeller reverses the flow with its rotation."""
    assert rotation.pumps_backward(AXIAL) and not rotation.pumps_backward(RADIAL)


def test_less_radial_impellers_are_noted() -> None:
    """A mixed-flow pump may do far worse than the shares say."""
    assert rotation.notes(RADIAL) == ()
    (note,) = rotation.notes(replace(RADIAL, flow=20 * RADIAL.flow))
    assert note.limit == "specific-speed" and note.got > note.range.high


@given(pumps(), shares, st.floats(0.3, 1.3))
def test_rotation_and_speed_may_change_places(pump: PumpCurve, left: rotation.Shares, ratio: float) -> None:
    """Both scale the curve."""
    check_same(
        rotation.turn_wrong(at_ratio(pump, ratio), left), at_ratio(rotation.turn_wrong(pump, left), ratio)
    )


@pytest.mark.parametrize("name", ["head", "flow", "efficiency"])
@pytest.mark.parametrize("value", [0.0, 1.2, float("nan")])
def test_no_share_outside_its_range(name: str, value: float) -> None:
    """Refused by name."""
    with pytest.raises(InputError, match=f"pump.wrong_rotation.{name}"):
        rotation.turn_wrong(RADIAL, replace(rotation.USUAL, **{name: value}))
