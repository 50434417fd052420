"""What happens on the way is hit, and has its effect."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest
from msgspec.structs import replace
from tests.clocks import everything, happenings, in_steps
from tests.rig import rig

from loadfirst.clock.begin import begin
from loadfirst.clock.events import prime_level
from loadfirst.clock.look import look
from loadfirst.clock.moment import Moment
from loadfirst.clock.relay import warmed
from loadfirst.clock.run import Run, run
from loadfirst.physics.overload import trip
from loadfirst.plant.pumps import ResolvedPlant

OFF: dict[str, Any] = {"running": False, "model": "medium"}
HIT = 1e-6  # [s]
RELIEF: dict[str, dict[str, Any]] = {
    "liquid": {"name": "oil", "density_kgm3": 880.0, "viscosity_mpas": 80.0, "vapour_bar": 0.0},
    "pump": {"model": "gear"},
    "relief": {"fitted": True},
    "valve": {"opening": 0.0, "stroke_s": 20.0, "kv_open_m3h": 20.0},
    "delivery": {"surface_m": 6.0, "bottom_m": 4.0, "top_m": 8.0},
}


def time_of(ran: Run, kind: str) -> float:
    """When that happened first."""
    return next(event.time for event in ran.events if event.kind == kind)


@pytest.mark.parametrize("span", [30.0, 2000.0, 3600.0])
def test_a_vessel_is_full_at_its_time_and_then_runs_over(span: float) -> None:
    """2 m are left of 4 m² at 36 m³/h: 800 s, whatever the step."""
    plant = rig(supply={"inflow_m3h": 36.0}, pump=OFF)
    moment, times = begin(plant), []
    while moment.seconds < 2000:
        ran = run(plant, moment, span)
        times += [event.time for event in ran.events if event.kind == "supply-full"]
        moment = ran.moment
    assert times == [pytest.approx(800.0, abs=HIT)]
    assert moment.supply.volume[0] == 16.0
    assert moment.overflowed[0] == pytest.approx((moment.seconds - 800.0) * 36 / 3600, rel=1e-9)


def test_a_delivery_that_is_drawn_empty_gives_no_more_than_comes() -> None:
    """8 m³ at 36 m³/h with the pump off: 800 s."""
    plant = rig(delivery={"draw_m3h": 36.0}, pump=OFF)
    ran = run(plant, begin(plant), 1000.0)
    assert time_of(ran, "delivery-empty") == pytest.approx(800.0, abs=HIT)
    assert ran.moment.delivery.volume[0] == 0.0
    assert ran.moment.drawn[0] == pytest.approx(8.0, abs=1e-9)


@pytest.mark.parametrize("span", [7.0, 400.0, 3600.0])
def test_a_supply_runs_empty_at_the_same_time_by_any_step(span: float) -> None:
    """And then the pump has lost its prime and gives nothing; nothing is lost on the way."""
    plant = rig(supply={"surface_m": 0.6, "bottom_m": 0.0, "top_m": 4.0}, pump={"centre_m": 0.0})
    moment, times = begin(plant), []
    while moment.seconds < 400:
        ran = run(plant, moment, span)
        times += [event.time for event in ran.events if event.kind == "supply-empty"]
        moment = ran.moment
    exact = run(plant, begin(plant), 400.0, tolerance=1e-6)
    assert times == [pytest.approx(time_of(exact, "supply-empty"), rel=2e-5)]
    assert moment.supply.volume[0] == pytest.approx(0.0, abs=1e-6) and not moment.primed
    assert everything(moment) == pytest.approx(everything(begin(plant)), abs=1e-12)
    state = look(run(plant, moment, 1.0))
    assert state.flow == 0.0
    assert state.machines[0].speed > 300  # it turns in air
    assert 0 < state.machines[0].current < 10


def test_of_two_pumps_that_run_dry_each_says_so_and_of_one_that_is_off_that_it_stands() -> None:
    """Both have lost their prime; only a motor that is on turns its pump in air."""
    low: dict[str, Any] = {"supply": {"surface_m": 0.6, "bottom_m": 0.0}, "pump": {"centre_m": 0.0}}
    low["pump"] |= {"arrangement": "side-by-side"}
    both, one = rig(**low), rig(**low | {"pump": low["pump"] | {"second": {"running": False}}})
    dry = run(both, begin(both), 400.0).moment

    def noted(plant: ResolvedPlant) -> dict[str, str]:
        notes = look(run(plant, dry, 60.0)).notes
        return {note.where: note.kind for note in notes if note.where.startswith("pump")}

    assert noted(both) == {"pump-1": "runs-dry", "pump-2": "runs-dry"}
    assert noted(one) == {"pump-1": "runs-dry", "pump-2": "standing"}


def test_a_supply_that_is_fed_again_primes_the_pump() -> None:
    """As soon as liquid runs into it by itself."""
    plant = rig(
        supply={"surface_m": 0.3, "bottom_m": 0.0, "top_m": 4.0, "inflow_m3h": 5.0}, pump={"centre_m": 0.0}
    )
    ran = run(plant, begin(plant), 1500.0)
    kinds = [event.kind for event in ran.events]
    assert "supply-empty" in kinds and "prime-regained" in kinds
    dry, again = time_of(ran, "supply-empty"), time_of(ran, "prime-regained")
    assert again - dry == pytest.approx(prime_level(plant.plant) * 4.0 / (5.0 / 3600), rel=1e-4)


def test_a_supply_that_a_hand_fills_again_primes_the_pump() -> None:
    """At once, for liquid stands at the pump; with too little in the vessel it does not."""

    def filled(height: float) -> ResolvedPlant:
        return rig(supply={"surface_m": height, "bottom_m": 0.0, "top_m": 4.0}, pump={"centre_m": 0.5})

    dry = run(filled(0.6), begin(filled(0.6)), 400.0).moment
    assert not dry.primed
    little = run(filled(0.45), dry, 10.0)
    assert not little.moment.primed and little.events == () and look(little).flow == 0.0
    ran = run(filled(2.0), dry, 10.0)
    assert ran.moment.primed and happenings(ran)[0] == ("prime-regained", "supply")
    assert ran.events[0].time == dry.seconds
    assert look(ran).flow == pytest.approx(look(run(filled(2.0), begin(filled(2.0)), 10.0)).flow, rel=0.02)
    assert everything(ran.moment) == pytest.approx(everything(dry), abs=1e-12)


def test_a_supply_that_a_hand_empties_gives_nothing() -> None:
    """No number crosses nought there: the vessel is empty before time goes on."""
    full = rig(supply={"surface_m": 2.0, "bottom_m": 0.0})
    ran = run(rig(supply={"surface_m": 0.0, "bottom_m": 0.0}), run(full, begin(full), 1.0).moment, 10.0)
    assert happenings(ran)[0] == ("supply-empty", "supply")
    assert not ran.moment.primed and ran.moment.supply.volume[0] == 0.0
    assert look(ran).flow == 0.0


def test_a_delivery_that_a_hand_fills_again_gives_back() -> None:
    """By a pump that stands and has no check valve."""

    def filled(height: float) -> ResolvedPlant:
        delivery = {"surface_m": height, "bottom_m": 8.0, "top_m": 12.0}
        return rig(delivery=delivery, pump=OFF, check={"fitted": False})

    dry = run(filled(8.0), begin(filled(8.0)), 1.0).moment
    assert dry.drained
    ran = run(filled(10.0), dry, 10.0)
    assert happenings(ran)[0] == ("delivery-refilled", "delivery") and not ran.moment.drained
    assert ran.moment.flows["discharge-line"] < 0


def test_a_check_valve_shuts_when_the_flow_has_stopped() -> None:
    """Not before, not after: at that moment the line's flow is nought."""
    on, off = rig(), rig(pump=OFF)
    moment = run(on, begin(on), 0.1).moment
    ran = run(off, moment, 5.0)
    assert happenings(ran)[0] == ("check-shuts", "check-1")
    at = time_of(ran, "check-shuts") - moment.seconds
    before, after = run(off, moment, at - 1e-4).moment, run(off, moment, at + 1e-4).moment
    assert before.flows["discharge-line"] > 0
    assert abs(after.flows["discharge-line"]) < 1e-7
    assert not after.marks["check-1"]


