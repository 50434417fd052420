"""The network on simple laws: balances, cut-off nodes, batches, and what it says when it fails."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq
from tests.laws import Flap, Parabola, Square, flap, parabola, square

from loadfirst.physics.law import Array, column
from loadfirst.physics.network import Element, Network, Solution, solve

HEAD, FLOW = 40.0, 0.1  # [m], [m³/s] scales of the plants here

SIDE_BY_SIDE = (
    Element("suction-line", "supply", "suction", "pipes", 0),
    Element("pump-1", "suction", "pump-1-out", "pumps", 0),
    Element("check-1", "pump-1-out", "discharge", "checks", 0),
    Element("pump-2", "suction", "pump-2-out", "pumps", 1),
    Element("check-2", "pump-2-out", "discharge", "checks", 1),
    Element("line", "discharge", "delivery", "pipes", 1),
)
SINGLE = (*SIDE_BY_SIDE[:3], SIDE_BY_SIDE[5])


def plant(static: float | Array = 10.0, pumps: Parabola | None = None, checks: Flap | None = None) -> Network:
    """Two pumps side by side, each with its check valve, lifting by `static`."""
    laws = {
        "pipes": square(100.0, 3000.0),
        "pumps": pumps or parabola(30.0, 0.0, 1000.0, count=2),
        "checks": checks or flap(10.0, 10.0),
    }
    return Network(SIDE_BY_SIDE, laws, {"supply": np.zeros(1), "delivery": np.atleast_1d(static)})


def single(static: float = 10.0, checks: Flap | None = None) -> Network:
    """The first of the two pumps alone."""
    return replace(plant(static, checks=checks), elements=SINGLE)


def assert_balanced(network: Network, found: Solution, head: float = HEAD, flow: float = FLOW) -> None:
    """Recompute every element's drop from its flow, and every node's sum."""
    assert found.converged.all()
    assert found.reason == (None,) * len(found.converged)
    for element in network.elements:
        law = network.laws[element.law]
        through = np.zeros((len(found.converged), law.count))
        through[:, element.column] = found.flow[element.name]
        drop = law.head_drop(through)[0][:, element.column]
        offered = found.head[element.inlet] - found.head[element.outlet]
        assert offered == pytest.approx(drop, abs=1e-9 * head)
    for node in found.head.keys() - network.fixed.keys():
        arriving = sum(found.flow[e.name] for e in network.elements if e.outlet == node)
        leaving = sum(found.flow[e.name] for e in network.elements if e.inlet == node)
        taken = network.demand.get(node, 0.0)
        assert arriving - leaving == pytest.approx(taken, abs=1e-9 * flow)


def test_a_single_pump_and_its_load_meet_where_brentq_says() -> None:
    """Limit: one loop equation, solved by an independent root finder."""
    flow = brentq(lambda q: 30 - 1000 * q**2 - 10 * q**2 - 3100 * q**2 - 10, 0, 1, xtol=1e-15)
    found = solve(single(), HEAD, FLOW)
    assert found.flow["line"][0] == pytest.approx(flow, rel=1e-12)
    assert_balanced(single(), found)


def test_every_element_and_node_balances() -> None:
    """Law: drops and sums, recomputed from the flows."""
    assert_balanced(plant(), solve(plant(), HEAD, FLOW))


@pytest.mark.parametrize("static", [-50.0, 0.0, 29.0, 29.999999, 30.0, 30.000001, 31.0, 100.0, 3000.0])
def test_any_static_head_converges(static: float) -> None:
    """Downhill, at the very shut-off head, and far above it, where the check valves hold."""
    found = solve(plant(static), HEAD + abs(static), FLOW)
    assert_balanced(plant(static), found, head=HEAD + abs(static))
    if static > 30:
        assert abs(found.flow["line"][0]) < 1e-5 * FLOW


def test_a_weak_pump_beside_a_strong_one_is_held_shut_by_its_check_valve() -> None:
    """Common practice: the weaker of two unlike pumps is dead-headed by the header's pressure."""
    network = plant(20.0, pumps=Parabola(column([30.0, 12.0]), column([0.0, 0.0]), column([1000.0, 1000.0])))
    found = solve(network, HEAD, FLOW)
    assert_balanced(network, found)
    assert abs(found.flow["pump-2"][0]) < 1e-7
    assert found.flow["pump-1"][0] > 0.04


def test_without_check_valves_the_liquid_runs_back_through_the_pump() -> None:
    """Limit: a pump that cannot reach the static head passes liquid backward."""
    elements = tuple(e for e in SINGLE if e.name != "check-1")
    network = replace(
        single(40.0),
        elements=tuple(e._replace(outlet="discharge") if e.name == "pump-1" else e for e in elements),
    )
    found = solve(network, HEAD, FLOW)
    assert_balanced(network, found)
    assert found.flow["line"][0] == pytest.approx(-((10 / 4100) ** 0.5), rel=1e-9)


def test_a_dead_headed_pump_gives_its_shut_off_head_and_no_flow() -> None:
    """Law: with the way shut, the head at the pump's outlet is that of no flow."""
    network = single(checks=flap(-1.0, -1.0))
    found = solve(network, HEAD, FLOW)
    assert_balanced(network, found)
    assert found.head["pump-1-out"][0] == pytest.approx(30.0, rel=1e-9)
    assert abs(found.flow["line"][0]) < 1e-7
    assert not any(flags.any() for flags in found.undefined.values())


