"""The true state of a plant: the cases an instructor would set up, and what must be true of each."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest
from tests.plants import with_curve
from tests.rig import rig
from tests.states import kinds, stack_of
from tests.strategies import legal

from loadfirst.plant.build import build
from loadfirst.plant.state import State, true_state, true_states
from loadfirst.units import ATMOSPHERE, BAR, HOUR, RPM, G

LOSSES = ("suction-line", "check-valve", "pipe", "fittings", "valve")
OIL = {"name": "oil", "density_kgm3": 850.0, "viscosity_mpas": 20.0, "vapour_bar": 0.001}


def test_the_default_plant_lifts_what_its_surfaces_say() -> None:
    """The lift goes from surface to surface, and every block of a plain plant asks for head."""
    state = true_state(rig())
    assert stack_of(state)["lift"] == 12.0
    assert stack_of(state)["vessel-pressure"] == 0.0
    assert list(stack_of(state)) == ["lift", "vessel-pressure", *LOSSES]
    assert min(stack_of(state)[block] for block in LOSSES) > 0
    assert state.duty.flow == state.flow == state.station.flow
    assert kinds(state) == []


def test_a_shut_valve_dead_heads_the_pump() -> None:
    """No flow; the valve takes what the pump gives beyond the lift; the pressure before it is the highest."""
    open_, shut = true_state(rig()), true_state(rig(valve={"opening": 0.0}))
    assert shut.flow == 0.0
    assert kinds(shut) == [("dead-headed", "pump-1")]
    assert stack_of(shut)["valve"] == pytest.approx(shut.station.head - 12.0, rel=1e-9)
    assert shut.nodes["discharge"].pressure > open_.nodes["discharge"].pressure
    assert shut.machines[0].shaft_power < open_.machines[0].shaft_power


@pytest.mark.parametrize("change", [{"valve": {"opening": 0.0}}, {"drive": {"frequency_hz": 20.0}}])
@pytest.mark.parametrize("viscosity", [1.0, 5000.0])
def test_where_nothing_flows_nothing_is_lost_on_the_way(change: dict[str, Any], viscosity: float) -> None:
    """Exactly nothing: no trifle with a sign, however thick the liquid; what holds takes it all."""
    oil = {"name": "oil", "density_kgm3": 900.0, "viscosity_mpas": viscosity, "vapour_bar": 0.0}
    state = true_state(rig(liquid=oil, **change))
    losses = [stack_of(state)[block] for block in LOSSES]
    assert state.flow == 0.0 and losses.count(0.0) == 4
    assert state.balance.velocity_head == 0.0
    assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-9)


def test_with_the_line_off_the_gauge_reads_nothing_and_the_pump_gives_much_flow() -> None:
    """Empty load: no resistance, no pressure. The head left feeds the suction losses and the jet."""
    state = true_state(rig(discharge={"attached": False}))
    assert state.nodes["discharge"].pressure == pytest.approx(0.0, abs=1e-3)
    assert state.flow > 2 * true_state(rig()).flow
    assert list(stack_of(state)) == ["lift", "vessel-pressure", "suction-line", "jet"]
    assert stack_of(state)["jet"] > 0
    assert ("line-off", "discharge") in kinds(state)
    assert "after-valve" not in state.nodes
    assert state.path[-1].place == "discharge"


def test_a_supply_too_low_for_the_open_pump_gives_no_flow_backward() -> None:
    """With the line off air, not liquid, would come in: nothing flows back."""
    sunk = {"surface_m": -25.0, "bottom_m": -27.0, "top_m": -20.0}
    off = {"attached": False}
    state = true_state(rig(supply=sunk, discharge=off, drive={"frequency_hz": 25.0}))
    assert state.flow == 0.0
    assert "reverse-flow" not in [note.kind for note in state.notes]


def test_a_check_valve_holds_what_the_pump_cannot_lift() -> None:
    """Slow pump, high tank: no flow, and the check valve takes the rest upon itself."""
    state = true_state(rig(drive={"frequency_hz": 20.0}))
    assert state.flow == 0.0
    assert stack_of(state)["check-valve"] == pytest.approx(state.station.head - 12.0, rel=1e-9)
    assert stack_of(state)["fittings"] == 0.0
    assert kinds(state) == [("dead-headed", "pump-1")]


def test_without_its_check_valve_the_plant_runs_backward() -> None:
    """The same plant with no check valve drains through the pump, and says so."""
    state = true_state(rig(drive={"frequency_hz": 20.0}, check={"fitted": False}, valve={"opening": 1.0}))
    assert state.flow < 0
    assert kinds(state) == [("reverse-flow", "pump-1")]
    assert "after-check" not in [point.place for point in state.path]


def test_a_section_between_check_valve_and_shut_valve_has_no_pressure_of_its_own() -> None:
    """Nothing defines it: it is marked, and no number is made up."""
    state = true_state(rig(drive={"frequency_hz": 20.0}, valve={"opening": 0.0}))
    assert ("pressure-undefined", "after-check") in kinds(state)
    after_check = next(point for point in state.path if point.place == "after-check")
    assert after_check.head is None and after_check.pressure is None


def test_no_flow_is_shown_where_only_leakage_runs_through_shut_elements() -> None:
    """The steep line of a shut element leaks more than 1e-5 of a small pump's flow; none of it is shown."""
    tiny = {"flow_m3h": [0, 0.1, 0.2], "head_m": [100, 80, 50], "efficiency_percent": [0, 20, 20]}
    pump = {"curve": tiny | {"npshr_m": [1, 1, 2], "motor_kw": 0.2}, "arrangement": "side-by-side"}
    state = true_state(legal({"format": 1, "title": "Tiny", "pump": pump, "valve": {"opening": 0.0}}))
    assert [machine.flow for machine in state.machines] == [0.0, 0.0]
    assert state.station.flow == state.flow == 0.0


