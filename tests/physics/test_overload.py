"""Overload relays: the longer, the less it is too much."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.overload import CLASSES, NEVER, PICK_UP, time_constant, trip

classes = st.sampled_from(list(CLASSES))


@given(classes, st.floats(0.0, 50.0), st.floats(0.0, 5.0), st.floats(0.0, 2.0))
def test_more_current_and_a_warmer_start_never_trip_later(
    trip_class: str, current: float, more: float, before: float
) -> None:
    """Finite everywhere, from 0 to two hours."""
    sooner, later = trip(current + more, trip_class, before), trip(current, trip_class, before)
    warm = trip(current, trip_class, before + 0.1)
    assert 0 <= float(sooner.after) <= float(later.after) <= NEVER
    assert float(warm.after) <= float(later.after)
    assert bool(later.trips) == (float(later.after) < NEVER)


@given(classes, st.floats(1.2, 10.0), st.floats(0.0, 1.0))
def test_the_time_is_that_of_a_body_that_warms_with_the_square_of_the_current(
    trip_class: str, current: float, before: float
) -> None:
    """Against the warming followed step by step, to 1 %."""
    tau, heat, time = time_constant(trip_class), before**2, 0.0
    step = float(trip(current, trip_class, before).after) / 4000
    while heat < PICK_UP**2 and time < 2 * NEVER:
        heat += (current**2 - heat) * step / tau
        time += step
    assert time == pytest.approx(float(trip(current, trip_class, before).after), rel=0.01)


def test_large_currents_follow_the_inverse_square() -> None:
    """Twice the current, a quarter of the time."""
    times = trip([20.0, 40.0]).after
    assert times[0] / times[1] == pytest.approx(4.0, rel=0.01)


def test_an_overload_at_runout_is_seen_before_it_trips() -> None:
    """A pump at 130 % trips in minutes, one at 110 % stays on."""
    answer = trip([1.3, 1.1], "10", 1.0)
    assert answer.trips.tolist() == [True, False]
    assert 30 < answer.after[0] < 600 and answer.after[1] == NEVER


@pytest.mark.parametrize(("current", "trip_class"), [(-1.0, "10"), (math.nan, "10"), (1.0, "15")])
def test_what_no_relay_knows_is_refused(current: float, trip_class: str) -> None:
    """Currents from 0, classes of the standard."""
    with pytest.raises(InputError, match="motor."):
        trip(np.array(current), trip_class)
