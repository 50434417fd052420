"""Pumps whose curves rise somewhere: every state of their plants, which of them last, and which is there."""

from __future__ import annotations

import os
from collections import defaultdict

import numpy as np
import pytest
from msgspec import UNSET
from msgspec.structs import replace
from tests.checker import Fluid, check
from tests.drooping import drooping_plants, lifting

from loadfirst.physics.law import SHUT
from loadfirst.plant.answer import Possible, State
from loadfirst.plant.build import Built, build
from loadfirst.plant.curves import curves, load_curve, station_curve
from loadfirst.plant.drooping import all_states
from loadfirst.plant.load_table import load_at
from loadfirst.plant.npsh import equipped, in_place
from loadfirst.plant.npsh_marks import boiling
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.solved import solve_plants
from loadfirst.plant.state import true_state, true_states
from loadfirst.plant.station_curve import counted
from loadfirst.plant.station_tables import way_heads
from loadfirst.units import HOUR

COUNT = int(os.environ.get("LOADFIRST_PLANTS", "3000")) // 20


def possible(state: State) -> tuple[Possible, ...]:
    """Its states; there have to be several."""
    assert state.possible is not UNSET
    return state.possible


def with_history(one: ResolvedPlant, first: float | None, second: float | None = None) -> ResolvedPlant:
    """The same plant with other flows before. [m³/h]"""
    pump = one.plant.pump
    after = replace(pump, history_m3h=first, second=replace(pump.second, history_m3h=second))
    return one._replace(plant=replace(one.plant, pump=after))


def test_a_lift_above_the_head_at_no_flow_is_met_at_no_flow_and_twice_more() -> None:
    """Held by its check valve, on the rising stretch, on the falling one: the middle one does not last."""
    state = true_state(lifting(26.0))
    held, rising, falling = possible(state)
    assert held.flow == 0 < rising.flow < 10 / HOUR < falling.flow
    assert [each.lasts for each in possible(state)] == [True, False, True]
    assert [each.there for each in possible(state)] == [False, False, True]
    assert state.duty.flow == pytest.approx(falling.flow, rel=1e-9)
    assert state.duty.head == pytest.approx(falling.head, rel=1e-9)
    note = next(note for note in state.notes if note.kind == "more-than-one-state")
    assert note.facts == {"states": 3, "lasting": 2, "least_flow": 0, "most_flow": falling.flow}


@pytest.mark.parametrize(("before", "there"), [(0.0, 0), (0.5, 0), (6.0, 2), (14.0, 2), (30.0, 2), (None, 2)])
def test_what_was_before_decides(before: float | None, there: int) -> None:
    """On either side of the state that does not last; nothing said: it comes from much flow."""
    states = possible(true_state(with_history(lifting(26.0), before)))
    assert 0.5 / HOUR < states[1].flow < 6.0 / HOUR
    assert [each.there for each in states].index(True) == there


def test_a_low_lift_and_one_too_high_have_one_state() -> None:
    """Below the head at no flow the load is met once; above the highest, never but on the check valve."""
    for surface, flows in ((10.0, True), (40.0, False)):
        state = true_state(lifting(surface))
        assert state.possible is UNSET
        assert (state.duty.flow > 0) is flows
        assert "more-than-one-state" not in {note.kind for note in state.notes}


def test_the_second_of_two_pumps_cannot_come_in_against_the_first() -> None:
    """Both started together share the flow; a second that starts from none finds more than it gives."""
    both = lifting(25.5, "side-by-side")
    together = true_state(both)
    late = true_state(with_history(both, 20.0, 0.0))
    assert together.machines[0].flow == pytest.approx(together.machines[1].flow, rel=1e-6)
    assert late.machines[0].flow > 0 == late.machines[1].flow
    assert "held-shut" in {note.kind for note in late.notes}
    assert late.converged and together.converged
    assert late.duty.flow < together.duty.flow


def test_two_pumps_on_their_rising_stretches_do_not_stay_together() -> None:
    """Throttled to where each would rise, one takes the flow and holds the other shut."""
    state = true_state(lifting(5.0, "side-by-side", valve={"opening": 1.0, "kv_open_m3h": 9.0}))
    shared = [each for each in possible(state) if each.flows[0] == pytest.approx(each.flows[1], rel=1e-6)]
    assert [each.lasts for each in shared] == [False]
    assert sorted(state.machines[k].flow > 0 for k in (0, 1)) == [False, True]


