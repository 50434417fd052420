"""What controllers settle on: at the set point, at a limit, or with an offset."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import RADIAL

from loadfirst.errors import InputError
from loadfirst.physics.control import hold
from loadfirst.physics.law import Array, column
from loadfirst.physics.machine import Machines
from loadfirst.physics.motor import Motor

STATIC, SQUARE = 15.0, 2.5e5  # [m], [s²/m⁵] a load


def flow_at_frequency(frequency: Array, static: float = STATIC) -> Array:
    """Flow of the pump against its load with a drive, (B,) [Hz] -> (B,) [m³/s]; found by halving."""
    motor = Motor.rated(7500.0, frequency=column(frequency).T)
    pump = Machines.build([[RADIAL]], motor, 998.2)
    low, high = np.zeros((len(frequency), 1)), np.full((len(frequency), 1), 0.03)
    for _ in range(60):
        middle = (low + high) / 2
        short = -pump.head_drop(middle)[0] > static + SQUARE * middle**2
        low, high = np.where(short, middle, low), np.where(short, high, middle)
    return np.asarray(low[:, 0])


@given(st.lists(st.floats(0.0, 3.0), min_size=1, max_size=6), st.booleans())
def test_the_reading_stands_at_the_set_point_and_the_output_tells_why(
    loads: list[float], falling: bool
) -> None:
    """Readings that rise or fall with the output; where the set point is out of reach a limit says so."""
    load, way = np.array(loads), -1.0 if falling else 1.0

    def readings(output: Array) -> Array:
        return np.asarray(way * (np.sqrt(output) * 4 - load))

    held = hold(way * 1.0, readings, 0.04, 1.0)
    wanted = ((1 + load) / 4) ** 2
    inside = (wanted >= 0.04) & (wanted <= 1)
    assert (held.reached | held.lost).all() and not (held.reached & held.lost).any()
    assert held.output == pytest.approx(np.clip(wanted, 0.04, 1.0), abs=1e-7)
    assert held.reading[inside] == pytest.approx(way, abs=1e-7)
    assert held.reading == pytest.approx(readings(held.output), abs=1e-12)


def test_a_drive_in_automatic_hides_a_lower_lift() -> None:
    """The flow stands still on both days; the frequency tells that the load became lighter."""
    held = [hold(0.006, lambda f, z=z: flow_at_frequency(f, z), 20.0, 50.0) for z in (15.0, 10.0)]
    assert [h.reading[0] for h in held] == pytest.approx([0.006, 0.006], rel=1e-8)
    assert held[1].output[0] < held[0].output[0] - 2
    assert all(h.reached.all() for h in held)


def test_at_full_output_control_is_lost_and_the_reading_falls() -> None:
    """A set point beyond what the pump gives: the upper limit, and less than was asked for."""
    held = hold(0.016, flow_at_frequency, 20.0, 50.0)
    assert held.at_high.all() and not held.at_low.any() and not held.reached.any()
    assert held.output[0] == 50.0
    assert held.reading[0] == pytest.approx(flow_at_frequency(np.array([50.0]))[0])


def test_at_the_lower_limit_too_much_flows() -> None:
    """A set point below what the lowest output lets through."""
    held = hold(0.2, lambda u: 1 + u, 0.1, 1.0)
    assert held.at_low.all() and held.reading[0] == pytest.approx(1.1)


def test_a_reading_that_leaps_over_the_set_point_is_neither_reached_nor_at_a_limit() -> None:
    """As at the smallest opening that a valve can control: a real loop hunts there."""
    held = hold(0.5, lambda u: np.where(u > 0, 1 + u, 0.0), 0.0, 1.0)
    assert not held.reached[0] and not held.lost[0]


def test_an_output_without_effect_ends_at_a_limit() -> None:
    """A valve that has come off its stem, say."""
    assert hold(2.0, lambda u: 1 + 0 * u, 0.0, 1.0).lost.all()


@pytest.mark.parametrize("low, high", [(1.0, 0.0), (float("nan"), 1.0)])
def test_limits_the_wrong_way_round_are_refused(low: float, high: float) -> None:
    """The lower one is named."""
    with pytest.raises(InputError, match="controller.low"):
        hold(1.0, lambda u: u, low, high)


def test_a_batch_settles_as_its_plants_one_by_one() -> None:
    """Each row has its own set point and limits."""
    wanted, high = np.array([0.004, 0.007, 0.02]), np.array([50.0, 45.0, 40.0])
    many = hold(wanted, flow_at_frequency, 20.0, high)
    for i in range(3):
        one = hold(wanted[i], flow_at_frequency, 20.0, high[i])
        assert one.output[0] == pytest.approx(many.output[i], rel=1e-8)
        assert one.at_high[0] == many.at_high[i]
