"""Relief valves: shut below the set pressure, proportional above it, then an orifice."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.law import SHUT, column
from loadfirst.physics.relief import ReliefValves
from loadfirst.units import BAR, G

OIL = 870.0  # [kg/m³]
SET = 12 * BAR / (OIL * G)  # [m]
VALVE = ReliefValves(12 * BAR, 0.004, OIL)


def head(valve: ReliefValves, flow: float) -> float:
    """Head over the valve at a flow. [m]"""
    return float(valve.head_drop(column(flow))[0][0, 0])


@st.composite
def valves(draw: st.DrawFn) -> ReliefValves:
    """Any relief valve: tight, passing or blocked, from a thimble to a river."""
    return ReliefValves(
        10.0 ** draw(st.floats(3, 8)),
        10.0 ** draw(st.floats(-4, 1)),
        draw(st.floats(300, 3000)),
        accumulation=draw(st.floats(0.01, 1)),
        leak=draw(st.sampled_from([0.0, 1e-9, 1e-4, 0.1, 0.99])),
        blocked=draw(st.booleans()),
    )


@given(valves())
def test_the_head_never_falls_as_the_flow_rises(valve: ReliefValves) -> None:
    """Over every joint and far beyond; the solver relies on it."""
    joints = np.array([valve.corners()[0, 0], float(valve.set_head[0, 0]) / SHUT])
    joints = joints[np.isfinite(joints)]
    flow = np.concatenate([np.linspace(-20, 20, 801), np.linspace(-1e-3, 1e-3, 801)])
    flow = np.unique(np.concatenate([flow, joints, joints * (1 - 1e-9), joints * (1 + 1e-9), [-1e3, 1e3]]))
    drop, slope = (values[:, 0] for values in valve.head_drop(flow[:, None]))
    assert np.isfinite(drop).all() and (slope >= 0).all()
    assert (np.diff(drop) >= -1e-12 * np.abs(drop[1:])).all()


@given(valves(), st.floats(-1, 1))
def test_the_slope_is_the_slope_of_the_head(valve: ReliefValves, share: float) -> None:
    """Central difference away from the joints."""
    flow = share * 2 * float(valve._capacity[0, 0])
    step = 1e-6 * abs(flow)
    (before, low), (after, high) = (valve.head_drop(column(flow + side * step)) for side in (-1, 1))
    if low[0, 0] == pytest.approx(high[0, 0], rel=1e-4):  # both on one part
        assert (after - before)[0, 0] == pytest.approx(float(step * (low + high)[0, 0]), rel=1e-6, abs=1e-9)


def test_below_the_set_pressure_it_is_shut() -> None:
    """One steep line, forward and backward."""
    assert head(VALVE, 0.5 * SET / SHUT) == pytest.approx(0.5 * SET)
    assert head(VALVE, -1e-8) == pytest.approx(-100.0)
    flows = column([-0.1, 0.0, 0.5 * SET / SHUT, 2 * SET / SHUT]).T
    assert VALVE.shut(flows).ravel().tolist() == [True, True, True, False]


def test_at_the_set_pressure_it_lifts_and_at_its_capacity_it_is_open() -> None:
    """Set 12 bar, accumulation a tenth: 12 bar at the first drop, 13.2 bar at the capacity."""
    bar = OIL * G / BAR
    assert head(VALVE, 1e-7) * bar == pytest.approx(12.0, rel=1e-4)
    assert head(VALVE, 0.002) * bar == pytest.approx(12.6, rel=1e-4)
    assert head(VALVE, 0.004) * bar == pytest.approx(13.2)


def test_beyond_its_capacity_it_is_an_orifice() -> None:
    """Twice the flow, four times the head; no slope is lost where the two parts meet."""
    assert head(VALVE, 0.008) == pytest.approx(4 * head(VALVE, 0.004))
    before, after = VALVE.head_drop(column([0.004, 0.0040001]))[1][0]
    assert after > before


def test_a_blocked_valve_never_opens() -> None:
    """Ten times the set pressure passes nothing that shows."""
    blocked = ReliefValves(12 * BAR, 0.004, OIL, blocked=True)
    assert head(blocked, 10 * SET / SHUT) == pytest.approx(10 * SET)
    assert blocked.shut(column([-1.0, 1.0])).all()
    assert np.isnan(blocked.corners()).all()


def test_a_passing_seat_lets_its_share_through_below_the_set_pressure() -> None:
    """A tenth of the capacity at the set pressure, half of that at a quarter of it, both ways."""
    passing = ReliefValves(12 * BAR, 0.004, OIL, leak=0.1)
    assert head(passing, 0.0004) == pytest.approx(SET)
    assert head(passing, 0.0002) == pytest.approx(SET / 4)
    assert head(passing, -0.0002) == pytest.approx(-SET / 4)
    assert head(passing, 0.004) == pytest.approx(1.1 * SET)
    assert not passing.shut(column([-1e-3, 0.0, 1e-5])).any()


def test_the_heavier_the_liquid_the_less_head_is_the_same_set_pressure() -> None:
    """A relief valve feels pressure, not metres."""
    water, brine = (ReliefValves(12 * BAR, 0.004, density) for density in (1000.0, 1200.0))
    assert water.set_head / brine.set_head == pytest.approx(1.2)


def test_a_batch_of_valves_keeps_each_its_own() -> None:
    """Tight, passing and blocked ones in one law, and picked rows of it."""
    many = ReliefValves(
        [[12 * BAR], [5 * BAR], [12 * BAR]], 0.004, OIL, leak=[[0.0], [0.2], [0.0]], blocked=[[0], [0], [1]]
    )
    flow = np.array([[0.003], [0.0005], [1e-8]])
    drop, slope = many.head_drop(flow)
    index = np.array([2, 1])
    some = many.rows(index)
    assert many.count == some.count == 1
    assert (some.head_drop(flow[index])[0] == drop[index]).all()
    assert (some.head_drop(flow[index])[1] == slope[index]).all()
    assert some.shut(flow[index]).ravel().tolist() == [True, False]
    assert np.isnan(some.corners()).ravel().tolist() == [True, False]
    assert drop[0, 0] == pytest.approx(head(VALVE, 0.003))


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("set_pressure", {"set_pressure": 0.0}),
        ("capacity", {"capacity": -1.0}),
        ("density", {"density": 0.0}),
        ("accumulation", {"accumulation": 0.0}),
        ("leak", {"leak": 1.0}),
    ],
)
def test_a_valve_that_cannot_be_is_refused(name: str, values: dict[str, float]) -> None:
    """The error names what is wrong."""
    usual = {"set_pressure": BAR, "capacity": 1.0, "density": OIL}
    with pytest.raises(InputError, match=f"relief.{name} is"):
        ReliefValves(**(usual | values))
