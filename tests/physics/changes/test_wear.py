"""Worn rings: the same impeller, part of its flow going round inside."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.changed import at_ratio, check_same, check_sound, duty, machine_heads
from tests.pumps import RADIAL, pumps

from loadfirst.errors import InputError
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes import trim, wear

shares = st.floats(0, wear.MOST)


def worn(pump: PumpCurve, share: float) -> PumpCurve:
    """A pump whose rings lose a share of its best-efficiency flow."""
    return wear.wear(pump, wear.leakage(pump, share))


@given(pumps(), shares)
def test_a_worn_pump_is_a_pump(pump: PumpCurve, share: float) -> None:
    """Whatever the curve and the wear, the law stays one."""
    check_sound(worn(pump, share), pump)


@given(pumps(), shares)
def test_at_the_same_head_a_worn_pump_gives_less_by_the_leakage_and_takes_the_same_power(
    pump: PumpCurve, share: float
) -> None:
    """Each point: net flow plus k √H is a flow of the impeller, whose head and power it has."""
    k = wear.leakage(pump, share)
    changed = wear.wear(pump, k)
    inside = changed.flow + k * np.sqrt(changed.head)
    head, power, npsh = pump.at(inside)
    near = 1e-6  # of the scale: a steep curve turns the rounding of the flow into head
    assert changed.head == pytest.approx(head, rel=near, abs=near * pump.shut_off_head)
    assert changed.power == pytest.approx(power, rel=near, abs=near * pump.power.max())
    assert changed.npsh_required == pytest.approx(npsh, rel=near, abs=near * pump.npsh_required.max())


def test_the_share_is_that_of_the_flow_at_best_efficiency() -> None:
    """At the head of the best point a tenth of the best flow is missing."""
    changed = worn(RADIAL, 0.1)
    flow = np.linspace(0, changed.last_flow, 40_001)
    there = flow[int(np.argmin(np.abs(changed.at(flow)[0] - RADIAL.best_efficiency_head)))]
    assert there == pytest.approx(0.9 * RADIAL.best_efficiency_flow, rel=2e-3)


def test_against_a_shut_valve_wear_hardly_shows() -> None:
    """A tenth of the flow lost costs less than 1 % of the shut-off head: a gauge cannot tell."""
    changed = worn(RADIAL, 0.1)
    assert 0.99 < changed.shut_off_head / RADIAL.shut_off_head < 1
    assert changed.power[0] > RADIAL.power[0]


def test_the_answer_is_continuous_in_the_wear() -> None:
    """No wear is the same curve; a little wear is a little change, no point ever leaves."""
    assert worn(RADIAL, 0.0) is RADIAL
    flow = np.linspace(0, 0.8 * RADIAL.last_flow, 50)
    heads = np.array([worn(RADIAL, share).at(flow)[0] for share in np.linspace(0, 0.3, 61)])
    steps = -np.diff(heads, axis=0)
    assert (steps > -1e-3).all()
    assert steps.max() < 0.02 * RADIAL.shut_off_head


def test_between_the_points_the_curve_is_the_moved_one() -> None:
    """The cubics through the moved points stay within 0.3 % of the head of the moved curve."""
    k = wear.leakage(RADIAL, 0.1)
    changed = wear.wear(RADIAL, k)
    inside = np.linspace(0.1 * RADIAL.last_flow, RADIAL.last_flow, 200)
    head = RADIAL.at(inside)[0]
    flow = inside - k * np.sqrt(head)
    here = flow > 0
    assert changed.at(flow[here])[0] == pytest.approx(head[here], abs=0.003 * RADIAL.shut_off_head)


@given(pumps(), shares, st.floats(0.3, 1.3))
def test_wear_and_speed_may_change_places(pump: PumpCurve, share: float, ratio: float) -> None:
    """The leakage goes with the speed as every flow does."""
    k = wear.leakage(pump, share)
    check_same(wear.wear(at_ratio(pump, ratio), k), at_ratio(wear.wear(pump, k), ratio), within=1e-6)


def test_wear_and_the_machine_may_change_places() -> None:
    """On a motor that holds 3000 1/min a worn pump is the moved pump, worn: the machine's own curve."""
    k, ratio = wear.leakage(RADIAL, 0.15), 3000 / 2900
    flow = np.linspace(0, 0.9 * RADIAL.last_flow, 40)
    moved = at_ratio(RADIAL, ratio)
    assert machine_heads(wear.wear(RADIAL, k), flow) == pytest.approx(
        wear.wear(moved, k).at(flow)[0], rel=1e-9
    )


def test_wear_and_trim_may_change_places() -> None:
    """The same rings, the same leakage: √H goes with the diameter as the flow does; NPSH aside."""
    k = wear.leakage(RADIAL, 0.1)
    check_same(
        wear.wear(trim.trim(RADIAL, 0.9), k),
        trim.trim(wear.wear(RADIAL, k), 0.9),
        npsh=False,
    )


@given(pumps(), st.floats(0, 1e3))
def test_even_absurd_leakage_leaves_a_pump(pump: PumpCurve, times: float) -> None:
    """Held where a tenth of the last flow gets out."""
    k = times * pump.last_flow / math.sqrt(pump.shut_off_head)
    check_sound(wear.wear(pump, k), pump)


def test_on_a_load_a_worn_pump_gives_less_flow_and_less_head() -> None:
    """Both fall: wear is not a heavier load, where one rises."""
    static, k = 15.0, 1.2e5
    new, old = duty(RADIAL, static, k), duty(worn(RADIAL, 0.1), static, k)
    assert old[0] < new[0] and old[1] < new[1] and old[2] > new[2]


@pytest.mark.parametrize("share", [-0.1, 0.6, float("nan")])
def test_no_share_outside_its_range(share: float) -> None:
    """Refused by name."""
    with pytest.raises(InputError, match="pump.wear"):
        wear.leakage(RADIAL, share)


def test_no_negative_leakage() -> None:
    """Refused by name, NaN too."""
    for k in (-1e-6, float("nan")):
        with pytest.raises(InputError, match="pump.wear"):
            wear.wear(RADIAL, k)


@given(st.floats(0, 0.5))
def test_worn_rings_never_make_a_pump_better(share: float) -> None:
    """The efficiency at every flow is at most that of the new pump at the impeller's flow."""
    changed = worn(RADIAL, share)
    assert changed.best_efficiency <= RADIAL.best_efficiency * (1 + 1e-9)