def test_a_section_between_two_shut_elements_is_undefined() -> None:
    """A head that nothing fixes is marked, in the plants where it is so and in no other."""
    line = (
        Element("first", "supply", "trapped", "checks", 0),
        Element("second", "trapped", "delivery", "checks", 1),
    )
    checks = Flap(np.array([[-1.0, -1.0], [-1.0, 5.0]]))
    network = Network(line, {"checks": checks}, {"supply": np.full(2, 5.0), "delivery": np.zeros(2)})
    found = solve(network, HEAD, FLOW)
    assert found.converged.all()
    assert found.undefined["trapped"].tolist() == [True, False]
    assert not found.undefined["supply"].any()


def test_a_demand_is_met_from_every_side() -> None:
    """Law: what is taken out at a node arrives there."""
    network = replace(plant(), demand={"discharge": np.array([0.03, -0.02, 0.0])})
    found = solve(network, HEAD, FLOW)
    assert_balanced(network, found)


def test_forcing_a_flow_through_the_gap_gives_the_heads_of_the_load() -> None:
    """Where only the balances fix the flows, the heads follow from the laws at once."""
    flows = np.array([0.0, 0.01, 0.05])
    load = replace(
        plant().without(["pump-1", "pump-2", "check-1", "check-2"]),
        demand={"suction": flows, "discharge": -flows},
    )
    found = solve(load, HEAD, FLOW)
    assert_balanced(load, found)
    assert found.head["discharge"] - found.head["suction"] == pytest.approx(10 + 3100 * flows**2, rel=1e-12)
    assert found.iterations.max() == 0


def test_the_sense_in_which_an_element_is_written_does_not_matter() -> None:
    """Law: turning an element round turns the sign of its flow, and nothing else."""
    turned = tuple(
        e._replace(inlet=e.outlet, outlet=e.inlet) if e.law == "pipes" else e for e in SIDE_BY_SIDE
    )
    straight, other = solve(plant(), HEAD, FLOW), solve(replace(plant(), elements=turned), HEAD, FLOW)
    assert other.flow["line"] == pytest.approx(-straight.flow["line"], rel=1e-9)
    assert other.head["suction"] == pytest.approx(straight.head["suction"], rel=1e-9)


@settings(deadline=None, max_examples=40)
@given(
    st.lists(
        st.tuples(st.floats(-100, 100), st.floats(0.1, 1e6), st.floats(1, 200), st.floats(0, 1e4)),
        min_size=2,
        max_size=8,
    )
)
def test_a_batch_equals_its_plants_one_by_one(cases: list[tuple[float, float, float, float]]) -> None:
    """Law: plants of a batch know nothing of each other."""
    static, k, shut_off, b = (np.array(values) for values in zip(*cases, strict=True))
    scale = shut_off + np.abs(static)
    laws = {
        "pipes": Square(np.stack([k / 10, k], axis=1)),
        "pumps": Parabola(np.stack([shut_off, shut_off], 1), np.zeros((1, 2)), np.stack([b, b], 1)),
        "checks": flap(10.0, 10.0),
    }
    batch = Network(SIDE_BY_SIDE, laws, {"supply": np.zeros(1), "delivery": static})
    together = solve(batch, scale, FLOW)
    assert together.converged.all()
    for i in range(len(cases)):
        alone = solve(batch.rows(np.array([i])), scale[i], FLOW)
        assert alone.flow["line"][0] == pytest.approx(together.flow["line"][i], rel=1e-9, abs=1e-9 * FLOW)
        assert alone.head["discharge"][0] == pytest.approx(together.head["discharge"][i], abs=1e-9 * scale[i])


def test_a_law_that_gives_no_number_is_reported_and_hurts_no_other_plant() -> None:
    """The answer stays finite; the reason names what happened."""
    network = plant(np.array([10.0, np.nan, 10.0]))
    found = solve(network, HEAD, FLOW)
    assert found.converged.tolist() == [True, False, True]
    assert found.reason == (None, "not-a-number", None)
    for values in (*found.flow.values(), *found.head.values(), *found.drop.values(), found.imbalance):
        assert np.isfinite(values).all()


def test_a_law_that_falls_with_flow_is_reported_as_stalled() -> None:
    """A law that breaks the rule of rising cannot always be balanced; the result says so and stays finite."""

    class Jump(Square):
        def head_drop(self, flow: Array) -> tuple[Array, Array]:
            return np.where(flow < 0.05, 20.0, -20.0) + 0 * self.k, np.full(flow.shape, 1.0)

    line = (Element("jump", "supply", "delivery", "pipes", 0),)
    network = Network(line, {"pipes": Jump(column(1.0))}, {"supply": np.zeros(1), "delivery": np.zeros(1)})
    found = solve(network, HEAD, FLOW)
    assert found.reason == ("stalled",)
    assert np.isfinite(found.flow["jump"]).all()


def test_a_node_that_no_fixed_head_reaches_is_refused() -> None:
    """Its head could be anything; the message names it."""
    network = replace(plant(), elements=(*SIDE_BY_SIDE, Element("island", "here", "there", "pipes", 0)))
    with pytest.raises(ValueError, match="here, there"):
        solve(network, HEAD, FLOW)
