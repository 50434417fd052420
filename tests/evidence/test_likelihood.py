"""Chances of readings add up to 1; what yesterday tells of an instrument is as worked out by hand."""

from __future__ import annotations

import numpy as np
import pytest

from loadfirst.evidence.likelihood import bias, expected, shown_chance
from loadfirst.evidence.seen import Scale, Seen

SCALES = (Scale("dial", "pressure", 0.0, 10.0),)
LASTING, PASSING = 0.8, 0.2


def seen(value: float, *, keeps: bool = False) -> Seen:
    """One instrument at one plant."""
    columns = [np.array([[number]]) for number in (value, LASTING, PASSING)]
    return Seen(*columns, np.array([[keeps]]), np.array([True]))


@pytest.mark.parametrize("mean", [5.0, 9.7, 12.0, -0.1, np.nan])
def test_the_chances_of_all_that_a_dial_may_show_add_up_to_one(mean: float) -> None:
    """Its scale and both stops; of what nobody knows too."""
    shown = np.linspace(1e-9, 10 - 1e-9, 20001)
    spread, centre = np.array(0.5), np.array(mean)
    scale = np.trapezoid(np.exp(shown_chance(shown, centre, spread, SCALES[0])), shown)
    stops = np.exp(shown_chance(np.array([-np.inf, np.inf]), centre, spread, SCALES[0])).sum()
    assert scale + stops == pytest.approx(1, abs=1e-6)


def test_yesterdays_reading_tells_the_lasting_error_as_far_as_the_passing_one_lets_it() -> None:
    """Mean and variance of a normal number seen with a normal error; by hand."""
    known = bias(seen(5.0).rows(0), SCALES, np.array([[6.0], [np.nan]]))
    total = LASTING**2 + PASSING**2
    assert known.mean[0, 0] == pytest.approx(LASTING * 1.0 / total)
    assert known.variance[0, 0] == pytest.approx(PASSING**2 / total)
    assert (known.mean[1, 0], known.variance[1, 0]) == (0, 1)
    mean, spread = expected(seen(7.0), known, 0)
    assert mean[0, 0] == pytest.approx(7.0 + LASTING**2 / total)
    assert spread[0, 0] == pytest.approx((LASTING**2 * PASSING**2 / total + PASSING**2) ** 0.5)
    assert spread[1, 0] == pytest.approx(total**0.5)


@pytest.mark.parametrize(("truth", "stop"), [(9.6, np.inf), (10.5, np.inf), (14.0, np.inf), (0.3, -np.inf)])
def test_a_stop_yesterday_tells_what_a_cut_normal_number_tells(truth: float, stop: float) -> None:
    """Moments of the lasting error by quadrature over all that would have put the pointer there."""
    known = bias(seen(truth).rows(0), SCALES, np.array([[stop]]))
    error = np.linspace(-6, 6, 1201) * np.hypot(LASTING, PASSING)
    density = np.exp(-0.5 * (error / np.hypot(LASTING, PASSING)) ** 2)
    density *= truth + error >= 10 if stop > 0 else truth + error <= 0
    share = LASTING**2 / (LASTING**2 + PASSING**2)
    centre = np.average(error, weights=density) * share / LASTING
    rest = np.average((error - np.average(error, weights=density)) ** 2, weights=density)
    wide = (rest * share**2 + LASTING**2 * (1 - share)) / LASTING**2
    assert known.mean[0, 0] == pytest.approx(centre, abs=0.02)
    assert known.variance[0, 0] == pytest.approx(wide, abs=0.02)


def test_a_replaced_instrument_and_one_that_kept_its_reading_yesterday_tell_nothing() -> None:
    """Neither says anything of the error that it has today."""
    for known in (
        bias(seen(5.0).rows(0), SCALES, np.array([[6.0]]), ("dial",)),
        bias(seen(5.0, keeps=True).rows(0), SCALES, np.array([[6.0]])),
    ):
        assert (known.mean[0, 0], known.variance[0, 0]) == (0, 1)


def test_what_is_shut_off_shows_yesterdays_reading() -> None:
    """As well as it can be read; a replaced one has none to keep."""
    known = bias(seen(5.0).rows(0), SCALES, np.array([[6.0]]))
    mean, spread = expected(seen(3.0, keeps=True), known, 0)
    assert (mean[0, 0], spread[0, 0]) == (6.0, PASSING)
    fresh = bias(seen(5.0).rows(0), SCALES, np.array([[6.0]]), ("dial",))
    assert expected(seen(3.0, keeps=True), fresh, 0)[0][0, 0] == 3.0
