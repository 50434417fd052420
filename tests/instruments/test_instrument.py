"""A sound instrument passes the truth on, as far as its scale reaches."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.instruments.instrument import Chance, Instrument
from loadfirst.instruments.scales import ammeter_scale
from loadfirst.instruments.uncertainty import reading_limit
from loadfirst.plant.scales import STEPS, next_scale

DIAL = Instrument("gauge", "pressure", -1e5, 5e5, span_percent=1.6)


@given(st.floats(-1e5, 5e5))
def test_within_the_scale_the_truth_is_shown_as_it_is(truth: float) -> None:
    """No error is invented; how far it may be off is told beside it."""
    reading = DIAL.show(truth)
    assert (reading.value, reading.off_scale) == (truth, None)
    assert reading.accuracy == pytest.approx(0.016 * 6e5)


@pytest.mark.parametrize(("truth", "end", "off"), [(-2e5, -1e5, "low"), (9e5, 5e5, "high")])
def test_beyond_the_scale_the_pointer_rests_on_its_stop(truth: float, end: float, off: str) -> None:
    """The value is the end of the scale, and marked: nobody can tell how far beyond the truth is."""
    reading = DIAL.show(truth)
    assert (reading.value, reading.off_scale) == (end, off)


@pytest.mark.parametrize(("past", "off"), [(0.0, None), (0.99, None), (1.01, "low")])
def test_only_what_the_instrument_could_tell_counts_as_off_the_scale(past: float, off: str | None) -> None:
    """Within its own error beyond the stop, a sound dial might stand at the stop by itself."""
    reading = DIAL.show(-1e5 - past * 0.016 * 6e5)
    assert (reading.value, reading.off_scale) == (-1e5, off)


def test_nothing_to_measure_shows_nothing() -> None:
    """Not a zero: a zero is a reading."""
    reading = DIAL.show(None)
    assert (reading.value, reading.accuracy, reading.off_scale) == (None, None, None)
    assert (reading.low, reading.high) == (-1e5, 5e5)


def test_errors_of_span_and_of_reading_add_up() -> None:
    """A meter may be specified both ways at once."""
    meter = Instrument("meter", "flow", 0.0, 10.0, span_percent=1.0, reading_percent=2.0)
    assert meter.show(5.0).accuracy == pytest.approx(0.1 + 0.1)


def test_an_error_in_per_cent_of_the_reading_has_no_sign() -> None:
    """Greatest error either way, also of a reading below zero."""
    assert reading_limit(0.1, -2950) == pytest.approx(2.95)


@given(st.floats(1e-3, 1e5))
def test_a_usual_scale_reaches_far_enough_and_not_much_farther(least: float) -> None:
    """The next of 1, 1.5, 2.5, 4, 6 in its decade."""
    end = next_scale(least)
    assert least * (1 - 1e-9) <= end <= least * (5 / 3) * (1 + 1e-9)
    mantissa = end / 10 ** math.floor(math.log10(end) + 1e-9)
    assert any(mantissa == pytest.approx(step) for step in STEPS)


def test_an_ammeter_reaches_half_as_far_again_as_the_rated_current() -> None:
    """14 A on the name plate: 21 A at least, so 25 A. At 10 A the end of a usual scale is met exactly."""
    assert ammeter_scale(14.0) == 25.0
    assert [ammeter_scale(rated) for rated in (9.99, 10.0, 10.01)] == [15.0, 15.0, 25.0]


def test_a_bare_instrument_says_what_it_senses() -> None:
    """Beyond both ends, its error still that of the scale's end, and no chance in it, which a seed draws."""
    bare = Chance(seed=4, bare=True)
    for truth in (-1e5, 2e5, 9e5):
        reading, usual = DIAL.show(truth, chance=bare, noise=1e3), DIAL.show(truth, noise=1e3)
        assert reading.value == truth
        assert (reading.accuracy, reading.uncertainty) == (usual.accuracy, usual.uncertainty)
        assert reading.off_scale is None
    assert DIAL.show(2e5, chance=Chance(seed=4), noise=1e3).value != 2e5
