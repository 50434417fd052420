"""Vessels whose surface moves while a step goes by."""

from __future__ import annotations

import numpy as np
import pytest

from loadfirst.physics.law import SHUT, Array
from loadfirst.physics.level import Vessels
from loadfirst.physics.network import Element, Network, solve
from loadfirst.physics.pipe import Pipes

FLOW = np.array([[-0.02], [0.0], [0.01], [0.03]])


def drops(law: Vessels) -> Array:
    """At `FLOW`."""
    return law.head_drop(FLOW)[0][:, 0]


def test_the_surface_moves_by_what_is_gained_over_the_area() -> None:
    """0.02 m³/s more than comes in, for 50 s from 10 m²: 0.1 m."""
    assert drops(Vessels(0.01, 5.0, 5.0)) == pytest.approx([-0.15, -0.05, 0.0, 0.1])


def test_a_full_one_gets_no_fuller_and_an_empty_one_gives_nothing() -> None:
    """Flat on one side, a shut line on the other."""
    assert drops(Vessels(0.01, 0.0, 5.0)) == pytest.approx([0, 0, 0, 0.1])
    assert drops(Vessels(0.01, 5.0, 5.0, no_out=True)) == pytest.approx(
        [-0.15, -0.05, SHUT * 0.01 - 0.05, SHUT * 0.03 - 0.05]
    )
    assert drops(Vessels(0.01, 5.0, 5.0, no_back=True))[0] == pytest.approx(-0.02 * SHUT)
    assert Vessels(0.0, 5.0, 5.0, no_back=True).shut(FLOW)[:, 0].tolist() == [True, False, False, False]


def test_two_vessels_and_a_pipe_are_one_network_however_long_the_step() -> None:
    """In a very long step both end at one level, by their areas: 3 and 1 m² from 2 and 0 m give 1.5 m."""
    span = 1e7
    elements = (
        Element("one", "one-still", "a", "levels", 0),
        Element("pipe", "a", "b", "pipes", 0),
        Element("other", "b", "other-still", "levels", 1),
    )
    laws = {
        "levels": Vessels(0.0, [[span / 3, span / 1]], [[span / 3, span / 1]]),
        "pipes": Pipes(10.0, 0.1, 5e-5, 2.0, 1e-6),
    }
    found = solve(
        Network(elements, laws, {"one-still": np.array([2.0]), "other-still": np.array([0.0])}), 2.0, 0.01
    )
    assert found.converged.all()
    assert found.head["a"][0] == pytest.approx(1.5, abs=1e-4)
    assert found.head["b"][0] == pytest.approx(1.5, abs=1e-4)