def test_a_pump_whose_head_would_rise_by_its_motors_slip_is_held_level() -> None:
    """A power that falls to a third on a weak motor: with a flat head it is said, with a steep one not."""
    points = {"flow_m3h": [0, 36, 72], "power_kw": [21, 14, 7], "npshr_m": [1, 1, 1], "motor_kw": 5}
    for heads, several in (([30, 29.99, 29.98], True), ([40, 30, 15], False)):
        pump = {"curve": points | {"head_m": heads}}
        state = true_state(legal({"format": 1, "title": "Weak", "pump": pump}))
        assert (("held-level", "pump-1") in kinds(state)) is several


def test_two_pumps_side_by_side_share_the_flow() -> None:
    """Equal pumps give equal flows; together more than one, less than twice as much."""
    one = true_state(rig(valve={"opening": 1.0}))
    two = true_state(rig(valve={"opening": 1.0}, pump={"arrangement": "side-by-side"}))
    assert two.machines[0].flow == pytest.approx(two.machines[1].flow, rel=1e-9)
    assert one.flow < two.flow < 2 * one.flow
    assert two.machines[0].flow + two.machines[1].flow == pytest.approx(two.flow, rel=1e-9)


def test_two_pumps_in_line_add_their_heads() -> None:
    """Nothing but pumps in the answer; the second takes over where the first ends, less a check valve."""
    state = true_state(rig(pump={"arrangement": "in-line"}))
    first, second = state.machines
    assert first.flow == pytest.approx(second.flow, rel=1e-9)
    assert first.head + second.head == pytest.approx(state.station.head, rel=1e-12)
    between = stack_of(state)["check-valve"] / 2
    assert between > 0
    assert second.npsh_available == pytest.approx(first.npsh_available + first.head - between, rel=1e-9)


def test_pressures_are_what_gauges_at_the_shaft_would_show() -> None:
    """p = ρg (head - height) - ρv²/2, zero is the air around."""
    state = true_state(rig())
    node = state.nodes["suction"]
    speed = state.flow / (3.141592653589793 / 4 * 0.102**2)
    expected = state.liquid.density * (G * (node.head - 0.5) - speed**2 / 2)
    assert node.pressure == pytest.approx(expected, rel=1e-9)


def test_available_npsh_is_the_absolute_head_at_the_inlet_less_the_vapour_pressure() -> None:
    """Law: ISO 9906; at no flow it is the surface's height above the shaft and the air above the vapour."""
    state = true_state(rig(valve={"opening": 0.0}))
    air = (ATMOSPHERE - state.liquid.vapour_pressure) / (state.liquid.density * G)
    assert state.machines[0].npsh_available == pytest.approx(1.5 + air, rel=1e-6)


def test_gas_on_the_supply_is_a_negative_block_and_raises_the_flow() -> None:
    """Blocks may be negative: what pushes at the supply lightens the load."""
    pushed = true_state(rig(supply={"gas_bar": 1.0}, liquid=OIL))
    assert stack_of(pushed)["vessel-pressure"] == pytest.approx(-BAR / (850.0 * G), rel=1e-12)
    assert pushed.flow > true_state(rig(liquid=OIL)).flow


def test_an_outlet_above_the_surface_is_what_has_to_be_reached() -> None:
    """The lift goes to the pipe's end; there the pressure is that of the vessel's gas."""
    state = true_state(rig(delivery={"outlet_m": 15.5, "gas_bar": 0.2}))
    assert stack_of(state)["lift"] == 13.5
    end = next(point for point in state.path if point.place == "pipe-end")
    assert end.pressure == pytest.approx(0.2 * BAR, abs=1e-3)


def test_an_outlet_below_the_surface_changes_nothing() -> None:
    """Under the surface the level counts, not the pipe's end."""
    plain, sunk = true_state(rig()), true_state(rig(delivery={"outlet_m": 12.5}))
    assert sunk.flow == plain.flow


def test_nothing_flows_back_through_an_outlet_above_the_surface() -> None:
    """Air would come in: the pump that cannot reach the outlet stands still, check valve or none."""
    slow = {"frequency_hz": 15.0}
    state = true_state(rig(drive=slow, check={"fitted": False}, delivery={"outlet_m": 15.5}))
    assert state.flow == 0.0


