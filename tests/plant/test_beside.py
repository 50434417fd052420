"""What stands beside the way to the delivery: return line, burst, second line."""

from __future__ import annotations

import pytest
from tests.rig import rig
from tests.states import kinds, stack_of

from loadfirst.errors import InputError
from loadfirst.plant.state import true_state

ON = {"fitted": True}
SHUT = {"opening": 0.0}
G = 9.80665


def test_a_return_line_takes_flow_that_nobody_gets() -> None:
    """The station gives more, the delivery gets less, the gauge falls: the pump looks weak and is not."""
    alone, both = true_state(rig()), true_state(rig(return_line=ON))
    assert both.station.flow == pytest.approx(both.flow + both.aside["return-line"], rel=1e-9)
    assert both.station.flow > alone.station.flow and both.flow < alone.flow
    assert both.nodes["discharge"].pressure < alone.nodes["discharge"].pressure
    assert both.machines[0].current > alone.machines[0].current
    assert sum(stack_of(both).values()) == pytest.approx(both.station.head, rel=1e-9)


def test_with_the_control_valve_shut_the_return_line_keeps_the_pump_alive() -> None:
    """That is what it is for: no flow to the delivery, and no dead head."""
    state = true_state(rig(return_line=ON, valve=SHUT))
    assert state.flow == 0.0 and state.station.flow == pytest.approx(state.aside["return-line"], rel=1e-5)
    assert kinds(state) == []
    assert stack_of(state)["valve"] > 20
    assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-6)


def test_a_shut_return_line_changes_nothing() -> None:
    """Its valve holds what its pipe would take."""
    alone, both = true_state(rig()), true_state(rig(return_line=ON | SHUT))
    assert both.flow == pytest.approx(alone.flow, rel=1e-6)
    assert both.aside == {"return-line": 0.0}
    assert kinds(both) == []


def test_without_a_check_valve_a_stopped_plant_runs_back_through_the_return_line_too() -> None:
    """Slow pump, high tank: backward through pump and return line, and both are told of."""
    state = true_state(rig(return_line=ON, check={"fitted": False}, drive={"frequency_hz": 10.0}))
    assert state.flow < 0 < state.aside["return-line"]
    assert ("reverse-flow", "pump-1") in kinds(state)


def test_behind_two_check_valves_a_line_drains_through_the_return_line() -> None:
    """It leaves behind the two of them: a pouring end then stands dry, and what is missing is said."""
    high = {"surface_m": 40.0, "bottom_m": 38.0, "top_m": 42.0, "outlet_m": 60.0}
    two = {"arrangement": "side-by-side"}
    state = true_state(rig(pump=two, return_line=ON, delivery=high, drive={"frequency_hz": 30.0}))
    assert state.flow == 0.0 and state.aside["return-line"] > 0
    assert ("not-reached", "pipe-end") in kinds(state)


def test_a_burst_takes_the_pressure_and_the_flow() -> None:
    """The gauge falls because the load is light; a caution comes with it."""
    alone, burst = true_state(rig()), true_state(rig(burst=ON | {"hole_mm": 40.0}))
    assert burst.station.flow == pytest.approx(burst.flow + burst.aside["burst"], rel=1e-9)
    assert burst.flow < alone.flow < burst.station.flow
    assert burst.nodes["discharge"].pressure < alone.nodes["discharge"].pressure
    note = next(note for note in burst.notes if note.kind == "burst")
    assert note.where == "burst" and note.facts["flow"] == burst.aside["burst"]


def test_the_jet_of_a_burst_obeys_torricelli() -> None:
    """q = C A √(2 g h) with the 0.61 of a sharp edge (common practice)."""
    state = true_state(rig(burst=ON | {"hole_mm": 20.0}, check={"k": 0.0}))
    head = state.station.discharge_head
    assert head is not None
    jet = 0.61 * 3.141592653589793 / 4 * 0.02**2 * (2 * G * (head - 0.5)) ** 0.5
    assert state.aside["burst"] == pytest.approx(jet, rel=1e-9)


def test_a_wide_burst_lets_the_high_vessel_run_out_as_well() -> None:
    """From under a surface the liquid comes back to the hole, past the control valve."""
    state = true_state(rig(burst=ON | {"hole_mm": 150.0}))
    assert state.flow < 0
    assert state.aside["burst"] == pytest.approx(state.station.flow - state.flow, rel=1e-9)


def test_no_air_is_drawn_in_through_a_burst() -> None:
    """A stopped pump far above its supply: nothing comes in through the hole."""
    sunk = {"surface_m": -8.0, "bottom_m": -9.0, "top_m": -6.0}
    pours = {"outlet_m": 15.0}
    state = true_state(rig(burst=ON, supply=sunk, delivery=pours, drive={"frequency_hz": 10.0}))
    assert state.aside["burst"] == state.station.flow == 0.0
    assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-6)


def test_a_second_line_beside_the_first_lightens_the_load() -> None:
    """Both lose the same head; the gauge behind the valve falls, and more is delivered."""
    alone, both = true_state(rig()), true_state(rig(second_line=ON))
    second = both.aside["second-line"]
    assert both.flow > alone.flow and 0 < second < both.flow
    assert both.nodes["after-valve"].pressure < alone.nodes["after-valve"].pressure
    assert stack_of(both)["pipe"] < stack_of(alone)["pipe"]
    assert sum(stack_of(both).values()) == pytest.approx(both.station.head, rel=1e-9)


def test_two_equal_lines_carry_half_each() -> None:
    """Symmetry, exactly."""
    same = {"length_m": 120.0, "bore_mm": 80.0, "roughness_mm": 0.05, "fittings_k": 6.0}
    state = true_state(rig(second_line=ON | same))
    assert state.aside["second-line"] == pytest.approx(state.flow / 2, rel=1e-9)


def test_two_pipes_as_wide_as_rivers_beside_each_other_are_balanced() -> None:
    """A case that stalled: almost no slope in the loop that they make."""
    wide = {"length_m": 0.5, "bore_mm": 2000.0, "fittings_k": 5e4}
    broad = {"length_m": 0.9, "bore_mm": 434.0, "fittings_k": 3.4}
    for opening in (0.0, 0.02, 1.0):
        one = rig(discharge=wide, second_line=ON | broad, valve={"opening": opening, "kv_open_m3h": 6.0})
        assert true_state(one).converged


def test_a_line_that_is_being_filled_has_no_second_line() -> None:
    """They serve one end: both are full or none is."""
    with pytest.raises(InputError, match=r"discharge.filled is 0.5, but must be 1 where a second line"):
        rig(second_line=ON, discharge={"filled": 0.5})


@pytest.mark.parametrize("table", ["return_line", "burst", "second_line", "branch", "filter", "summit"])
def test_with_the_line_off_all_that_belongs_to_it_is_off_too(table: str) -> None:
    """It leaves from the line that is gone."""
    bare, also = (true_state(rig(discharge={"attached": False}, **more)) for more in ({}, {table: ON}))
    assert also == bare