def test_a_check_valve_opens_when_the_pump_gives_more_than_the_column_behind_it() -> None:
    """A motor that runs up lifts nothing for a while."""
    on, off = rig(), rig(pump=OFF)
    stopped = run(off, begin(on), 60.0).moment
    assert stopped.shafts[0].regime == "standing"
    ran = run(on, stopped, 5.0)
    assert [kind for kind, _ in happenings(ran)] == ["check-opens", "running"]
    state = look(ran)
    assert state.machines[0].speed == pytest.approx(begin(on).shafts[0].speed, rel=1e-3)


@pytest.mark.parametrize("phases", [3, 2])
def test_a_displacement_pump_runs_down_and_up_again(phases: int) -> None:
    """By its inertia, however it is held at its speed on the way; on two phases it does not start."""
    oil: dict[str, dict[str, Any]] = {**RELIEF, "valve": {"opening": 1.0}, "drive": {"phases": phases}}
    on, off = rig(**oil), rig(**oil | {"pump": {"model": "gear", "running": False}})
    stopped = run(off, begin(on), 60.0)
    assert stopped.moment.shafts[0].regime == "standing"
    again = run(on, stopped.moment, 5.0).moment.shafts[0]
    if phases == 3:
        assert again.regime == "running"
        assert again.speed == pytest.approx(begin(on).shafts[0].speed, rel=1e-3)
    else:
        assert again.regime == "turning" and again.speed < 1.0


