"""Plants whose pumps' curves droop and are short of NPSH: all their states, with the head that is left."""

from __future__ import annotations

import os
from collections import Counter
from typing import Any

import numpy as np
import pytest
from msgspec import UNSET
from tests.drooping import DROOPING, lifting, short_drooping_plants
from tests.trial import checked, faults, with_flows_before

from loadfirst.plant.answer import Possible, State
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves, load_curve, station_curve
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.solved import solve_plants
from loadfirst.plant.state import true_state, true_states

COUNT = int(os.environ.get("LOADFIRST_PLANTS", "3000")) // 40
HOT: dict[str, Any] = {"liquid": {"temperature_c": 99.7}, "pump": {"centre_m": 0.5}}
HIGH: dict[str, Any] = {"liquid": {"temperature_c": 99.7}, "pump": {"centre_m": 1.0}}
"""Water that nearly boils in its vessel, and a pump not far below its surface."""


def clogged(k: float) -> dict[str, Any]:
    """A suction line with such a strainer."""
    return {"suction": {"strainer_k": k}}


THIN: dict[str, Any] = {
    "suction": {"bore_mm": 40.0, "strainer_k": 10.0},
    "pump": {"curve": DROOPING | {"npshr_m": [0.01] * 7}},
}
"""A suction line in which the liquid boils before these pumps are short."""

SHORT: dict[str, tuple[float, str, dict[str, Any]]] = {
    "hot, one state": (24.5, "single", HOT),
    "hot, three states": (26.0, "single", HOT),
    "hot and high": (26.0, "single", HIGH),
    "in line, hot": (50.0, "in-line", HOT),
    "in line, hot, three states": (52.5, "in-line", HOT),
    "in line, hot and high": (52.5, "in-line", HIGH),
    "behind a strainer": (10.0, "single", clogged(800.0)),
    "in line behind a strainer": (20.0, "in-line", clogged(800.0)),
    "boiling in a thin line": (10.0, "single", THIN),
    "in line, boiling in a thin line": (40.0, "in-line", THIN),
}
"""Lift [m], arrangement and what makes it short."""


@pytest.fixture(params=SHORT)
def short(request: pytest.FixtureRequest) -> ResolvedPlant:
    """One of them."""
    lift, arrangement, tables = SHORT[request.param]
    return lifting(lift, arrangement, **tables)


def noted(state: State) -> set[str]:
    """Kinds of its notes."""
    return {note.kind for note in state.notes}


def possible(state: State) -> tuple[Possible, ...]:
    """Its states; there have to be several."""
    assert state.possible is not UNSET
    return state.possible


def test_every_state_is_balanced_and_an_independent_checker_agrees(short: ResolvedPlant) -> None:
    """NPSH and the share of the head that is left are recomputed there; so is every state that lasts."""
    solved = solve_plants(build([short]))
    off = checked(solved, 0)
    assert off.head <= 2e-9 * solved.built.head_scale[0] and off.flow <= 2e-9 * solved.built.flow_scale[0]
    assert faults(solved, 0) == []


def test_less_flows_than_with_plenty(short: ResolvedPlant) -> None:
    """Against the same plant under 30 bar more in both vessels."""
    lift, arrangement, tables = next(
        (lift, arrangement, tables)
        for lift, arrangement, tables in SHORT.values()
        if lifting(lift, arrangement, **tables) == short
    )
    high = {"surface_m": lift + 2, "bottom_m": lift, "top_m": lift + 3, "gas_bar": 30.0}
    plenty = true_state(lifting(lift, arrangement, **tables, supply={"gas_bar": 30.0}, delivery=high))
    state = true_state(short)
    assert not noted(plenty) & {"npsh-short", "bubbles", "suction-boils"}
    assert noted(state) & {"npsh-short", "bubbles", "suction-boils"}
    assert state.duty.flow < plenty.duty.flow
    assert "npsh-not-counted" not in noted(state)


def test_the_curves_pass_through_the_state_that_is_there(short: ResolvedPlant) -> None:
    """The load's and the station's, or this falls past it down its cliff; and so do those that are drawn."""
    built, state = build([short]), true_state(short)
    flow, near = np.array([[state.duty.flow]]), 1e-6 * float(built.head_scale[0])
    answered = float(station_curve(built, flow)[0, 0])
    assert float(load_curve(built, flow)[0][0, 0]) == pytest.approx(state.duty.head, abs=near)
    if "suction-boils" in noted(state):
        assert answered >= state.duty.head - near
        return
    assert answered == pytest.approx(state.duty.head, abs=near)
    drawn = curves(built, state.duty, 120, [machine.flow for machine in state.machines])
    known = [head if head is not None else np.nan for head in drawn.station]
    assert np.interp(state.duty.flow, drawn.flow, known) == pytest.approx(state.duty.head, abs=1e4 * near)


