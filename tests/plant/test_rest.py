"""Plants at rest: what holds, what is not reached, and what nobody knows."""

from __future__ import annotations

import math
from typing import Any

import pytest
from tests.rig import rig
from tests.states import kinds, stack_of

from loadfirst.instruments.panel import readings
from loadfirst.plant.state import State, true_state

SLOW = {"frequency_hz": 15.0}
TWO = ["side-by-side", "in-line"]
HIGH = {"surface_m": 40.0, "bottom_m": 38.0, "top_m": 42.0}


@pytest.mark.parametrize(("arrangement", "times"), [("single", 1), ("side-by-side", 1), ("in-line", 2)])
def test_holding_check_valves_are_a_block_and_the_answer_is_the_pumps_own_head(
    arrangement: str, times: int
) -> None:
    """38 m stand above the check valves; the pumps give what pumps at rest give, not what is held."""
    state = true_state(rig(pump={"arrangement": arrangement}, drive=SLOW, delivery=HIGH))
    own = times * state.machines[0].head
    assert state.flow == 0.0 and own < 12
    assert state.station.head == state.duty.head == pytest.approx(own, rel=1e-12)
    assert stack_of(state)["check-valve"] == pytest.approx(own - 38.0, rel=1e-6)
    assert state.balance.answer == pytest.approx(own, rel=1e-6)


@pytest.mark.parametrize("arrangement", TWO)
def test_two_gauges_show_what_check_valves_between_them_hold(arrangement: str) -> None:
    """The gauges differ by the whole column; the check valves' part leads from there to the pumps' head."""
    state = true_state(rig(pump={"arrangement": arrangement}, drive=SLOW, delivery=HIGH))
    assert state.balance.pressure_head == pytest.approx(38.0, rel=1e-6)
    assert state.balance.check_valve == pytest.approx(state.station.head - 38.0, rel=1e-6)


def test_a_single_pumps_check_valve_stands_behind_its_gauge() -> None:
    """It belongs to the load and not to the balance of the two gauges."""
    state = true_state(rig(check={"k": 50.0}))
    assert state.balance.check_valve == 0.0
    assert stack_of(state)["check-valve"] == pytest.approx(50 * velocity_head(state), rel=1e-6)


@pytest.mark.parametrize(("arrangement", "times"), [("side-by-side", 1 / 4), ("in-line", 2)])
def test_two_pumps_lose_head_in_check_valves_of_their_own(arrangement: str, times: float) -> None:
    """Side by side each has half the flow, in line both have all of it; loss by the book: K v²/2g."""
    state = true_state(rig(pump={"arrangement": arrangement}, check={"k": 20.0}))
    lost = times * 20.0 * velocity_head(state)
    assert stack_of(state)["check-valve"] == pytest.approx(lost, rel=1e-6)
    assert state.balance.check_valve == pytest.approx(lost, rel=1e-6)


def velocity_head(state: State) -> float:
    """v²/2g in the default discharge line of 80 mm. [m]"""
    speed = state.station.flow / (3.141592653589793 / 4 * 0.08**2)
    return float(speed**2 / (2 * 9.80665))


def test_a_check_valve_that_is_not_fitted_is_no_block() -> None:
    """Nothing is there that could lose or hold; a single pump's goes with the line."""
    assert "check-valve" not in stack_of(true_state(rig(check={"fitted": False})))
    off = {"attached": False}
    assert "check-valve" not in stack_of(true_state(rig(discharge=off)))
    assert "check-valve" in stack_of(true_state(rig(discharge=off, pump={"arrangement": "in-line"})))


@pytest.mark.parametrize("arrangement", ["single", *TWO])
def test_liquid_that_does_not_reach_the_open_flange_is_said_to_lack_lift(arrangement: str) -> None:
    """Line off, supply far below: no jet, no gauge reading, and a block of what is missing of the lift."""
    sunk = {"surface_m": -25.0, "bottom_m": -27.0, "top_m": -20.0}
    pump = {"arrangement": arrangement}
    one = rig(supply=sunk, discharge={"attached": False}, drive=SLOW, pump=pump)
    state = true_state(one)
    assert state.flow == 0.0 and stack_of(state)["jet"] == 0.0
    assert stack_of(state)["not-reached"] == pytest.approx(state.station.head - 25.5, rel=1e-9)
    assert stack_of(state).get("check-valve", 0.0) == 0.0
    assert state.nodes["discharge"].pressure is None and state.station.discharge_head is None
    note = next(note for note in state.notes if note.kind == "not-reached")
    assert note.where == "discharge"
    assert note.facts["head"] + note.facts["missing"] == pytest.approx(25.5, rel=1e-9)
    assert "pressure-undefined" not in [kind for kind, _ in kinds(state)]
    shown = {reading.id: reading for reading in readings(state, one.plant)}
    assert shown["gauge-discharge"].value is None


