"""Head lost to cavitation: nothing, three per cent, everything."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.pumps import RADIAL, STEADY, machine, pumps

from loadfirst.physics.cavitation import head_factor, in_place, npsh_ratio, rising
from loadfirst.physics.check import CheckValves
from loadfirst.physics.law import Array, column
from loadfirst.physics.suction import Suction


def place(at_rest: float, square: float = 2e4) -> Suction:
    """One pump behind a square-law suction line of 80 mm. [m], [s²/m⁵]"""
    return Suction(column(at_rest), CheckValves(square, False), column(0.08))


def behind(suction: Suction, flow: Array) -> tuple[Array, Array]:
    """Head and slope of the ordinary pump in its place at flows within its points, and its plain head."""
    pump = machine(RADIAL, STEADY)
    drop, slope = pump.head_drop(flow)
    required = pump.running(flow).npsh_required
    step = 1e-7
    per_flow = (pump.running(flow + step).npsh_required - pump.running(flow - step).npsh_required) / (
        2 * step
    )
    return in_place(-drop, -slope, suction.available(flow), (required, per_flow))


def test_at_npsh3_three_per_cent_are_lost_and_no_more_well_above_it() -> None:
    """0.97 exactly at 1, nothing visible at 1.5, little left at 0.7, nothing at 0."""
    factor, _ = head_factor([1.0, 1.1, 1.5, 0.7, 0.0, 1e9])
    assert factor[0] == pytest.approx(0.97, rel=1e-15)
    assert 0.994 < factor[1] < 0.996 and factor[2] > 0.99999
    assert factor[3] < 0.03 and factor[4] == 0.0 and factor[5] == 1.0
    below, at = head_factor([2.0 - 1e-12, 2.0])[0]
    assert at == 1.0 and below == pytest.approx(1.0, rel=1e-15)


@given(st.floats(0.0, 2000.0), st.floats(0.0, 1.0))
def test_more_npsh_never_leaves_less_head(ratio: float, more: float) -> None:
    """Monotone, between 0 and 1, finite, and the slope says so."""
    (low, slope), (high, _) = head_factor(ratio), head_factor(ratio + more)
    assert 0 <= low <= high <= 1
    assert slope >= 0 and np.isfinite(slope)


@given(st.floats(0.3, 1.999))
def test_the_slope_is_that_of_the_factor(ratio: float) -> None:
    """Against a central difference."""
    step = 1e-6
    rise = (head_factor(ratio + step)[0] - head_factor(ratio - step)[0]) / (2 * step)
    assert float(head_factor(ratio)[1]) == pytest.approx(float(rise), rel=1e-4, abs=1e-8)


@given(st.floats(-100.0, 1e6), st.floats(0.0, 1e3))
def test_the_ratio_is_finite_for_any_two(available: float, required: float) -> None:
    """Nothing required is plenty; nothing available is nothing; nothing of both counts as nothing."""
    ratio = float(npsh_ratio(available, required))
    assert 0 <= ratio <= 1000.0000001
    if available <= 0:
        assert ratio == 0


@given(st.floats(-2.0, 12.0), st.floats(0.0, 2e5))
def test_in_its_place_the_head_never_rises_with_the_flow(at_rest: float, square: float) -> None:
    """Whatever the suction: flooded, lifting, strainer blocked, boiling. Also far beyond the last point."""
    flow = np.linspace(0, 60 / 3600 * 2.5, 3000)[:, None]
    head, slope = behind(place(at_rest, square), flow)
    assert (np.diff(head[:, 0]) <= 1e-12).all()
    assert (slope <= 1e-6).all() and np.isfinite(head).all()


@given(pumps(), st.floats(0.0, 15.0), st.floats(0.0, 1.0))
def test_any_makers_curve_in_any_place_falls_once_its_npsh_rises(
    pump: object, at_rest: float, loss: float
) -> None:
    """Points as a file may give them, the required NPSH lifted to its rising envelope."""
    flow, head = np.asarray(pump.flow), np.asarray(pump.head)  # type: ignore[attr-defined]
    required = rising(pump.npsh_required)  # type: ignore[attr-defined]
    available = at_rest * (1 - loss * (flow / flow[-1]) ** 2)
    nought = np.zeros(flow.shape)
    found, _ = in_place(head, nought, (available, nought), (required, nought))
    assert (np.diff(found) <= 1e-12 * head[0]).all()


def test_a_pump_forced_beyond_its_curve_stays_a_resistance() -> None:
    """Negative head is not made smaller by vapour: the product would rise."""
    head, slope = in_place(
        column(-5.0), column(-100.0), (column(-1.0), column(-9.0)), (column(3.0), column(1.0))
    )
    assert head == -5.0 and slope == -100.0


def test_the_slope_in_place_is_that_of_the_head() -> None:
    """Around the knee, against a central difference."""
    flow, step = np.linspace(0.0101, 0.0161, 25)[:, None], 1e-6
    around = [behind(place(4.0), flow + side)[0] for side in (-step, step)]
    slope = behind(place(4.0), flow)[1]
    assert slope == pytest.approx((around[1] - around[0]) / (2 * step), rel=1e-3, abs=1.0)


@pytest.mark.native
@given(st.floats(2.5, 9.0), st.floats(1e4, 3e5), st.floats(0.0, 10.0))
def test_the_duty_point_in_place_agrees_with_a_root_finder(
    at_rest: float, load: float, static: float
) -> None:
    """`scipy.optimize.brentq` on H(q) times the factor = static + load q², all of it written anew."""
    from scipy.optimize import brentq

    from loadfirst.physics.root import rising_root

    pump, suction = machine(RADIAL, STEADY), place(at_rest)

    def gap(q: float) -> float:
        one = np.array([[q]])
        head, need = -float(pump.head_drop(one)[0][0, 0]), float(pump.running(one).npsh_required[0, 0])
        have = at_rest - 2e4 * q * q
        lost = 0.0 if have <= 0 else max((need / have) ** 20 - 2.0**-20, 0.0) / (1 - 2.0**-20)
        left = 0.0 if have <= 0 else head / (1 + 3 / 97 * lost)
        return static + load * q * q - (left if head > 0 else head)

    wanted = brentq(gap, 0.0, 0.03, xtol=1e-15)
    found, _ = rising_root(
        lambda q: static + load * q**2 - behind(suction, q)[0], column(0.0), column(0.03), within=1e-9
    )
    assert float(found[0, 0]) == pytest.approx(wanted, rel=1e-9)


def test_hot_water_caps_the_flow_however_light_the_load() -> None:
    """Opening the discharge further gives no more flow: the curve has become a cliff."""
    flow = np.linspace(0, 0.02, 4001)[:, None]
    head = behind(place(3.0), flow)[0][:, 0]
    plain = -machine(RADIAL, STEADY).head_drop(flow)[0][:, 0]
    at_15, at_5 = (float(flow[np.argmax(head < level), 0]) for level in (15.0, 5.0))
    assert at_5 / at_15 < 1.1
    assert head[0] == pytest.approx(plain[0], rel=1e-5)


def test_the_rising_envelope_lifts_only_what_falls() -> None:
    """A maker's curve that is high at small flow."""
    assert rising([2.0, 1.5, 1.8, 3.0]).tolist() == [2.0, 2.0, 2.0, 3.0]
