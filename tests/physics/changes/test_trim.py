"""Another diameter: the rule, its neighbours and its limits."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.changed import at_ratio, check_same, check_sound
from tests.pumps import RADIAL, pumps

from loadfirst.errors import InputError
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes import trim

diameters = st.floats(trim.LEAST, trim.MOST)


@given(pumps(), diameters)
def test_a_trimmed_pump_is_a_pump(pump: PumpCurve, diameter: float) -> None:
    """Whatever the curve and the trim, the law stays one."""
    check_sound(trim.trim(pump, diameter), pump)


def test_the_full_diameter_changes_nothing() -> None:
    """The very same curve."""
    assert trim.trim(RADIAL, 1.0) is RADIAL


def test_a_smaller_impeller_gives_less_of_everything_at_the_same_efficiency() -> None:
    """Flow, head and power at the best point; the efficiency goes along."""
    small = trim.trim(RADIAL, 0.9)
    assert small.best_efficiency == pytest.approx(RADIAL.best_efficiency, rel=1e-9)
    assert small.best_efficiency_flow == pytest.approx(0.9 * RADIAL.best_efficiency_flow, rel=1e-6)
    assert small.best_efficiency_head == pytest.approx(0.81 * RADIAL.best_efficiency_head, rel=1e-6)


def test_required_npsh_stays_what_it_was_at_each_flow() -> None:
    """The inlet is untouched: at the trimmed points the curve of before is read."""
    small = trim.trim(RADIAL, 0.85)
    assert small.npsh_required == pytest.approx(RADIAL.at(small.flow)[2], rel=1e-12)


def test_required_npsh_goes_on_where_a_larger_impeller_leads_beyond_the_curve() -> None:
    """Along a straight line, not falling."""
    large = trim.trim(RADIAL, 1.1)
    beyond = large.flow[-1] - RADIAL.last_flow
    assert large.npsh_required[-1] == pytest.approx(
        RADIAL.npsh_required[-1] + RADIAL.slopes[2, -1] * beyond, rel=1e-12
    )


@given(pumps(), diameters, st.floats(0.3, 1.3))
def test_trim_and_speed_may_change_places(pump: PumpCurve, diameter: float, ratio: float) -> None:
    """Both move points along parabolas; required NPSH belongs to the flow and to the speed."""
    check_same(
        trim.trim(at_ratio(pump, ratio), diameter),
        at_ratio(trim.trim(pump, diameter), ratio),
        within=1e-8,
    )


def test_two_trims_are_one() -> None:
    """0.9 of 0.9 is 0.81, NPSH aside, which is read from the curve in between."""
    check_same(trim.trim(trim.trim(RADIAL, 0.9), 0.9), trim.trim(RADIAL, 0.81), npsh=False)


@pytest.mark.parametrize(("diameter", "noted"), [(1.0, 0), (0.85, 0), (0.8, 0), (0.75, 1), (1.15, 1)])
def test_large_trims_are_noted(diameter: float, noted: int) -> None:
    """Below 80 % and well above the curve's own diameter the rule is no longer good."""
    assert len(trim.notes(diameter)) == noted


@pytest.mark.parametrize("diameter", [0.5, 2.0, float("nan"), -1.0])
def test_no_pump_is_trimmed_to_nothing(diameter: float) -> None:
    """Refused by name."""
    with pytest.raises(InputError, match="pump.diameter"):
        trim.trim(RADIAL, diameter)


def test_head_falls_more_than_flow() -> None:
    """One tenth off: a tenth of the flow, a fifth of the head, a quarter of the power."""
    small = trim.trim(RADIAL, 0.9)
    part = np.array([small.flow[-1] / RADIAL.last_flow, small.head[0] / RADIAL.head[0]])
    assert part == pytest.approx([0.9, 0.81])
