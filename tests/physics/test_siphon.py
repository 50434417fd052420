"""A summit above the outlet: primed, broken, not primed."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.law import Array, column
from loadfirst.physics.network import Element, Network, solve
from loadfirst.physics.pipe import Pipes, velocity_head
from loadfirst.physics.root import rising_root
from loadfirst.physics.siphon import Siphons, summit_floor
from loadfirst.units import G

BORE, WATER, VAPOUR, AIR = 0.1, 998.2, 2339.0, 101_325.0
RUN = Pipes(40.0, BORE, 5e-5, 1.5, 1e-6)  # with the exit loss in its 1.5


def siphon(summit: float, outlet: float, primed: bool) -> Siphons:
    """The run from a summit to an outlet, heights in m."""
    return Siphons(RUN, float(summit_floor(summit, primed, WATER, VAPOUR)) - outlet, BORE)


def asked(summit: float, outlet: float, primed: bool, flow: float) -> float:
    """Head that is asked at the summit, over the same zero as the heights. [m]"""
    return outlet + float(siphon(summit, outlet, primed).head_drop(column(flow))[0][0, 0])


def summit_pressure(head: Array, summit: float, flow: npt.ArrayLike) -> Array:
    """Absolute pressure at a summit from the energy head there, by Bernoulli. [Pa]"""
    return np.asarray(AIR + WATER * G * (head - summit - velocity_head(flow, BORE)))


@given(st.floats(0.0, 9.0), st.floats(0.001, 0.05))
def test_primed_the_load_is_the_pipe_to_its_end(summit: float, flow: float) -> None:
    """However high the summit, as long as it can pull."""
    cost = float(RUN.head_drop(column(flow))[0][0, 0])
    if summit < 9.0 + cost - float(velocity_head(flow, BORE)):
        assert asked(summit, 0.0, True, flow) == pytest.approx(cost)


def test_not_primed_the_summit_is_the_end() -> None:
    """At small flow the whole summit must be lifted; the fall beyond it is lost."""
    for flow in (0.0, 0.001, 0.005):
        assert asked(6.0, 0.0, False, flow) == pytest.approx(6.0 + float(velocity_head(flow, BORE)))


def test_priming_a_siphon_takes_the_summit_off_the_load() -> None:
    """Two states of one plant, told apart by nothing but history."""
    load = [asked(6.0, 0.0, primed, 0.008) for primed in (False, True)]
    assert load[0] - load[1] > 5.0


def test_a_run_that_costs_more_than_the_fall_fills_itself() -> None:
    """At large flow the pipe beyond the summit runs full, primed or not."""
    flow = 0.05
    assert asked(1.0, 0.0, False, flow) == asked(1.0, 0.0, True, flow)
    assert not siphon(1.0, 0.0, False).broken(column(flow)).any()
    assert siphon(1.0, 0.0, False).broken(column(0.005)).all()


@given(st.floats(-5.0, 40.0), st.floats(0.0, 0.06))
def test_no_pressure_at_the_summit_is_below_vapour_pressure(summit: float, flow: float) -> None:
    """The law's own head there, turned into a pressure; below it the siphon is broken."""
    law = siphon(summit, 0.0, True)
    head = law.head_drop(column(flow))[0]
    pressure = float(summit_pressure(head, summit, flow)[0, 0])
    assert pressure >= VAPOUR - 1e-3
    if law.broken(column(flow)).any():
        assert pressure == pytest.approx(VAPOUR, abs=1e-3)
        full = RUN.head_drop(column(flow))[0]
        assert summit_pressure(full, summit, flow) <= VAPOUR


def test_a_summit_beyond_what_air_can_push_is_lifted_in_part() -> None:
    """15 m: all but the ten that the atmosphere pushes."""
    pull = (AIR - VAPOUR) / (WATER * G)
    assert asked(15.0, 0.0, True, 0.0) == pytest.approx(15.0 - pull)


def test_nothing_comes_back_over_a_summit_with_air_in_it() -> None:
    """A steep line backward; a primed one lets it come, as long as its pressure lasts."""
    assert siphon(6.0, 0.0, False).shut(column(-0.01)).all()
    assert siphon(6.0, 0.0, False).head_drop(column(-0.01))[0] < -1e7
    primed = siphon(6.0, 0.0, True)
    assert not primed.shut(column(-0.01)).any()
    assert primed.head_drop(column(-0.01))[0] == RUN.head_drop(column(-0.01))[0]


@pytest.mark.parametrize("primed", [True, False])
@pytest.mark.parametrize("supply", [4.0, 6.5, 12.0, 40.0])
def test_a_network_finds_the_flow_over_the_summit(primed: bool, supply: float) -> None:
    """Against halving on the one equation; a supply below an unprimed summit gives nothing."""
    up = Pipes(20.0, BORE, 5e-5, 1.0, 1e-6)
    law = siphon(6.0, 0.0, primed)
    elements = (Element("up", "supply", "summit", "up", 0), Element("over", "summit", "outlet", "over", 0))
    fixed = {"supply": np.array([supply]), "outlet": np.array([0.0])}
    network = Network(elements, {"up": up, "over": law}, fixed)
    found = solve(network, supply, 0.02)

    def miss(q: Array) -> Array:
        return np.asarray(up.head_drop(q)[0] + law.head_drop(q)[0] - supply)

    wanted, _ = rising_root(miss, column(-1e-6), column(1.0))
    assert found.converged.all()
    assert float(found.flow["over"][0]) == pytest.approx(float(wanted[0, 0]), rel=1e-6, abs=1e-8)
    if supply == 4.0:
        assert (abs(float(wanted[0, 0])) < 1e-8) == (not primed)


@pytest.mark.parametrize("given", [(float("nan"), 0.1), (1.0, 0.0)])
def test_a_summit_that_could_not_be_is_refused(given: tuple[float, float]) -> None:
    """Neither without height nor without bore."""
    with pytest.raises(InputError, match="summit."):
        Siphons(RUN, *given)


@given(st.floats(-5.0, 9.5), st.floats(-0.2, 0.0))
def test_no_more_comes_back_than_the_pressure_at_the_summit_allows(summit: float, flow: float) -> None:
    """At the limit the summit is at vapour pressure; beyond it the line is steep."""
    law = siphon(summit, 0.0, True)
    most = law.corners()
    assert most[0, 0] < 0
    head = law.head_drop(most)[0]
    assert float(summit_pressure(head, summit, most)[0, 0]) == pytest.approx(VAPOUR, abs=1e-3)
    drop = law.head_drop(column(flow))[0]
    if flow >= most[0, 0]:
        assert drop == RUN.head_drop(column(flow))[0]
        assert summit_pressure(drop, summit, flow) >= VAPOUR - 1e-3
    else:
        assert law.shut(column(flow)).all() and law.broken(column(flow)).all()