def test_a_motor_that_runs_up_draws_its_starting_current() -> None:
    """Six to eight times the rated one, straight on the supply (common practice)."""
    on, off = rig(), rig(pump=OFF)
    stopped = run(off, begin(on), 60.0).moment
    state = look(run(on, stopped, 0.01))
    usual = look(run(on, begin(on), 0.01)).machines[0].current
    assert state.machines[0].current > 5 * usual
    assert look(run(off, begin(on), 0.5)).machines[0].current == 0.0


def open_moment(plant: ResolvedPlant) -> Moment:
    """With the valve still open."""
    return begin(plant)


@pytest.mark.parametrize("span", [0.25, 40.0])
def test_a_relief_valve_lifts_at_its_set_pressure_while_a_valve_shuts(span: float) -> None:
    """A fiftieth of a second before it the head over it is less than the set one, after it more."""
    wide = {**RELIEF, "valve": {**RELIEF["valve"], "opening": 1.0}}
    shutting, begun = rig(**RELIEF), begin(rig(**wide))
    moment, times = begun, []
    while moment.seconds < 40:
        ran = run(shutting, moment, span)
        times += [event.time for event in ran.events if event.kind == "relief-lifts"]
        moment = ran.moment
    assert len(times) == 1

    def over(time: float) -> float:
        one = run(shutting, begun, time, tolerance=1e-5).step.stage.solved.of(0)
        law = one.built.network.laws["reliefs"]
        return one.drop("relief") / float(law.set_head[0, 0])  # type: ignore[attr-defined]

    assert over(times[0] - 0.02) < 1 < over(times[0] + 0.02)


def test_a_valve_takes_its_stroke() -> None:
    """From three quarters to a quarter in half of it."""
    plant = rig(valve={"opening": 0.75, "stroke_s": 12.0})
    moment, lower = begin(plant), rig(valve={"opening": 0.25, "stroke_s": 12.0})
    assert in_steps(lower, moment, 1.0, 3).stem == pytest.approx(0.5)
    assert run(lower, moment, 6.0).moment.stem == pytest.approx(0.25)
    assert look(run(lower, moment, 3.0)).flow > look(run(lower, moment, 20.0)).flow


def test_a_drive_ramps() -> None:
    """From 50 to 30 Hz at 50 Hz in 10 s: 4 s, and the shaft follows."""
    plant = rig(drive={"start": "ramp", "ramp_s": 10.0})
    slower = rig(drive={"start": "ramp", "frequency_hz": 30.0, "ramp_s": 10.0})
    half = run(slower, begin(plant), 2.0).moment
    assert half.shafts[0].frequency == pytest.approx(40.0)
    whole = run(slower, begin(plant), 30.0).moment
    assert whole.shafts[0].frequency == 30.0
    assert whole.shafts[0].speed == pytest.approx(begin(slower).shafts[0].speed, rel=1e-3)


