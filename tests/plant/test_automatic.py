"""A plant that sets itself: what stands still, what tells the story, and what is lost at a limit."""

from __future__ import annotations

from typing import Any

import msgspec
import numpy as np
import pytest
from msgspec import UNSET
from tests.control import noted
from tests.rig import rig

from loadfirst.door.answer import answer_plant
from loadfirst.errors import InputError
from loadfirst.instruments.panel import readings
from loadfirst.plant.automatic import settled
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import State, true_state, true_states
from loadfirst.units import BAR, HOUR


def held(control: dict[str, Any] | None = None, **tables: dict[str, Any]) -> ResolvedPlant:
    """The default plant with a controller, settled."""
    return settled([rig(control={"fitted": True, **(control or {})}, **tables)])[0]


def controlled(one: ResolvedPlant) -> State:
    """Its state, in which a controller is."""
    state = true_state(one)
    assert state.control is not UNSET
    return state


def output(state: State) -> float:
    """Of its controller. [-]"""
    assert state.control is not UNSET
    return state.control.output


def test_a_plain_plant_is_given_back_as_it_is() -> None:
    """No controller, no current limit: the very same object, and nothing about either in its state."""
    one = rig()
    plants = [one]
    assert settled(plants) is plants
    assert "control" not in msgspec.to_builtins(true_state(one))
    assert "moved" not in msgspec.to_builtins(true_state(one))


@pytest.mark.parametrize("on", ["valve", "drive"])
@pytest.mark.parametrize("wear", [0.0, 20.0])
def test_the_flow_stands_at_its_set_point_on_a_sound_pump_and_on_a_worn_one(on: str, wear: float) -> None:
    """Whatever moves, the flow meter shows the set point."""
    state = controlled(held({"on": on, "set_m3h": 22.0}, pump={"wear_percent": wear}))
    assert state.station.flow * HOUR == pytest.approx(22.0, rel=1e-7)
    assert state.control is not UNSET and state.control.status == "reached"


def test_wear_shows_in_the_output_alone() -> None:
    """The disguise: flow and the pressure behind the valve stand still, valve and current do not."""
    sound, worn = (controlled(held({"set_m3h": 25.0}, pump={"wear_percent": w})) for w in (0.0, 20.0))
    assert worn.station.flow == pytest.approx(sound.station.flow, rel=1e-6)
    assert worn.nodes["after-valve"].pressure == pytest.approx(sound.nodes["after-valve"].pressure, rel=1e-6)
    assert output(worn) > output(sound) + 0.01
    assert worn.machines[0].current > 1.05 * sound.machines[0].current


def test_more_and_more_wear_opens_the_valve_until_control_is_lost() -> None:
    """For months nothing shows; at full output it all shows at once."""
    outputs, flows = [], []
    for wear in (0, 10, 20, 30, 40, 50):
        state = controlled(held({"set_m3h": 40.0}, pump={"wear_percent": wear}))
        outputs.append(output(state))
        flows.append(state.station.flow * HOUR)
    assert outputs == sorted(outputs)
    assert outputs[-1] == 1.0 and flows[-1] < 39.6
    assert flows[0] == pytest.approx(40.0, rel=1e-6)
    assert noted(state, "control-lost") == ["flow"]


@pytest.mark.parametrize(
    ("of", "gauge", "bar", "on"),
    [
        ("discharge-pressure", "discharge", 4.6, "valve"),
        ("discharge-pressure", "discharge", 3.0, "drive"),
        ("after-valve-pressure", "after_valve", 1.8, "valve"),
        ("suction-pressure", "suction", 0.12, "valve"),
    ],
)
def test_a_pressure_is_held_as_its_gauge_shows_it(of: str, gauge: str, bar: float, on: str) -> None:
    """A dial that hangs 4 m above the shaft shows less; the controller holds what the dial shows."""
    one = held(
        {"of": of, "on": on, "set_bar": bar - 0.39}, gauges={gauge: {"height_m": 4.5, "range_bar": [-1, 6]}}
    )
    state = controlled(one)
    shown = {reading.id: reading for reading in readings(state, one.plant)}
    dial = shown[f"gauge-{gauge.replace('_', '-')}"]
    assert state.control is not UNSET and state.control.status == "reached"
    assert dial.value == pytest.approx((bar - 0.39) * BAR, abs=1.0)
    assert state.control.reading == pytest.approx(dial.value, abs=1e-6)