@pytest.mark.parametrize("arrangement", ["single", "side-by-side", "in-line"])
@pytest.mark.parametrize("before", [None, 0.0])
def test_the_curves_pass_through_the_state_that_is_there(arrangement: str, before: float | None) -> None:
    """The load's and the station's, whichever of its states a plant is in."""
    one = with_history(lifting(52.0 if arrangement == "in-line" else 25.8, arrangement), before, before)
    built = build([one])
    state = true_state(built)
    drawn = curves(built, state.duty, 120, [machine.flow for machine in state.machines])
    near = 2e-3 * built.head_scale[0]
    load = [head if head is not None else np.nan for head in drawn.load]
    if state.duty.flow > 0:
        assert np.interp(state.duty.flow, drawn.flow, load) == pytest.approx(state.duty.head, abs=near)
    assert np.interp(state.duty.flow, drawn.flow, drawn.station) == pytest.approx(state.duty.head, abs=near)


@pytest.fixture(scope="module")
def plants() -> list[ResolvedPlant]:
    """Plants of every shape; some of their pumps have lost their droop again, by gas or by wear."""
    return list(drooping_plants(5, COUNT))


def test_every_state_balances_and_one_that_lasts_is_there(plants: list[ResolvedPlant]) -> None:
    """The one that is there, by the checker, which shares no code; the others by the laws themselves.

    Those to a millionth of the head.
    """
    kinds: dict[tuple[int, int], int] = defaultdict(int)
    for one in plants:
        built = build([one])
        solved = solve_plants(built)
        assert solved.solution.converged.all()
        liquid = built.liquids[0]
        off = check(
            one,
            Fluid(liquid.density, liquid.viscosity, liquid.vapour_pressure),
            {name: float(flow[0]) for name, flow in solved.solution.flow.items()},
            {node: float(head[0]) for node, head in solved.solution.head.items()},
        )
        assert off.head < 1e-8 * built.head_scale[0] and off.flow < 1e-8 * built.flow_scale[0], off
        if not built.droops[0]:
            continue
        states = solved.states[0]
        assert states.stable[states.chosen]
        kinds[len(states.flows), int(states.stable.sum())] += 1
        free = states.flows[states.flows[:, 0] < solved.most[0]]  # boiling, whatever the load asks is right
        assert not len(free) or _off(built, free).max() < 1e-6 * built.head_scale[0]
    assert sum(count for (several, _), count in kinds.items() if several > 1) > COUNT / 20


def _off(built: Built, flows: np.ndarray) -> np.ndarray:
    """How far each state's heads are from what is asked; where nothing but leakage flows anything is. [m]"""
    ways = flows[:, :1] if built.layout.side_by_side == 1 else flows
    asked, _ = load_at(built, ways.sum(axis=1), float(built.flow_scale[0]))
    each = built.rows(np.zeros(len(ways), dtype=np.intp))
    placed = equipped(each, counted(each, in_place(each, ways.sum(axis=1))))
    off = np.abs(way_heads(placed, ways)[0] - asked[:, None]).max(axis=1)
    return np.where(np.abs(ways.sum(axis=1)) > 4 * built.head_scale[0] / SHUT, off, 0.0)


def test_no_state_of_one_way_is_missing(plants: list[ResolvedPlant]) -> None:
    """Against every change of sign on an axis of four thousand flows."""
    looked = 0
    for one in plants[: COUNT // 3]:
        built = build([one])
        if not built.droops[0] or built.layout.side_by_side > 1:
            continue
        states = all_states(built)
        last = float(built.flow_scale[0])
        flow = np.linspace(0.001, 3.0, 4_000) * last
        flow = flow[flow < boiling(built, flow[-1])]
        if len(flow) < 2:
            continue
        left = station_curve(built, flow[None])[0] - load_curve(built, flow[None])[0][0]
        crossings = flow[np.flatnonzero((left[1:] > 0) != (left[:-1] > 0))]
        found = states.flows[:, 0]
        found = found[(found > flow[0]) & (found < flow[-1])]
        assert len(found) == len(crossings), (found / last, crossings / last)
        assert np.abs(found - crossings).max(initial=0.0) < 1e-3 * last
        looked += 1
    assert looked > COUNT / 20


def test_every_state_that_lasts_stays_where_it_is_let_go(plants: list[ResolvedPlant]) -> None:
    """With its own flows for a history, each of them is the one that is there."""
    for one in plants:
        state = true_state(one)
        for each in () if state.possible is UNSET else state.possible:
            if each.lasts and min(each.flows) >= 0:
                again = true_state(with_history(one, *(flow * HOUR for flow in (*each.flows, 0.0)[:2])))
                there = next(other for other in possible(again) if other.there)
                assert there.flows == pytest.approx(each.flows, abs=1e-4 * state.flow_scale)


def test_a_batch_equals_its_plants_one_by_one() -> None:
    """Plants that droop and plants that do not, solved together."""
    some = [lifting(26.0), with_history(lifting(26.0), 0.0), lifting(10.0)]
    for one, together in zip(some, true_states(some), strict=True):
        alone = true_state(one)
        assert together.duty.flow == pytest.approx(alone.duty.flow, rel=1e-9, abs=1e-12)
        assert (together.possible is UNSET) == (alone.possible is UNSET)