def test_liquid_that_reaches_the_flange_is_not_said_to_lack_lift() -> None:
    """With flow there is a jet and no missing lift."""
    state = true_state(rig(discharge={"attached": False}))
    assert "not-reached" not in stack_of(state)
    assert stack_of(state)["jet"] > 0


def test_a_pipes_end_that_the_liquid_does_not_reach_has_no_pressure() -> None:
    """No check valve: the liquid stands in the pipe below its end, however far; it does not boil up there."""
    high = {**HIGH, "top_m": 60.0, "outlet_m": 50.0}
    state = true_state(rig(drive=SLOW, check={"fitted": False}, delivery=high))
    assert stack_of(state)["not-reached"] == pytest.approx(state.station.head - 48.0, rel=1e-9)
    assert stack_of(state)["fittings"] == 0.0
    assert kinds(state) == [("dead-headed", "pump-1"), ("not-reached", "pipe-end")]
    end = next(point for point in state.path if point.place == "pipe-end")
    assert end.head is None and end.pressure is None


@pytest.mark.parametrize("arrangement", ["single", *TWO])
def test_a_line_behind_a_holding_check_valve_stands_full_up_to_its_end(arrangement: str) -> None:
    """The pipe ends above the surface: the check valve holds the column, and its pressure is known."""
    high = {**HIGH, "top_m": 60.0, "outlet_m": 50.0}
    state = true_state(rig(drive=SLOW, pump={"arrangement": arrangement}, delivery=high))
    assert stack_of(state)["check-valve"] == pytest.approx(state.station.head - 48.0, rel=1e-6)
    assert state.nodes["after-valve"].head == pytest.approx(50.0, rel=1e-6)
    assert kinds(state)[-1][0] == "dead-headed" or arrangement == "in-line"


@pytest.mark.parametrize("arrangement", ["single", *TWO])
def test_what_two_shut_elements_share_is_not_made_up(arrangement: str) -> None:
    """Valve shut and check valve holding: the blocks of both are unknown, the pumps' head is not."""
    state = true_state(rig(drive=SLOW, valve={"opening": 0.0}, pump={"arrangement": arrangement}))
    unknown = [block.block for block in state.stack if block.head is None]
    assert unknown == ["check-valve", "valve"]
    assert state.station.head == state.duty.head > 0
    assert state.balance.answer == pytest.approx(state.station.head, rel=1e-9)


@pytest.mark.parametrize("arrangement", TWO)
def test_an_undefined_discharge_pressure_is_no_number_anywhere(arrangement: str) -> None:
    """Between shut check valves and a shut valve: balance, station, node and path say so."""
    state = true_state(rig(drive=SLOW, valve={"opening": 0.0}, pump={"arrangement": arrangement}))
    place = next(point for point in state.path if point.place == "discharge")
    found: list[Any] = [state.balance.pressure_head, state.balance.check_valve, state.station.discharge_head]
    found += [state.nodes["discharge"].pressure, place.head, place.pressure]
    assert found == [None] * 6


@pytest.mark.parametrize("share", [0.99, 1.01])
def test_a_flow_is_shown_from_a_hundred_thousandth_of_the_usual_flow_on(share: float) -> None:
    """A valve all but shut that passes 1 % less than that, and 1 % more: the one is shown as no flow."""
    shut = true_state(rig(valve={"opening": 0.0}))
    least = 1e-5 * shut.flow_scale
    through_valve = stack_of(shut)["valve"] * 999.1 * 9.80665 / 1e5  # [bar], of the water that defines Kv
    kv = share * least * 3600 / math.sqrt(through_valve)
    valve = {"kv_open_m3h": 0.01, "rangeability": 200, "opening": 1 + math.log(kv / 0.01) / math.log(200)}
    state = true_state(rig(valve=valve))
    assert state.flow == (pytest.approx(share * least, rel=1e-4) if share > 1 else 0.0)
