"""What shut elements cut off, and what leaks through them."""

from __future__ import annotations

import numpy as np
from tests.laws import Flap, flap, parabola, square

from loadfirst.physics.law import SHUT
from loadfirst.physics.network import Element, Network, solve

HEADER = (
    Element("line", "supply", "header", "pipes", 0),
    Element("first", "header", "one", "checks", 0),
    Element("second", "header", "two", "checks", 1),
)
HEADS = {"supply": np.array([10.0]), "one": np.array([0.0]), "two": np.array([0.0])}


def test_it_is_said_of_each_plant_what_is_shut() -> None:
    """What is shut in one plant may be open in the next; a shut branch does not undefine its neighbours."""
    checks = Flap(np.array([[-1.0, -1.0], [5.0, -1.0], [5.0, 5.0]]))
    heads = {node: np.repeat(head, 3) for node, head in HEADS.items()}
    found = solve(Network(HEADER, {"pipes": square(1.0), "checks": checks}, heads), 10.0, 0.1)
    assert found.shut["first"].tolist() == [True, False, False]
    assert found.shut["second"].tolist() == [True, True, False]
    assert not found.undefined["header"].any()
    assert abs(found.flow["line"][0]) <= 2 * 10.0 / SHUT


def test_a_column_that_no_element_takes_shuts_nothing() -> None:
    """A law may have more columns than the network uses."""
    network = Network(HEADER, {"pipes": square(1.0), "checks": flap(5.0, 5.0, -1.0)}, HEADS)
    assert not any(shut.any() for shut in solve(network, 10.0, 0.1).shut.values())


def test_a_pump_between_two_holding_check_valves_is_undefined() -> None:
    """Its head could be anything between: no fixed head is joined to it by anything open."""
    line = (
        Element("a", "low", "before", "checks", 0),
        Element("pump", "before", "after", "pumps", 0),
        Element("b", "after", "high", "checks", 1),
    )
    laws = {"checks": flap(1.0, 1.0), "pumps": parabola(5.0, 0.0, 10.0)}
    found = solve(Network(line, laws, {"low": np.array([0.0]), "high": np.array([50.0])}), 55.0, 0.1)
    assert found.undefined["before"][0] and found.undefined["after"][0]
    assert not found.undefined["low"][0]
