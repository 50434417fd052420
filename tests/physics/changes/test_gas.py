"""Gas in the liquid: little effect, marked loss, no delivery."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.changed import at_ratio, check_same, check_sound, duty
from tests.pumps import RADIAL, pumps

from loadfirst.errors import InputError
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes import blocked, gas, trim

fractions = st.floats(0, gas.MOST)


@given(pumps(), fractions)
def test_a_pump_with_gas_is_a_pump(pump: PumpCurve, fraction: float) -> None:
    """Whatever the curve and the gas, the law stays one."""
    check_sound(gas.entrain(pump, fraction), pump)


def test_the_head_factor_falls_smoothly_and_never_reaches_nought() -> None:
    """1 without gas, always falling, no corner: its slope has no step."""
    fraction = np.linspace(0, gas.MOST, 3001)
    factor = np.array([gas.head_factor(a) for a in fraction])
    assert factor[0] == 1 and (np.diff(factor) < 0).all() and factor[-1] > 0
    slope = np.diff(factor) / np.diff(fraction)
    assert np.abs(np.diff(slope)).max() < 0.01 * np.abs(slope).max()


def test_no_gas_changes_nothing() -> None:
    """The very same curve."""
    assert gas.entrain(RADIAL, 0.0) is RADIAL


def test_pressure_flow_and_power_fall_together() -> None:
    """On a load with a lift, the more the more gas."""
    duties = np.array([duty(gas.entrain(RADIAL, a), 12.0, 1.2e5) for a in np.linspace(0, 0.06, 13)])
    assert (np.diff(duties, axis=0) < 0).all()


def test_the_pressure_is_that_of_the_mixture() -> None:
    """In metres of liquid: the factor and the lighter column; flow counted as liquid."""
    changed = gas.entrain(RADIAL, 0.05)
    assert changed.head == pytest.approx(0.95 * gas.head_factor(0.05) * RADIAL.head)
    assert changed.flow == pytest.approx(0.95 * RADIAL.flow)
    assert (changed.power < 0.95 * RADIAL.power).all()


def test_an_impeller_full_of_gas_still_churns() -> None:
    """Power never falls below its share, and the efficiency is lost."""
    changed = gas.entrain(RADIAL, 0.3)
    assert (changed.power > 0.7 * gas.CHURNING * RADIAL.power).all()
    assert changed.best_efficiency < 0.01


@given(pumps(), fractions, st.floats(0, 0.9), st.floats(0.7, 1.2), st.floats(0.3, 1.3))
def test_gas_blocking_trim_and_speed_may_change_places(
    pump: PumpCurve, fraction: float, share: float, diameter: float, ratio: float
) -> None:
    """All scale the curve; NPSH aside, which a trim reads at other flows."""
    check_same(
        gas.entrain(blocked.block(trim.trim(at_ratio(pump, ratio), diameter), share), fraction),
        at_ratio(trim.trim(blocked.block(gas.entrain(pump, fraction), share), diameter), ratio),
        npsh=False,
    )


@pytest.mark.parametrize("fraction", [-0.01, 0.4, float("nan")])
def test_no_fraction_outside_its_range(fraction: float) -> None:
    """Refused by name."""
    with pytest.raises(InputError, match="liquid.gas"):
        gas.entrain(RADIAL, fraction)


def test_what_the_statement_is_not_for_is_noted() -> None:
    """Above 10 % of gas; nothing is said where there is none."""
    assert gas.notes(RADIAL, 0.0) == () and gas.notes(RADIAL, 0.05) == ()
    assert [note.limit for note in gas.notes(RADIAL, 0.2)] == ["fraction"]
