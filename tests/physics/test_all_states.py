"""All duty points of a drooping curve: none lost, each judged."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from tests.pumps import RADIAL, machine

from loadfirst.physics.all_states import HeadOver, States, all_states, settle, states_of_samples
from loadfirst.physics.law import Array, column

roots = st.lists(st.floats(0.01, 0.99), min_size=1, max_size=5)


def load(flow: Array) -> Array:
    """A lift of 10 m and a quadratic resistance."""
    return 10 + 5 * flow**2


def meets(*rows: list[float], steep: float = 50.0) -> HeadOver:
    """Pumps, one a row, that meet the load at these flows only; before the first they give more."""

    def pump(flow: Array) -> Array:
        product = np.stack(
            [np.prod([r - q for r in row], axis=0) for row, q in zip(rows, flow_of(flow), strict=True)]
        )
        return load(flow) + steep * product

    def flow_of(flow: Array) -> Array:
        return np.broadcast_to(flow, (len(rows), flow.shape[1]))

    return pump


def found(states: States, row: int = 0) -> Array:
    """The flows of one plant's states."""
    return states.flow[row, : int(states.count[row])]


@given(roots)
def test_every_crossing_of_a_polynomial_is_found(at: list[float]) -> None:
    """Up to five of them, as long as they are a thousandth of the axis apart, to 1e-10."""
    at = sorted(at)
    assume(len(at) == 1 or np.diff(at).min() > 1e-3)
    states = all_states(meets(at), load, 0.0, 1.0)
    assert found(states) == pytest.approx(at, abs=1e-10)
    assert states.stable[0, : len(at)].tolist() == [k % 2 == 0 for k in range(len(at))]
    assert not states.tangent.any() and not states.held.any()
    assert states.head[0, : len(at)] == pytest.approx(load(np.array(at)), abs=1e-9)


def test_a_drooping_curve_has_two_states_and_a_third_on_the_check_valve() -> None:
    """More asked at no flow than given: held shut lasts, the first crossing does not, the second does."""

    def pump(flow: Array) -> Array:
        return load(flow) + 50 * (flow - 0.2) * (0.7 - flow)

    states = all_states(pump, load, 0.0, 1.0)
    assert states.held.tolist() == [True]
    assert found(states) == pytest.approx([0.2, 0.7], abs=1e-10)
    assert states.stable[0].tolist() == [False, True]


def test_curves_that_touch_are_told_apart_from_curves_that_cross_or_miss() -> None:
    """A saddle let down on the load: two more crossings, one touch, none."""
    for lift, count, tangent in ((-1e-4, 3, 0), (0.0, 2, 1), (1e-4, 1, 0)):

        def pump(flow: Array, lift: float = lift) -> Array:
            return load(flow) + 50 * (0.9 - flow) * ((flow - 0.3) ** 2 + lift)

        states = all_states(pump, load, 0.0, 1.0)
        assert (states.count[0], states.tangent.sum()) == (count, tangent)
        assert not (states.stable & states.tangent).any()
        assert found(states)[-1] == pytest.approx(0.9, abs=1e-10)
        if tangent:
            assert found(states)[0] == pytest.approx(0.3, abs=1e-6)


def test_two_crossings_within_one_step_of_the_axis_are_found() -> None:
    """Far nearer than the axis is fine."""
    at = [0.5010, 0.5012, 0.8]
    assert found(all_states(meets(at), load, 0.0, 1.0)) == pytest.approx(at, abs=1e-10)


def test_states_at_the_ends_of_the_axis_belong_to_it() -> None:
    """A crossing at no flow and one at the last."""
    states = all_states(meets([0.0, 0.5, 1.0]), load, 0.0, 1.0)
    assert found(states) == pytest.approx([0.0, 0.5, 1.0], abs=1e-10)
    assert states.stable[0].tolist() == [True, False, True]
    other = all_states(lambda q: load(q) + 50 * q * (0.5 - q), load, 0.0, 1.0)
    assert found(other) == pytest.approx([0.0, 0.5], abs=1e-10)
    assert other.stable[0].tolist() == [False, True]


