"""The packaged plants with more than one way: each tells the story that its file promises."""

from __future__ import annotations

from typing import Any

import pytest

from loadfirst.plant import library
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import State, true_state


def state(name: str, **edits: Any) -> State:
    """A packaged plant with some keys changed, dots written as two underscores."""
    keys = {key.replace("__", "."): value for key, value in edits.items()}
    return true_state(resolve_data(apply_edits(library.data("plants", name), keys)))


def pressure(of: State, node: str = "discharge") -> float:
    """Gauge pressure at a node. [Pa]"""
    found = of.nodes[node].pressure
    assert found is not None
    return found


def test_opening_hoses_in_the_second_hall_lowers_the_gauge_and_raises_the_flow() -> None:
    """The load got lighter; so says the current too."""
    usual, hoses = state("two-halls"), state("two-halls", branch__opening=0.6)
    assert pressure(hoses) < pressure(usual)
    assert hoses.station.flow > usual.station.flow and hoses.flow < usual.flow
    assert hoses.machines[0].current > usual.machines[0].current


def test_with_both_halls_shut_the_return_line_still_runs() -> None:
    """No dead head."""
    shut = state("two-halls", branch__opening=0.0, valve__opening=0.0)
    assert shut.station.flow == pytest.approx(shut.aside["return-line"], rel=1e-4)
    assert "dead-headed" not in [note.kind for note in shut.notes]


def test_air_at_the_crest_costs_metres_until_the_far_leg_runs_full() -> None:
    """The same pump, the same valve: history tells them apart."""
    full, air = state("over-the-dam"), state("over-the-dam", summit__primed=False)
    assert air.station.head - full.station.head > 2.0
    assert air.flow < full.flow and pressure(air) > pressure(full)
    assert [note.kind for note in air.notes] == ["not-primed"]


def test_shutting_one_of_the_twin_mains_looks_like_a_fouled_filter_but_for_the_gauge_behind_it() -> None:
    """Both are heavier loads; the pump is sound in both."""
    usual = state("twin-mains")
    for heavier in (state("twin-mains", second_line__fitted=False), state("twin-mains", filter__fouling=4.0)):
        assert heavier.flow < usual.flow and pressure(heavier) > pressure(usual)
        assert heavier.machines[0].shaft_power < usual.machines[0].shaft_power