@pytest.mark.parametrize(("of", "vessel"), [("delivery-level", "delivery"), ("supply-level", "supply")])
def test_a_level_stands_where_as_much_comes_as_goes(of: str, vessel: str) -> None:
    """At rest the flow is what is drawn, with the surface at the set point and not where it was."""
    level = {"delivery": 15.0, "supply": 1.5}[vessel]
    passing = {"delivery": "draw_m3h", "supply": "inflow_m3h"}[vessel]
    one = held({"of": of, "set_m": level}, **{vessel: {passing: 26.0}})
    state = controlled(one)
    assert state.flow * HOUR == pytest.approx(26.0, rel=1e-6)
    assert getattr(one.plant, vessel).surface_m == level
    assert state.moved is not UNSET and state.moved[f"{vessel}.surface_m"] == level


def test_a_vessel_out_of_control_overflows_runs_empty_or_finds_its_own_balance() -> None:
    """The valve stands at a limit: to the rim, to the bottom, or to where the lift leaves just that flow."""
    over = held({"of": "delivery-level", "low_percent": 60}, delivery={"draw_m3h": 5.0})
    empty = held({"of": "delivery-level"}, delivery={"draw_m3h": 90.0})
    own = held({"of": "delivery-level", "low_percent": 60}, delivery={"draw_m3h": 23.2})
    assert over.plant.delivery.surface_m == over.plant.delivery.top_m
    assert empty.plant.delivery.surface_m == empty.plant.delivery.bottom_m
    assert 14.0 < own.plant.delivery.surface_m < own.plant.delivery.top_m
    assert true_state(own).flow * HOUR == pytest.approx(23.2, rel=1e-5)
    assert all(noted(true_state(one), "control-lost") == ["delivery-level"] for one in (over, empty, own))


def test_a_level_in_the_supply_counts_what_comes_back() -> None:
    """What the return line brings back leaves the supply not for good."""
    one = held(
        {"of": "supply-level", "set_m": 2.0}, supply={"inflow_m3h": 20.0}, return_line={"fitted": True}
    )
    state = true_state(one)
    assert (state.station.flow - state.aside["return-line"]) * HOUR == pytest.approx(20.0, rel=1e-6)
    assert state.aside["return-line"] > 0


def test_a_set_point_below_the_least_flow_that_a_valve_can_hold_makes_it_hunt() -> None:
    """An equal-percentage valve passes Kv/R just open, and nothing shut: no opening gives less."""
    state = true_state(held({"set_m3h": 0.3}))
    assert noted(state, "control-hunts") == ["flow"]
    assert not noted(state, "control-lost")


def test_by_hand_the_plant_stands_where_its_keys_put_it() -> None:
    """The output is then what valve or drive stand at, and nobody has moved anything."""
    by_hand = controlled(held({"mode": "manual", "set_m3h": 40.0}, valve={"opening": 0.37}))
    assert by_hand.station.flow == true_state(rig(valve={"opening": 0.37})).station.flow
    assert (output(by_hand), by_hand.moved) == (0.37, UNSET)
    assert by_hand.control is not UNSET and not by_hand.control.automatic
    drive = controlled(held({"mode": "manual", "on": "drive"}, drive={"frequency_hz": 40.0}))
    assert output(drive) == pytest.approx(0.8)


def test_taken_over_by_hand_nothing_moves() -> None:
    """The keys that it has moved, set by hand, give the same plant."""
    automatic = held({"set_m3h": 25.0})
    assert automatic.found is not None
    opening = automatic.found.moved["valve.opening"]
    by_hand = true_state(held({"mode": "manual", "set_m3h": 25.0}, valve={"opening": opening}))
    assert by_hand.station == true_state(automatic).station


def test_without_its_valve_a_controller_does_nothing() -> None:
    """With the line off there is no valve; one on the drive goes on."""
    off = {"attached": False}
    assert held(discharge=off).found is None
    assert controlled(held(discharge=off)).control.automatic is False  # type: ignore[union-attr]
    on_drive = true_state(held({"on": "drive", "set_m3h": 30.0}, discharge=off))
    assert on_drive.station.flow * HOUR == pytest.approx(30.0, rel=1e-6)


