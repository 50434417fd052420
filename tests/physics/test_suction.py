"""NPSH available along the flow axis, and where the line boils."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.check import CheckValves
from loadfirst.physics.law import column
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.physics.suction import Suction, npsh_at_rest

rests = st.floats(-3.0, 14.0)
squares = st.floats(0.0, 1e6)


def square_line(at_rest: float, square: float) -> Suction:
    """A line with a square law, 100 mm at the pump."""
    return Suction(column(at_rest), CheckValves(square, False), column(0.1))


def pipe_line(at_rest: float) -> Suction:
    """A real pipe: 8 m of 100 mm with a strainer."""
    return Suction(column(at_rest), Pipes(8.0, 0.1, 5e-5, 4.0, 1e-6), column(0.1))


@given(rests, squares)
def test_the_boiling_flow_of_a_square_line_has_a_formula(at_rest: float, square: float) -> None:
    """NPSH = velocity head: q = √(rest / (k + 8/π²gD⁴)); 0 where the liquid does not reach the pump."""
    found = float(square_line(at_rest, square).boiling_flow()[0, 0])
    wanted = math.sqrt(max(at_rest, 0.0) / (square + float(velocity_head(1.0, 0.1))))
    assert found == pytest.approx(wanted, rel=1e-9, abs=1e-12)


@given(st.floats(0.01, 14.0), st.floats(0.0, 0.999))
def test_below_the_boiling_flow_no_pressure_is_below_vapour_pressure(at_rest: float, share: float) -> None:
    """At the inlet flange, static pressure."""
    suction = pipe_line(at_rest)
    most = suction.boiling_flow()
    for flow, boils in ((share * most, False), (1.001 * most, True)):
        assert (suction.available(flow)[0] < velocity_head(flow, 0.1)) == boils


@pytest.mark.native
@given(st.floats(1.0, 14.0))
def test_the_boiling_flow_of_a_pipe_agrees_with_a_root_finder(at_rest: float) -> None:
    """`scipy.optimize.brentq` on the pipe's own drop."""
    from scipy.optimize import brentq

    pipe = Pipes(8.0, 0.1, 5e-5, 4.0, 1e-6)

    def left(q: float) -> float:
        return at_rest - float(pipe.head_drop(column(q))[0][0, 0]) - 8 * q**2 / (math.pi**2 * 9.80665 * 1e-4)

    wanted = brentq(left, 0.0, 1.0, xtol=1e-15)
    assert float(pipe_line(at_rest).boiling_flow()[0, 0]) == pytest.approx(wanted, rel=1e-9)


@given(rests, st.floats(-0.1, 0.1), st.floats(0.0, 0.1))
def test_npsh_available_never_rises_with_the_flow(at_rest: float, flow: float, more: float) -> None:
    """Backward flow included; the slope says so."""
    suction = pipe_line(at_rest)
    (now, slope), (then, _) = suction.available(column(flow)), suction.available(column(flow + more))
    assert then <= now + 1e-12 and slope <= 0


def test_a_batch_is_its_plants_one_by_one() -> None:
    """A blocked strainer, a hot liquid, a lift."""
    rest, square = np.array([[8.0], [1.0], [-0.5]]), np.array([[1e6], [1e4], [1e4]])
    many = Suction(rest, CheckValves(square, False), column(0.1))
    whole = many.boiling_flow()
    for i in range(3):
        assert many.rows(np.array([i])).boiling_flow()[0] == pytest.approx(whole[i], rel=1e-9)


def test_throttling_the_discharge_helps_and_the_strainer_stays_blocked() -> None:
    """Half the flow leaves a quarter of the loss; the line is no better for it."""
    blocked = square_line(8.0, 4e4)
    full, half = (float(blocked.available(column(q))[0][0, 0]) for q in (0.012, 0.006))
    assert 8 - full == pytest.approx(4 * (8 - half))


@pytest.mark.parametrize(
    "given", [(-1.0, 0.0, 1000.0), (1e5, -1.0, 1000.0), (1e5, 0.0, 0.0), (math.nan, 0, 1)]
)
def test_a_suction_that_could_not_be_is_refused(given: tuple[float, float, float]) -> None:
    """No pressure below nothing, no liquid without weight."""
    with pytest.raises(InputError):
        npsh_at_rest(*given, 1.0)
