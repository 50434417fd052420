"""What may stand on the way to the delivery: a filter, a worn check valve, a summit, a front of liquid."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.rig import rig
from tests.states import kinds, stack_of

from loadfirst.plant.state import State, true_state
from loadfirst.units import ATMOSPHERE

ON = {"fitted": True}
SLOW = {"frequency_hz": 15.0}
POURS = {"surface_m": 10.0, "bottom_m": 8.0, "top_m": 12.0, "outlet_m": 14.0}
DIRECT = {"opening": 1.0, "kv_open_m3h": 200.0}


def place(state: State, name: str) -> float | None:
    """Gauge pressure at a place along the way. [Pa]"""
    return next(point.pressure for point in state.path if point.place == name)


def test_a_fouled_filter_is_a_heavier_load() -> None:
    """Flow falls, both gauges rise, the current falls: the pump is sound (directions: common practice)."""
    clean, fouled = (true_state(rig(filter=ON | {"fouling": f})) for f in (0.0, 20.0))
    assert fouled.flow < clean.flow
    for node in ("suction", "discharge", "after-valve"):
        assert fouled.nodes[node].pressure > clean.nodes[node].pressure
    assert fouled.machines[0].current < clean.machines[0].current
    assert stack_of(fouled)["filter"] > stack_of(clean)["filter"] > 0
    assert [point.place for point in clean.path].index("after-filter") == 6
    assert place(fouled, "after-filter") < place(clean, "after-filter")


def test_a_clean_filter_loses_what_its_plate_says() -> None:
    """0.1 bar at 50 m³/h with water of 20 °C, housing apart."""
    state = true_state(rig(filter=ON | {"housing_k": 0.0}, valve=DIRECT))
    metres = 0.1e5 / (state.liquid.density * 9.80665)
    assert stack_of(state)["filter"] == pytest.approx(metres * state.flow * 3600 / 50, rel=2e-4)


def test_a_filter_on_thick_oil_looks_fouled() -> None:
    """Through the medium the drop goes with the viscosity."""
    oil = {"name": "oil", "density_kgm3": 900.0, "viscosity_mpas": 90.0, "vapour_bar": 0.0}
    thin, thick = true_state(rig(filter=ON)), true_state(rig(filter=ON, liquid=oil))
    assert stack_of(thick)["filter"] / thick.flow > 50 * stack_of(thin)["filter"] / thin.flow


def test_a_check_valve_stuck_open_lets_the_plant_run_backward() -> None:
    """Sound, nothing moves; stuck, the vessel empties through a pump that turns the right way too slowly."""
    sound, stuck = true_state(rig(drive=SLOW)), true_state(rig(drive=SLOW, check={"stuck_open": True}))
    assert sound.flow == 0.0 and stuck.flow < 0
    assert ("reverse-flow", "pump-1") in kinds(stuck)


def test_a_passing_check_valve_lets_less_through_than_one_stuck_open() -> None:
    """By the flow coefficient that its seat leaves; forward it is like a sound one."""
    flows = [
        true_state(rig(drive=SLOW, check=check)).flow
        for check in ({}, {"leak_kv_m3h": 0.5}, {"leak_kv_m3h": 5.0}, {"stuck_open": True})
    ]
    assert flows == sorted(flows, reverse=True) and flows[0] == 0.0 > flows[1]
    state = true_state(rig(drive=SLOW, check={"leak_kv_m3h": 0.5}))
    held = -stack_of(state)["check-valve"] * 999.1 * 9.80665 / 1e5  # [bar]
    assert -state.flow * 3600 == pytest.approx(0.5 * held**0.5, rel=1e-9)
    assert true_state(rig(check={"leak_kv_m3h": 5.0})).flow == true_state(rig()).flow


def test_a_line_behind_a_passing_check_valve_does_not_stay_full() -> None:
    """Its pouring end lets air in: what is missing is not reached, where a tight valve would hold it."""
    tight, passing = (
        true_state(rig(drive=SLOW, delivery=POURS, check={"leak_kv_m3h": leak})) for leak in (0.0, 2.0)
    )
    assert "not-reached" not in [kind for kind, _ in kinds(tight)]
    assert ("not-reached", "pipe-end") in kinds(passing)
    assert stack_of(passing)["check-valve"] == pytest.approx(0.0, abs=1e-6)


def test_a_primed_siphon_asks_for_the_end_only() -> None:
    """However high the summit, as long as it pulls; split there, pipe and fittings are the same."""
    plain, over = true_state(rig(valve=DIRECT)), true_state(rig(valve=DIRECT, summit=ON))
    assert over.flow == pytest.approx(plain.flow, rel=1e-9)
    assert stack_of(over) == pytest.approx(stack_of(plain), rel=1e-8, abs=1e-9)
    assert kinds(over) == []


def test_air_at_the_summit_is_a_heavier_load() -> None:
    """The same pump, the same valve, less flow, higher gauge; the block beyond the lift says why."""
    full, air = (
        true_state(rig(summit=ON | {"primed": primed, "height_m": 30.0})) for primed in (True, False)
    )
    assert air.flow < full.flow
    assert air.nodes["discharge"].pressure > full.nodes["discharge"].pressure
    assert stack_of(air)["summit"] >= 16.0
    assert kinds(air) == [("not-primed", "summit")]
    assert place(air, "summit") == pytest.approx(0.0, abs=1e-3)
    assert sum(stack_of(air).values()) == pytest.approx(air.station.head, rel=1e-9)


def test_a_summit_beyond_what_the_air_can_push_breaks_the_siphon() -> None:
    """At vapour pressure, and no lower: the block is what is left to be lifted."""
    state = true_state(rig(summit=ON | {"height_m": 30.0}))
    assert ("siphon-broken", "summit") in kinds(state)
    pressure = place(state, "summit")
    assert pressure == pytest.approx(state.liquid.vapour_pressure - ATMOSPHERE, abs=0.01)
    assert "below-vapour-pressure" not in [kind for kind, _ in kinds(state)]


def test_a_pump_too_weak_for_the_summit_does_not_reach_it() -> None:
    """Without a check valve the liquid stands below it; with one the line stays full up to it."""
    high = ON | {"height_m": 30.0, "primed": False}
    bare, held = (
        true_state(rig(summit=high, drive={"frequency_hz": 30.0}, check={"fitted": fitted}))
        for fitted in (False, True)
    )
    assert bare.flow == held.flow == 0.0
    assert ("not-reached", "summit") in kinds(bare) and place(bare, "summit") is None
    assert ("not-reached", "summit") not in kinds(held)
    assert held.nodes["after-valve"].head == pytest.approx(30.0, abs=1e-4)
    assert stack_of(held)["check-valve"] == pytest.approx(held.station.head - 28.0, rel=1e-4)
    for state in (bare, held):
        assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-6)


@settings(deadline=None, max_examples=60)
@given(st.floats(-5, 60), st.floats(0.05, 0.95), st.booleans(), st.floats(0, 1))
def test_no_pressure_at_a_summit_is_below_that_of_vapour(
    height: float, at: float, primed: bool, opening: float
) -> None:
    """Whatever its height and place, as long as liquid runs forward."""
    summit = ON | {"height_m": height, "at": at, "primed": primed}
    state = true_state(rig(summit=summit, valve={"opening": opening, "kv_open_m3h": 300.0}))
    pressure = place(state, "summit")
    assert state.flow >= 0
    assert pressure is None or pressure + ATMOSPHERE >= state.liquid.vapour_pressure
    assert None in [block.head for block in state.stack] or sum(stack_of(state).values()) == pytest.approx(
        state.station.head, rel=1e-6
    )


def test_a_line_that_is_being_filled_asks_for_more_and_more() -> None:
    """The front rises: at first the pump runs out to the right, then the flow falls to the duty."""
    states = [true_state(rig(discharge={"filled": share})) for share in (0.01, 0.3, 0.7, 0.99, 1.0)]
    flows = [state.flow for state in states]
    assert flows == sorted(flows, reverse=True)
    assert [("line-filling", "pipe-end") in kinds(state) for state in states] == [True] * 4 + [False]
    for state in states:
        assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-9)
        assert place(state, "pipe-end") is not None
    assert place(states[1], "pipe-end") == pytest.approx(0.0, abs=1e-3)
    assert stack_of(states[1])["lift"] == pytest.approx(0.5 + 0.3 * 11.5 - 2.0, rel=1e-12)


def test_a_line_is_filled_up_to_its_summit() -> None:
    """Beyond it the liquid falls by itself: the front stays there."""
    summit = ON | {"height_m": 20.0, "at": 0.5}
    heights = []
    for share in (0.25, 0.5, 0.9):
        state = true_state(rig(summit=summit, discharge={"filled": share}))
        heights.append(next(note.facts["height"] for note in state.notes if note.kind == "line-filling"))
    assert heights == pytest.approx([0.5 + 19.5 / 2, 20.0, 20.0], rel=1e-12)


def test_a_high_vessel_that_empties_over_a_summit_is_held_back_by_the_pressure_there() -> None:
    """Without a check valve: what comes back leaves the summit its vapour pressure, and no less."""
    high = {"surface_m": 25.0, "bottom_m": 24.0, "top_m": 26.0}
    line = {"length_m": 40.0, "fittings_k": 2.0, "bore_mm": 60.0}
    state = true_state(
        rig(
            summit=ON | {"height_m": 33.5, "at": 0.3}, delivery=high, discharge=line, check={"fitted": False},
            drive={"frequency_hz": 5.0}, valve=DIRECT,
        )
    )  # fmt: skip
    assert state.converged and state.flow < 0
    assert ("siphon-broken", "summit") in kinds(state)
    assert place(state, "summit") == pytest.approx(state.liquid.vapour_pressure - ATMOSPHERE, abs=0.01)
    assert "below-vapour-pressure" not in [kind for kind, where in kinds(state) if where == "summit"]
    assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-6)