def test_full_output_may_be_any_frequency() -> None:
    """The output is a share of it; the lower limit of a drive holds too."""
    one = held({"on": "drive", "set_m3h": 25.0, "full_hz": 60.0})
    assert one.plant.drive.frequency_hz == pytest.approx(60 * output(controlled(one)))
    assert one.plant.drive.frequency_hz > 50
    slow = held({"on": "drive", "low_percent": 2.0, "high_percent": 2.0})
    assert slow.plant.drive.frequency_hz == 5.0


def test_a_drive_at_its_current_limit_turns_the_pump_slower() -> None:
    """The ammeter stands at the limit, the tachometer tells the story."""
    free, kept = true_states([rig(), rig(drive={"current_limit_percent": 60})])
    rated = build([rig()]).machines["pumps"].motor.rated_current[0, 0]
    assert free.machines[0].current > 0.6 * rated
    assert kept.machines[0].current == pytest.approx(0.6 * rated, rel=1e-7)
    assert kept.machines[0].speed < 0.95 * free.machines[0].speed
    assert noted(kept, "current-limited") == ["drive"]
    assert noted(true_state(rig(drive={"current_limit_percent": 200})), "current-limited") == []


def test_a_controller_on_a_drive_at_its_limit_has_lost_control() -> None:
    """Its output says 100 %, the drive gives less."""
    one = held({"on": "drive", "set_m3h": 35.0}, drive={"current_limit_percent": 60})
    state = controlled(one)
    assert output(state) == 1.0 and state.station.flow * HOUR < 35
    assert one.plant.drive.frequency_hz is not None and one.plant.drive.frequency_hz < 50
    assert noted(state, "control-lost") == ["flow"] and noted(state, "current-limited") == ["drive"]


def test_a_controller_on_a_valve_reckons_with_the_drives_limit() -> None:
    """Both at once: the flow at the set point, the current at the limit."""
    one = held({"set_m3h": 20.0}, drive={"current_limit_percent": 60})
    state = true_state(one)
    rated = build([rig()]).machines["pumps"].motor.rated_current[0, 0]
    assert state.station.flow * HOUR == pytest.approx(20.0, rel=1e-6)
    assert state.machines[0].current == pytest.approx(0.6 * rated, rel=1e-6)


def test_the_curves_of_a_controlled_plant_meet_in_its_duty_point() -> None:
    """The machine's curve at the frequency found, the load's at the opening found."""
    for one in (held({"on": "drive", "set_m3h": 18.0}), held({"set_m3h": 30.0})):
        state = true_state(one)
        found = curves(build([one]), state.duty)
        for column in (found.load, found.station):
            at = np.interp(state.duty.flow, found.flow, np.array(column, dtype=float))
            assert at == pytest.approx(state.duty.head, abs=2e-3 * 50)


def test_the_answer_shows_the_plant_as_it_stands() -> None:
    """Drawing and controls show where valve and surface are; the reading of the output is an instrument's."""
    data = {
        "format": 1,
        "title": "Held",
        "pump": {"model": "medium"},
        "control": {"fitted": True, "set_m3h": 25.0},
    }
    answer = answer_plant(data)
    assert answer["plant"]["valve"]["opening"] == answer["state"]["moved"]["valve.opening"]
    (shown,) = [each for each in answer["shown"] if each["id"] == "controller-output"]
    assert shown["value"] == answer["state"]["control"]["output"] == pytest.approx(0.62, abs=0.01)


@pytest.mark.parametrize(
    ("control", "where"),
    [
        ({"low_percent": 60, "high_percent": 40}, "control.low_percent"),
        ({"of": "delivery-level", "set_m": 30.0}, "control.set_m"),
        ({"of": "supply-level", "set_m": -1.0}, "control.set_m"),
    ],
)
def test_what_no_controller_can_be_told_is_refused(control: dict[str, Any], where: str) -> None:
    """Limits the wrong way round, a level outside its vessel."""
    with pytest.raises(InputError) as error:
        held(control)
    assert error.value.where == where


@pytest.mark.parametrize("drive", [{"current_limit_percent": 150}, {}])
def test_who_moves_a_frequency_is_a_variable_speed_drive(drive: dict[str, Any]) -> None:
    """A sagging supply is not felt, the motor is not switched straight on; also by hand."""
    control = {"fitted": not drive, "on": "drive", "mode": "manual"}
    one = rig(control=control, drive={**drive, "mains_percent": 90.0})
    assert one.plant.drive.start == "ramp"
    assert true_state(one).machines[0].speed == pytest.approx(true_state(rig()).machines[0].speed)
