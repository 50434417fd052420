"""Check valves and open pipe ends: one way only, unless they are broken."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.check import CheckValves
from loadfirst.physics.law import SHUT, column
from loadfirst.physics.valve import Valves

BOTH_WAYS = np.array([[0.02], [-1e-9]])


def test_forward_flow_pays_the_square_law() -> None:
    """`k_head` is head over flow squared."""
    drop, slope = CheckValves(5000.0).head_drop(column(0.02))
    assert drop[0, 0] == pytest.approx(2.0)
    assert slope[0, 0] == pytest.approx(200.0)


def test_backward_flow_meets_a_steep_line() -> None:
    """A hundred metres of head push 1e-8 m³/s through it, which is shown as nothing."""
    drop, slope = CheckValves(5000.0).head_drop(column(-1e-8))
    assert drop[0, 0] == pytest.approx(-100.0)
    assert slope[0, 0] == SHUT


def test_an_open_pipe_end_costs_nothing_and_lets_nothing_in() -> None:
    """The same law without a loss stands for the end of a pipe above the liquid."""
    drop, _ = CheckValves(0.0).head_drop(BOTH_WAYS)
    assert drop.ravel().tolist() == pytest.approx([0.0, -10.0])


def test_a_check_valve_that_does_not_hold_is_a_fitting() -> None:
    """Its loss is the same both ways, and it has no corner."""
    law = CheckValves(5000.0, False)
    assert law.head_drop(column(-0.02))[0][0, 0] == pytest.approx(-2.0)
    assert law.corners() is None
    assert not law.shut(BOTH_WAYS).any()


def test_the_corner_is_at_no_flow_where_the_valve_holds() -> None:
    """NaN stands for no corner; the line search tries the others first."""
    corners = CheckValves([[10.0, 20.0]], [[True, False]]).corners()
    assert corners is not None
    assert corners[0, 0] == 0 and np.isnan(corners[0, 1])


def test_it_holds_against_backward_flow_only() -> None:
    """At no flow it still stands open."""
    law = CheckValves([[10.0, 20.0]], [[True, False]])
    assert law.count == 2
    flows = np.array([[-1.0, -1.0], [0.0, 0.0], [1.0, 1.0]])
    assert law.shut(flows).tolist() == [[True, False], [False, False], [False, False]]


def test_each_plant_of_a_batch_may_have_its_own_broken_valve() -> None:
    """Picking rows keeps which of them hold."""
    law = CheckValves([[10.0]], [[True], [False], [True]])
    some = law.rows(np.array([1, 2]))
    assert some.shut(np.full((2, 1), -0.1)).ravel().tolist() == [False, True]


def test_a_negative_loss_is_refused() -> None:
    """A check valve cannot give head."""
    with pytest.raises(InputError, match="check.k_head is -1.0, but must be 0 s²/m⁵ or more"):
        CheckValves(-1.0)


@given(st.floats(0, 1e4), st.floats(0, 100), st.floats(-0.1, 0.1), st.floats(-0.1, 0.1))
def test_more_flow_never_costs_less_through_a_passing_seat(k: float, kv: float, a: float, b: float) -> None:
    """Forward the valve's own law, backward its seat's: together they never fall."""
    law, (low, high) = CheckValves(k, True, kv), sorted((a, b))
    (less, slope), (more, _) = law.head_drop(column(low)), law.head_drop(column(high))
    assert more[0, 0] >= less[0, 0] - 1e-12 * abs(less[0, 0])
    assert slope[0, 0] >= 0


def test_a_passing_seat_is_an_orifice_of_its_flow_coefficient() -> None:
    """As the same Kv of a valve, backward; forward nothing is to be seen of it. It holds nothing."""
    law = CheckValves(5000.0, True, 2.5)
    assert law.head_drop(column(-0.001))[0] == Valves(2.5).head_drop(column(-0.001))[0]
    assert law.head_drop(column(0.02))[0][0, 0] == pytest.approx(2.0)
    assert not law.shut(BOTH_WAYS).any() and law.corners() is None


def test_a_seat_that_passes_next_to_nothing_is_tight() -> None:
    """Less than what a shut valve leaks."""
    assert CheckValves(0.0, True, 1e-6).shut(column(-1e-9)).all()


def test_a_batch_keeps_which_of_its_seats_pass() -> None:
    """One of three."""
    law = CheckValves([[10.0]], [[True], [True], [False]], [[0.0], [3.0], [3.0]])
    some = law.rows(np.array([1, 0, 2]))
    assert some.shut(np.full((3, 1), -0.1)).ravel().tolist() == [False, True, False]
    assert some.head_drop(np.full((3, 1), -0.1))[0][2, 0] == pytest.approx(-0.1)


def test_a_negative_leak_is_refused() -> None:
    """A flow coefficient is 0 or more."""
    with pytest.raises(InputError, match="check.leak is -1.0"):
        CheckValves(1.0, True, -1.0)