@pytest.mark.parametrize(
    ("tables", "note"),
    [
        ({"discharge": {"attached": False}}, ("beyond-curve", "pump-1")),
        ({"drive": {"motor_kw": 3.0}}, ("overload", "pump-1")),
        ({"suction": {"strainer_k": 600.0}, "valve": {"opening": 1.0}}, ("npsh-short", "pump-1")),
        ({"suction": {"strainer_k": 900.0}, "valve": {"opening": 1.0}}, ("npsh-short", "pump-1")),
        ({"suction": {"strainer_k": 130.0}, "valve": {"opening": 0.8}}, ("bubbles", "pump-1")),
        ({"pump": {"centre_m": 12.5}}, ("suction-dry", "suction")),
        ({"supply": {"surface_m": 0.2}}, ("vortex", "supply-outlet")),
        ({"suction": {"mouth_m": 1.8}}, ("vortex", "supply-outlet")),
        (
            {"liquid": {"temperature_c": 100.0}, "site": {"barometer_bar": 0.9}},
            ("below-vapour-pressure", "supply-surface"),
        ),
    ],
)
def test_each_note_is_given_where_it_belongs(
    tables: dict[str, dict[str, object]], note: tuple[str, str]
) -> None:
    """Typed notes, each with the place it is about."""
    assert note in kinds(true_state(rig(**tables)))


@pytest.mark.parametrize("frequency", [25.0, 50.0, 60.0])
@pytest.mark.parametrize("opening", [0.0, 1.0])
def test_a_drive_from_half_speed_to_sixty_hertz_is_no_other_speed(frequency: float, opening: float) -> None:
    """What a variable-speed drive does to its own pump is usual."""
    state = true_state(rig(drive={"frequency_hz": frequency}, valve={"opening": opening}))
    assert "other-speed" not in dict(kinds(state))


@pytest.mark.parametrize(("measured", "drive"), [(1450.0, {}), (2900.0, {"poles": 8})])
def test_a_pump_far_from_its_measured_speed_says_so(measured: float, drive: dict[str, Any]) -> None:
    """Forgotten poles make a pump of 1450 1/min run at 2900; nobody measured it there."""
    data = with_curve(speed_rpm=measured)
    state = true_state(legal({**data, "drive": drive, "delivery": {"surface_m": 2.0, "bottom_m": 0.0}}))
    (facts,) = (note.facts for note in state.notes if note.kind == "other-speed")
    assert facts == {"speed": state.machines[0].speed, "measured_speed": pytest.approx(measured * RPM)}


@pytest.mark.parametrize(("poles", "said"), [(8, False), (2, True)])
def test_without_flow_only_too_high_a_speed_is_told(poles: int, said: bool) -> None:
    """A slow pump at no flow has nothing more urgent to say than that; a fast one bears too much head."""
    data = with_curve(speed_rpm=2900.0 if poles == 8 else 1450.0)
    state = true_state(legal({**data, "drive": {"poles": poles}, "valve": {"opening": 0.0}}))
    assert state.flow == 0.0
    assert ("other-speed" in dict(kinds(state))) == said


def test_many_plants_of_mixed_shapes_come_back_in_their_order() -> None:
    """Plants are solved together by shape; the list keeps the caller's order."""
    arrangements = ["single", "in-line", "single", "side-by-side"]
    states = true_states([rig(pump={"arrangement": a}) for a in arrangements])
    assert [len(state.machines) for state in states] == [1, 2, 1, 2]
    assert states[0] == states[2]


def test_plants_of_two_shapes_are_not_built_together() -> None:
    """One batch has one shape."""
    with pytest.raises(ValueError, match="2 shapes"):
        build([rig(), rig(pump={"arrangement": "in-line"})])


def test_a_state_is_plain_data() -> None:
    """It can be written as strict JSON and read back the same."""
    state = true_state(rig())
    assert msgspec.json.decode(msgspec.json.encode(state), type=State) == state


def test_the_path_starts_and_ends_at_the_surfaces() -> None:
    """Heads fall along the way except in the pump; distances grow."""
    path = true_state(rig()).path
    places = ["supply-surface", "supply-outlet", "suction", "discharge", "after-check", "after-valve"]
    assert [point.place for point in path] == [*places, "pipe-end", "delivery-surface"]
    assert (path[0].head, path[-1].head) == (2.0, 14.0)
    assert [point.distance for point in path] == sorted(point.distance for point in path)
    falls = [(a.place, a.head >= b.head) for a, b in zip(path, path[1:], strict=False)]
    assert [place for place, fell in falls if not fell] == ["suction"]


def test_the_flow_of_the_default_plant_is_in_the_range_of_its_pump() -> None:
    """A sanity check in everyday units: between 5 and 54 m³/h."""
    assert 5 < true_state(rig()).flow * HOUR < 54