def test_no_state_is_missing(short: ResolvedPlant) -> None:
    """Against every change of sign on an axis of four thousand flows, up to where the suction boils."""
    solved = solve_plants(build([short]))
    states, last = solved.states[0], float(solved.built.flow_scale[0])
    assert states.around is not None
    flow = np.linspace(0.001, 3.0, 4_000) * last
    flow = flow[flow < solved.most[0]]
    left = station_curve(solved.built, flow[None])[0] - load_curve(solved.built, flow[None])[0][0]
    crossings = flow[np.flatnonzero((left[1:] > 0) != (left[:-1] > 0))]
    found = states.flows[:, 0]
    found = found[(found > flow[0]) & (found < flow[-1])]
    assert found == pytest.approx(crossings, abs=1e-3 * last)


def test_hot_water_takes_head_from_the_state_with_most_flow_only() -> None:
    """The state held by the check valve and the one that does not last have NPSH enough: they stay."""
    cold, hot = (possible(true_state(lifting(26.0, **tables))) for tables in ({}, HOT))
    assert [each.lasts for each in hot] == [each.lasts for each in cold] == [True, False, True]
    assert hot[0].flow == cold[0].flow == 0
    assert hot[1].flow == pytest.approx(cold[1].flow, rel=0.03)
    assert hot[2].flow < 0.99 * cold[2].flow


def test_where_the_state_with_much_flow_is_lost_the_plant_stands_at_no_flow() -> None:
    """Whatever was before: the higher the pump, the less flows, and then the load is met nowhere else."""
    before = possible(true_state(lifting(26.0)))[2].flows
    flows = []
    for centre in (0.0, 0.5, 1.0, 1.5):
        one = lifting(26.0, liquid=HOT["liquid"], pump={"centre_m": centre})
        flows.append(true_state(with_flows_before(one, before)).duty.flow)
    assert flows[0] > flows[1] > flows[2] > flows[3] == 0
    assert flows[2] < 0.6 * flows[0]


def test_a_batch_equals_its_plants_one_by_one() -> None:
    """Short and not, in one state and in several."""
    tables: tuple[dict[str, Any], ...] = ({}, HOT, HIGH, clogged(800.0), THIN)
    some = [lifting(lift, **each) for lift in (10.0, 26.0) for each in tables]
    for one, together in zip(some, true_states(some), strict=True):
        alone = true_state(one)
        assert together.duty.flow == pytest.approx(alone.duty.flow, rel=1e-9, abs=1e-12)
        assert noted(together) == noted(alone)


def test_with_plenty_of_npsh_nothing_is_another() -> None:
    """To the last digit: neither the ways nor the laws are touched."""
    solved = solve_plants(build([lifting(26.0)]))
    assert solved.states[0].around is None
    assert np.isinf(solved.most).all()


def test_side_by_side_says_that_it_does_not_count_the_want() -> None:
    """How much head a pump would lose; the curves leave it out too, and pass through the duty."""
    one = lifting(24.5, "side-by-side", **HOT)
    state, built = true_state(one), build([one])
    note = next(note for note in state.notes if note.kind == "npsh-not-counted")
    assert 0 < note.facts["lost"] < state.duty.head
    flows = [machine.flow for machine in state.machines]
    drawn = curves(built, state.duty, 120, flows)
    known = [head if head is not None else np.nan for head in drawn.station]
    near = 2e-3 * float(built.head_scale[0])
    assert np.interp(state.duty.flow, drawn.flow, known) == pytest.approx(state.duty.head, abs=near)
    assert "npsh-not-counted" not in noted(true_state(lifting(24.5, "side-by-side")))


def test_any_that_are_short_hold_what_is_asked_of_every_answer() -> None:
    """Random ones of every shape: the checker, every state that is told, every dial."""
    kinds: Counter[str] = Counter()
    for one in short_drooping_plants(5, COUNT):
        solved = solve_plants(build([one]))
        assert faults(solved, 0) == []
        if 0 in solved.states and solved.states[0].around is not None:
            kinds[one.plant.pump.arrangement] += 1
    assert min(kinds["single"], kinds["in-line"]) >= COUNT / 20
