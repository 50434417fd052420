"""Blocked passages: a smaller pump of the same diameter."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.changed import at_ratio, check_same, check_sound
from tests.pumps import RADIAL, pumps

from loadfirst.errors import InputError
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes import blocked, trim

shares = st.floats(0, blocked.MOST)


@given(pumps(), shares)
def test_a_blocked_pump_is_a_pump(pump: PumpCurve, share: float) -> None:
    """Whatever the curve and the blockage, the law stays one."""
    check_sound(blocked.block(pump, share), pump)


@given(pumps())
def test_a_plugged_pump_is_a_pump(pump: PumpCurve) -> None:
    """Churning, but a law still."""
    check_sound(blocked.plug(pump), pump)


def test_no_blockage_changes_nothing() -> None:
    """The very same curve."""
    assert blocked.block(RADIAL, 0.0) is RADIAL


def test_against_a_shut_valve_a_blocked_pump_looks_well() -> None:
    """Head and power at no flow are as before, at any blockage."""
    for share in (0.2, 0.5, 0.9):
        changed = blocked.block(RADIAL, share)
        assert changed.shut_off_head == RADIAL.shut_off_head
        assert changed.power[0] == pytest.approx(RADIAL.power[0])


def test_well_out_on_the_curve_it_does_not() -> None:
    """At the best-efficiency flow of the sound pump: less head the more is blocked."""
    flow = 0.7 * RADIAL.best_efficiency_flow
    heads = [float(blocked.block(RADIAL, share).at([flow])[0][0]) for share in np.linspace(0, 0.45, 10)]
    assert (np.diff(heads) < 0).all()
    assert heads[-1] < 0.8 * heads[0]


def test_an_open_passage_carries_what_it_carried() -> None:
    """A third blocked: two thirds of the flow at the same head and NPSH, more than that of the power."""
    changed = blocked.block(RADIAL, 1 / 3)
    head, power, npsh = RADIAL.at([0.01])
    less_head, less_power, same_npsh = changed.at([0.01 * 2 / 3])
    assert less_head == pytest.approx(head, rel=1e-9)
    assert same_npsh == pytest.approx(npsh, rel=1e-9)
    assert 2 / 3 < float(less_power[0] / power[0]) < 1


def test_a_plugged_pump_gives_hardly_anything_and_runs_nearly_idle() -> None:
    """Pressure gone, flow gone, current low."""
    changed = blocked.plug(RADIAL)
    assert changed.shut_off_head < 0.2 * RADIAL.shut_off_head
    assert changed.last_flow < 0.05 * RADIAL.last_flow
    assert changed.power.max() < 0.5 * RADIAL.power[0]


@given(pumps(), shares, st.floats(0.7, 1.2), st.floats(0.3, 1.3))
def test_blocking_trim_and_speed_may_change_places(
    pump: PumpCurve, share: float, diameter: float, ratio: float
) -> None:
    """All scale the curve; NPSH aside, which a trim reads at other flows."""
    check_same(
        blocked.block(trim.trim(at_ratio(pump, ratio), diameter), share),
        at_ratio(trim.trim(blocked.block(pump, share), diameter), ratio),
        npsh=False,
    )


@pytest.mark.parametrize("share", [-0.1, 0.95, float("nan")])
def test_no_share_outside_its_range(share: float) -> None:
    """Refused by name; a plugged impeller is another thing."""
    with pytest.raises(InputError, match="pump.blocked"):
        blocked.block(RADIAL, share)