def test_a_line_that_is_being_filled_gets_full() -> None:
    """What it takes is its own volume, and only then anything is delivered."""
    plant = rig(discharge={"filled": 0.5})
    begun = begin(plant)
    ran = run(plant, begun, 600.0)
    assert ("line-full", "discharge") in happenings(ran)
    volume = 60.0 * 3.141592653589793 / 4 * 0.08**2
    assert ran.moment.line[0] == pytest.approx(volume, rel=1e-6)
    assert ran.moment.delivery.volume[0] > begun.delivery.volume[0]
    assert everything(ran.moment) == pytest.approx(everything(begun), abs=1e-12)


def test_the_stack_of_a_moment_adds_up_with_what_speeds_the_liquid_up() -> None:
    """Slowed by a valve that shuts, the liquid gives head back."""
    plant, lower = rig(valve={"opening": 0.75, "stroke_s": 4.0}), rig(valve={"opening": 0.2, "stroke_s": 4.0})
    state = look(run(lower, begin(plant), 1.0))
    blocks = {block.block: block.head for block in state.stack}
    assert sum(head for head in blocks.values() if head is not None) == pytest.approx(
        state.station.head, abs=1e-6
    )
    speeding = blocks["acceleration"]
    assert speeding is not None and speeding < -0.01
    rest = look(run(plant, begin(plant), 1.0))
    assert abs({block.block: block.head for block in rest.stack}["acceleration"] or 0.0) < 1e-2


def test_a_drive_runs_a_motor_up_on_its_ramp_with_little_current() -> None:
    """From standstill to 50 Hz in 4 s; it never draws more than the torque takes that a drive allows."""
    drive = {"start": "ramp", "ramp_s": 4.0}
    on, off = rig(drive=drive), rig(pump=OFF, drive=drive)
    moment, most = run(off, begin(on), 60.0).moment, 0.0
    usual = look(run(on, begin(on), 0.1)).machines[0].current
    for _ in range(10):
        ran = run(on, moment, 0.5)
        moment, most = ran.moment, max(most, look(ran).machines[0].current)
    assert moment.shafts[0].regime == "running"
    assert moment.shafts[0].speed == pytest.approx(begin(on).shafts[0].speed, rel=1e-3)
    assert most < 2.2 * usual


@pytest.mark.parametrize("span", [5.0, 600.0])
def test_a_relay_trips_when_its_law_says_and_the_pump_stops(span: float) -> None:
    """From running at its setting, as `physics.overload` has it (IEC 60255-149, from memory)."""
    wide: dict[str, dict[str, Any]] = {"supply": {"area_m2": 1e5}, "delivery": {"area_m2": 1e5}}
    plant = rig(**wide, drive={"relay_percent": 100 * begin_current(rig()) / 1.3})
    moment, times = begin(plant), []
    while moment.seconds < 600:
        ran = run(plant, moment, span)
        times += [event.time for event in ran.events if event.kind == "trips"]
        moment = ran.moment
    assert times == [pytest.approx(float(trip(1.3, "10", 1.0).after), rel=1e-3)]
    assert moment.shafts[0].tripped and moment.shafts[0].regime == "standing"
    reset = run(rig(pump=OFF), moment, 0.1).moment
    assert not reset.shafts[0].tripped


def test_a_relay_far_too_small_trips_at_once_and_its_moment_can_be_told() -> None:
    """Its heat is bounded, as the message is."""
    plant, moment = rig(), begin(rig())
    heat = warmed(plant.plant, 0.0, 1e9, 1.0, 60.0)
    assert heat > 1
    hot = replace(moment, shafts=(replace(moment.shafts[0], heat=heat),))
    assert msgspec.json.decode(msgspec.json.encode(hot), type=Moment) == hot


def begin_current(plant: ResolvedPlant) -> float:
    """What the motor draws, over its rated current. [-]"""
    step = run(plant, begin(plant), 0.1).step.stage
    return step.currents[0] / step.rated[0]
