"""Reservoirs, branches and loops of textbooks, through the network solver."""

from __future__ import annotations

import numpy as np
import pytest
from tests.laws import square

from loadfirst.physics.network import Element, Network, solve
from loadfirst.physics.pipe import Pipes
from loadfirst.units import HOUR

PIPES = Pipes(
    length=[[100.0, 150.0, 80.0]],
    bore=[[0.08, 0.06, 0.04]],
    roughness=[[0.24e-3, 0.12e-3, 0.20e-3]],
    k=[[0.0, 0.0, 0.0]],
    viscosity=[[1.02e-6]],
)
"""Pipes 1 to 3 of White, Fluid Mechanics, Examples 6.17 to 6.19 (water, 1.02e-6 m²/s)."""


def fixed(**heads: float) -> dict[str, np.ndarray]:
    """Known heads of one plant. [m]"""
    return {node: np.array([head]) for node, head in heads.items()}


def test_three_pipes_in_series_carry_the_flow_of_white_6_17() -> None:
    """White, Fluid Mechanics, Example 6.17: 10.2 m³/h at a loss of 20.3 m.

    From memory, recomputed with Colebrook. Tolerance 1 %: the book reads its
    friction factors from the chart to two or three digits.
    """
    line = tuple(Element(f"pipe-{i}", f"n{i}", f"n{i + 1}", "pipes", i) for i in range(3))
    found = solve(Network(line, {"pipes": PIPES}, fixed(n0=20.3, n3=0.0)), 20.3, 0.003)
    assert found.flow["pipe-2"][0] * HOUR == pytest.approx(10.2, rel=0.01)


def test_three_pipes_in_parallel_share_the_flow_as_in_white_6_18() -> None:
    """White, Fluid Mechanics, Example 6.18: 62.5, 25.9, 11.4, together 99.8 m³/h.

    From memory, recomputed with Colebrook. Tolerance 1.2 %, as the book's
    factors come from the chart.
    """
    line = tuple(Element(f"pipe-{i}", "a", "b", "pipes", i) for i in range(3))
    found = solve(Network(line, {"pipes": PIPES}, fixed(a=20.3, b=0.0)), 20.3, 0.003)
    flows = [found.flow[f"pipe-{i}"][0] * HOUR for i in range(3)]
    assert flows == pytest.approx([62.5, 25.9, 11.4], rel=0.012)
    assert sum(flows) == pytest.approx(99.8, rel=0.012)


def test_three_reservoirs_meet_at_the_junction_head_of_white_6_19() -> None:
    """White, Fluid Mechanics, Example 6.19: 34.53 m; -52.8, 47.0, 5.8 m³/h into the junction.

    Final figures read in a public excerpt; the rest from memory, recomputed
    with Colebrook. Tolerance 1.5 %, as the book iterates by hand.
    """
    line = tuple(Element(f"pipe-{i}", f"z{i}", "junction", "pipes", i) for i in range(3))
    found = solve(Network(line, {"pipes": PIPES}, fixed(z0=20.0, z1=100.0, z2=40.0)), 100.0, 0.01)
    flows = [found.flow[f"pipe-{i}"][0] * HOUR for i in range(3)]
    assert found.head["junction"][0] == pytest.approx(34.53, rel=0.015)
    assert flows == pytest.approx([-52.8, 47.0, 5.8], rel=0.015)


def test_three_reservoirs_with_given_resistances_share_as_in_example_9_12() -> None:
    """Three reservoirs at 135, 120 and 112 m: junction 131.6 m; 2.116, 0.565, 1.549 m³/s.

    FOSSEE/Scilab-TBC-Uploads, book 1962, Example 9.12 (p. 340 of the book).
    Read; recomputed. Tolerance 0.3 %, the printed digits.
    """
    line = tuple(Element(f"r{i}", f"e{i}", "junction", "pipes", i) for i in range(3))
    network = Network(line, {"pipes": square(0.7594, 36.33, 8.168)}, fixed(e0=135.0, e1=120.0, e2=112.0))
    found = solve(network, 135.0, 1.0)
    assert found.head["junction"][0] == pytest.approx(131.6, rel=0.003)
    assert [found.flow[f"r{i}"][0] for i in range(3)] == pytest.approx([2.116, -0.565, -1.549], rel=0.003)


def test_a_single_loop_shares_exactly_as_the_roots_of_its_resistances() -> None:
    """One unit of flow through two paths of resistance 1 and 4: 2/3 and 1/3.

    Exact (limit): h = r q², so the flows go as 1/√r. Tolerance 1e-6.
    """
    paths = (Element("a", "in", "out", "pipes", 0), Element("b", "in", "out", "pipes", 1))
    network = Network(paths, {"pipes": square(1.0, 4.0)}, fixed(out=0.0), {"in": np.array([-1.0])})
    found = solve(network, 1.0, 1.0)
    assert [found.flow[path][0] for path in "ab"] == pytest.approx([2 / 3, 1 / 3], rel=1e-6)