def test_a_crossing_on_a_point_of_the_axis_is_found_once() -> None:
    """With 5 points 0.25, 0.5 and 0.75 are points of the axis."""
    states = all_states(meets([0.25, 0.5, 0.75]), load, 0.0, 1.0, points=5)
    assert found(states) == pytest.approx([0.25, 0.5, 0.75], abs=1e-10)


def test_a_batch_equals_its_plants_one_by_one() -> None:
    """Different counts side by side, filled up with 0."""
    rows = [[0.1, 0.4, 0.8], [0.6], [0.2, 0.21, 0.9], [0.3, 0.3, 0.5]]
    together = all_states(meets(*rows), load, 0.0, 1.0)
    assert together.count.tolist() == [3, 1, 3, 2]
    for k, row in enumerate(rows):
        alone = all_states(meets(row), load, 0.0, 1.0)
        assert found(together, k) == pytest.approx(found(alone), abs=1e-10)
        assert together.stable[k, : int(alone.count[0])].tolist() == alone.stable[0].tolist()
    assert (together.flow[1, 1:] == 0).all() and not together.stable[1, 1:].any()


def test_each_plant_may_have_its_own_axis() -> None:
    """Ends as one number per plant."""
    states = all_states(meets([0.1, 0.4, 0.8], [0.1, 0.4, 0.8]), load, [0.0, 0.3], [1.0, 0.5])
    assert states.count.tolist() == [3, 1]
    assert found(states, 1) == pytest.approx([0.4], abs=1e-10)


def test_no_state_at_all_is_no_state() -> None:
    """The pump always gives more, or never enough."""
    more, less = (all_states(lambda q, s=s: load(q) + s, load, 0.0, 1.0) for s in (1.0, -1.0))
    assert more.count.tolist() == less.count.tolist() == [0]
    assert (more.held.tolist(), less.held.tolist()) == ([False], [True])
    assert np.isnan(settle(more, 0.5)).all()


def test_points_alone_give_the_states_of_the_smooth_curve_through_them() -> None:
    """2001 points of a cubic: crossings within 1e-6 of the axis."""
    flow = np.linspace(0, 1, 2001)
    pump = meets([0.1, 0.4, 0.8])(flow[None])
    states = states_of_samples(flow, pump, load(flow))
    assert found(states) == pytest.approx([0.1, 0.4, 0.8], abs=1e-6)
    assert states.stable[0].tolist() == [True, False, True]


@given(st.floats(0.0, 40.0), st.floats(1e3, 1e6))
def test_a_falling_pump_meets_a_rising_load_once(lift: float, k: float) -> None:
    """The ordinary pump on its motor: one state, and it lasts."""
    machines = machine(RADIAL)

    def pump(flow: Array) -> Array:
        return -machines.head_drop(flow.reshape(-1, 1))[0].reshape(flow.shape)

    def asked(flow: Array) -> Array:
        return lift + k * flow**2

    states = all_states(pump, asked, 0.0, 2 * float(machines.last_flow[0, 0]))
    assert states.count.tolist() == [1] and states.stable.tolist() == [[True]]
    at = column(found(states))
    assert pump(at) == pytest.approx(asked(at), abs=1e-8)


def test_history_chooses_among_the_states() -> None:
    """Let go at a flow, the plant ends at the lasting state on that side of the ones that do not last."""
    states = all_states(meets([0.1, 0.4, 0.8]), load, 0.0, 1.0)
    for before, after in ((0.0, 0.1), (0.39, 0.1), (0.41, 0.8), (0.95, 0.8)):
        assert settle(states, before) == pytest.approx([after], abs=1e-10)


def test_let_go_below_the_first_state_of_a_drooping_curve_the_check_valve_shuts() -> None:
    """There is no lasting flow on that side: not a number, as told."""

    def pump(flow: Array) -> Array:
        return load(flow) + 50 * (flow - 0.2) * (0.7 - flow)

    states = all_states(pump, load, 0.0, 1.0)
    assert np.isnan(settle(states, 0.1)).all()
    assert settle(states, 0.3) == pytest.approx([0.7], abs=1e-10)
