"""Supply, drive, belt and relay of whole plants: what they do to flow, speed and current."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec import UNSET
from tests.rig import rig

from loadfirst.instruments.panel import readings
from loadfirst.plant.answer import Machine, Note, State
from loadfirst.plant.drive_answer import Belt, Relay, Start
from loadfirst.plant.state import true_state
from loadfirst.units import RPM

LOOSE = {"belt": "v-belt", "belt_tension_percent": 25.0}
RUNOUT: dict[str, Any] = {
    "delivery": {"surface_m": 3.0, "bottom_m": 1.0, "top_m": 5.0},
    "discharge": {"bore_mm": 150.0},
    "valve": {"opening": 1.0, "kv_open_m3h": 400.0},
}
OIL = {"name": "oil", "density_kgm3": 870.0, "viscosity_mpas": 100.0, "vapour_bar": 0.0}
AXIAL: dict[str, Any] = {
    "pump": {"model": "axial"},
    "suction": {"bore_mm": 250.0},
    "discharge": {"bore_mm": 250.0, "length_m": 20.0},
    "delivery": {"surface_m": 3.0, "bottom_m": 1.0, "top_m": 5.0},
}


def driven(load: dict[str, Any] | None = None, **keys: Any) -> State:
    """A rig with these keys of its drive."""
    return true_state(rig(**(load or {}), drive=keys))


def one(state: State) -> Machine:
    """Its only machine."""
    machine, *_ = state.machines
    return machine


def relay(state: State) -> Relay:
    """Of its only machine."""
    found = one(state).relay
    assert found is not UNSET
    return found


def belt(state: State) -> Belt:
    """Of its only machine."""
    found = one(state).belt
    assert found is not UNSET
    return found


def start(state: State) -> Start:
    """Of its only machine."""
    found = one(state).start
    assert found is not UNSET
    return found


def noted(state: State, kind: str) -> Note | None:
    """A note of that kind."""
    return next((note for note in state.notes if note.kind == kind), None)


def test_low_voltage_raises_the_current_and_hardly_moves_anything_else() -> None:
    """Common practice, as in any list of faults: pressure and flow as before, the ammeter up."""
    sound, low = driven(), driven(voltage_percent=90.0)
    assert low.flow == pytest.approx(sound.flow, rel=0.02)
    assert one(low).speed == pytest.approx(one(sound).speed, rel=0.01)
    assert one(low).current > 1.03 * one(sound).current
    note = noted(low, "low-voltage")
    assert note and note.facts["usual_current"] < note.facts["current"]
    assert note.facts["usual_current"] == pytest.approx(one(sound).current, rel=0.02)
    assert not noted(driven(voltage_percent=97.0), "low-voltage")


def test_a_lost_phase_nearly_doubles_the_current_and_hardly_moves_anything_else() -> None:
    """Common practice (books on motor protection): 1.7 to 2.4 times at full load; the pump hardly tells."""
    sound, two = driven(), driven(phases=2)
    assert two.flow == pytest.approx(sound.flow, rel=0.03)
    assert 0.98 * one(sound).speed < one(two).speed < one(sound).speed
    assert 1.6 < one(two).current / one(sound).current < 2.4
    note = noted(two, "phase-lost")
    assert note and note.facts["usual_current"] == pytest.approx(one(sound).current, rel=0.02)
    assert not noted(two, "low-voltage") and not noted(two, "start-hangs")
    trips = noted(two, "trips")
    assert trips and trips.rule == "phase-lost"


def test_a_motor_that_has_lost_a_phase_does_not_start() -> None:
    """Its two fields pull both ways at standstill (textbook); on a sound supply it starts."""
    lost, sound = one(driven(phases=2)).start, one(driven()).start
    assert lost is not UNSET and sound is not UNSET
    assert (lost.hangs, lost.speed, sound.hangs) == (True, 0.0, False)


def test_a_drive_makes_three_phases_of_its_own() -> None:
    """What its supply has lost is its own matter."""
    assert driven(frequency_hz=45.0, phases=2) == driven(frequency_hz=45.0)


@pytest.mark.parametrize(
    "keys", [{"mains_percent": 94.0}, {"frequency_hz": 47.0}, {"belt": "v-belt", "belt_ratio": 0.95}]
)
def test_whatever_slows_the_pump_lowers_flow_pressure_and_current(keys: dict[str, Any]) -> None:
    """Common practice: supply, drive and belt look alike; only the tachometer tells."""
    sound, slow = driven(), driven(**keys)
    assert slow.flow < sound.flow and slow.station.head < sound.station.head
    assert one(slow).speed < 0.97 * one(sound).speed and one(slow).current < one(sound).current


def test_a_drive_feels_neither_the_supplys_frequency_nor_low_voltage_that_it_has_to_spare() -> None:
    """40 of 50 Hz need 80 % of the voltage: with 85 % nothing changes, with 70 % the field is weak."""
    plain = driven(frequency_hz=40.0)
    assert driven(frequency_hz=40.0, mains_percent=94.0) == plain
    assert driven(frequency_hz=40.0, voltage_percent=85.0) == plain
    weak = driven(frequency_hz=40.0, voltage_percent=70.0)
    assert one(weak).speed < one(plain).speed and one(weak).current > one(plain).current
    assert driven(start="ramp", mains_percent=94.0).flow == driven().flow


def test_a_better_class_takes_less_power_for_the_same_flow() -> None:
    """The pump knows nothing of it."""
    states = [driven(efficiency_class=name) for name in ("IE1", "IE2", "IE3", "IE4")]
    assert len({state.flow for state in states}) == 1
    inputs = [one(state).motor_input for state in states]
    assert inputs == sorted(inputs, reverse=True) and inputs[0] > 1.03 * inputs[-1]


def test_a_belt_turns_the_pump_at_its_ratio_and_the_tachometer_looks_at_the_pump() -> None:
    """Less the creep of about one per cent."""
    plant = rig(drive={"belt": "v-belt", "belt_ratio": 0.9})
    state = true_state(plant)
    machine = one(state)
    assert machine.motor_speed is not UNSET
    assert 0.98 * 0.9 < machine.speed / machine.motor_speed < 0.9
    assert not belt(state).slips and 0 < belt(state).heat < 0.02 * machine.shaft_power
    shown = {reading.id: reading.value for reading in readings(state, plant.plant)}
    assert shown["tachometer-1"] == pytest.approx(machine.speed)
    toothed = true_state(rig(drive={"belt": "toothed", "belt_ratio": 0.9}))
    assert one(toothed).speed / one(toothed).motor_speed == pytest.approx(0.9)  # type: ignore[operator]
    assert belt(toothed).heat == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("model", ["medium", "gear"])
def test_a_loose_belt_slips_and_says_so(model: str) -> None:
    """The pump is slow, the motor is not; the torque is what the belt holds."""
    load: dict[str, Any] = {"pump": {"model": model}, "relief": {"fitted": True}}
    load |= {"liquid": OIL, "delivery": {"gas_bar": 7.0}} if model == "gear" else {}
    state = driven(load, **LOOSE)
    machine = one(state)
    note = noted(state, "belt-slips")
    assert belt(state).slips and note and note.facts["speed"] == machine.speed
    assert machine.torque == pytest.approx(belt(state).torque, rel=0.03)
    assert machine.speed < one(driven(load)).speed and not noted(state, "stalled")


def test_an_overload_at_runout_trips_because_the_load_asks_too_little() -> None:
    """A radial pump; the same motor holds with the load as it was. Twice the class, twice the time or so."""
    state = driven(RUNOUT, motor_kw=5.0)
    found = relay(state)
    assert found.trips and found.reason == "little-load" and found.after is not None
    note = noted(state, "trips")
    assert note and note.rule == "little-load" and note.facts["after"] == found.after
    slow = relay(driven(RUNOUT, motor_kw=5.0, trip_class="20"))
    assert slow.after and slow.after > 1.5 * found.after
    assert not relay(driven(RUNOUT, motor_kw=5.0, relay_percent=150.0)).trips
    assert not relay(driven()).trips and relay(driven()).reason is None


def test_an_axial_pump_trips_because_the_load_asks_too_much() -> None:
    """Its power is greatest at no flow (common practice: never throttle one)."""
    assert not relay(driven(AXIAL | {"valve": {"opening": 1.0, "kv_open_m3h": 800.0}})).trips
    shut = AXIAL | {"valve": {"opening": 0.12, "kv_open_m3h": 800.0}}
    assert relay(driven(shut)).reason == "much-load"


@pytest.mark.parametrize(
    ("keys", "load", "reason"),
    [
        ({"voltage_percent": 62.0, "motor_kw": 5.0}, {}, "low-voltage"),
        ({"relay_percent": 45.0}, {}, "set-low"),
        ({"motor_kw": 2.0}, {"valve": {"opening": 0.4}}, "small-motor"),
        ({"mains_percent": 120.0}, {}, "speed"),
        (
            {},
            {"liquid": {"name": "brine", "density_kgm3": 1900.0, "viscosity_mpas": 1.0, "vapour_bar": 0.02}},
            "liquid",
        ),
        ({}, {"pump": {"model": "gear"}, "liquid": OIL, "valve": {"opening": 0.0}}, "stalled"),
    ],
)
def test_each_reason_of_a_trip(keys: dict[str, Any], load: dict[str, Any], reason: str) -> None:
    """One change on a plant that holds."""
    assert relay(driven(load, **keys)).reason == reason


def test_starting_straight_draws_several_times_the_rated_current_and_a_drive_does_not() -> None:
    """Common practice: six to eight times."""
    straight, ramped = driven(), driven(start="ramp")
    assert 6 <= start(straight).current / one(straight).rated_current <= 8
    assert start(ramped).current < 1.2 * one(ramped).rated_current
    assert start(straight).way == "direct" and start(ramped).way == "ramp"
    assert not start(straight).hangs and start(straight).spare > 0


def test_a_motor_at_low_voltage_hangs_on_its_way_up() -> None:
    """At 60 % of the voltage its torque is about a third."""
    state = driven(voltage_percent=60.0, motor_kw=4.0)
    note = noted(state, "start-hangs")
    assert start(state).hangs and note and note.facts["speed"] < one(state).speed


def test_a_motor_that_is_off_has_neither_relay_nor_start() -> None:
    """Nor a speed of its own."""
    machine, *_ = true_state(rig(pump={"model": "medium", "running": False})).machines
    assert machine.relay is UNSET and machine.start is UNSET and machine.motor_speed is UNSET


def test_the_motors_field_turns_as_the_supply_says_whatever_the_belt() -> None:
    """3000 turns a minute at 50 Hz, two poles."""
    assert driven(**LOOSE).synchronous_speed == pytest.approx(3000 * RPM)
    assert driven(mains_percent=94.0).synchronous_speed == pytest.approx(2820 * RPM)
