"""Controllers in time: they hold, come to rest where `plant.automatic` says, and wind up at no limit."""

from __future__ import annotations

from typing import Any

import pytest
from tests.clocks import everything, in_steps
from tests.rig import rig

from loadfirst.clock.begin import begin
from loadfirst.clock.look import look
from loadfirst.clock.moment import Controller, Moment
from loadfirst.clock.run import run
from loadfirst.plant.automatic import settled
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import true_state

WIDE: dict[str, dict[str, Any]] = {"supply": {"area_m2": 1e5}, "delivery": {"area_m2": 1e5}}
DRIVE: dict[str, dict[str, Any]] = {"valve": {"opening": 1.0}, "drive": {"start": "ramp", "ramp_s": 10.0}}
CASES: dict[str, tuple[dict[str, Any], dict[str, Any]]] = {
    "flow on valve": ({"of": "flow", "set_m3h": 25.0}, {"set_m3h": 32.0}),
    "flow on drive": ({"of": "flow", "on": "drive", "set_m3h": 25.0}, {"set_m3h": 32.0}),
    "discharge pressure on valve": ({"of": "discharge-pressure", "set_bar": 3.4}, {"set_bar": 3.3}),
    "discharge pressure on drive": (
        {"of": "discharge-pressure", "on": "drive", "set_bar": 2.2},
        {"set_bar": 2.5},
    ),
    "pressure after the valve": ({"of": "after-valve-pressure", "set_bar": 1.8}, {"set_bar": 2.0}),
}


def plant(control: dict[str, Any], **more: dict[str, Any]) -> ResolvedPlant:
    """The rig with a controller; on a drive with the valve wide open."""
    tables = {**WIDE, **(DRIVE if control.get("on") == "drive" else {}), **more}
    return rig(**tables, control={"fitted": True, **control})


def controller(moment: Moment) -> Controller:
    """That of a moment."""
    assert moment.controller is not None
    return moment.controller


@pytest.mark.parametrize("name", CASES)
def test_at_rest_it_stands_still(name: str) -> None:
    """The clock begins where the plain answer is, and stays there."""
    one = plant(CASES[name][0])
    rest = settled([one])[0]
    assert rest.found is not None and rest.found.status == "reached"
    moment = in_steps(one, begin(one), 5.0, 6)
    assert controller(moment).output == pytest.approx(rest.found.output, abs=1e-4)


@pytest.mark.parametrize("name", CASES)
@pytest.mark.parametrize("span", [10.0, 400.0])
def test_run_to_rest_it_is_where_the_settled_answer_is(name: str, span: float) -> None:
    """After its set point has been moved, whatever the steps."""
    before, change = CASES[name]
    one, after = plant(before), plant(before | change)
    rest = settled([after])[0]
    assert rest.found is not None and rest.found.status == "reached" and rest.found.output is not None
    ran = run(after, begin(one), span)
    while ran.moment.seconds < 400:
        ran = run(after, ran.moment, span)
    assert controller(ran.moment).output == pytest.approx(rest.found.output, abs=2e-3)
    state, settled_state = look(ran), true_state(rest)
    assert state.station.flow == pytest.approx(settled_state.station.flow, rel=2e-3)
    assert state.control and state.control.status == "reached"  # type: ignore[union-attr]


@pytest.mark.parametrize("span", [60.0, 3600.0])
def test_a_level_controller_keeps_a_level_while_users_draw_more_and_less(span: float) -> None:
    """After some hours it stands at its set point again, and nothing is lost on the way."""
    vessel = {"area_m2": 2.0, "surface_m": 13.5, "bottom_m": 12.0, "top_m": 16.0}
    control = {"of": "delivery-level", "set_m": 14.0, "integral_s": 300.0}
    wide = {"supply": {"area_m2": 1e5}}
    first = plant(control, delivery={**vessel, "draw_m3h": 20.0}, **wide)
    second = plant(control, delivery={**vessel, "draw_m3h": 28.0}, **wide)
    moment = begin(first)
    start = everything(moment)
    level = 0.0
    for one in (first, second):
        until = moment.seconds + 3 * 3600.0
        while moment.seconds < until - 1e-6:
            moment = run(one, moment, span).moment
            level = 12.0 + moment.delivery.volume[0] / 2.0
            assert 12.5 < level < 15.5
        assert level == pytest.approx(14.0, abs=0.02)
    assert everything(moment) == pytest.approx(start, rel=1e-14)


def test_the_law_of_the_controller_where_its_reading_stands_still() -> None:
    """A vessel too wide to move: dI/dt = K e/T, in closed form. e is a tenth of the vessel's height."""
    delivery = {"surface_m": 13.6, "bottom_m": 12.0, "top_m": 16.0, "draw_m3h": 25.0}
    control = {"of": "delivery-level", "set_m": 14.0, "gain": 2.0, "integral_s": 100.0}
    one = plant(control, delivery={"area_m2": 1e5, **delivery})
    moment = begin(one)
    for span in (10.0, 0.5, 30.0):
        after = run(one, moment, span).moment
        rise = controller(after).output - controller(moment).output
        assert rise == pytest.approx(2.0 * 0.1 * span / 100.0, rel=1e-4)
        moment = after


def test_the_gain_acts_at_once_and_no_faster_than_the_stem() -> None:
    """A set point moved by a tenth of the meter's range: gain times that, at the stem's pace."""
    one = plant({"of": "flow", "set_m3h": 25.0, "gain": 0.2, "integral_s": 3000.0}, valve={"stroke_s": 20.0})
    high = one.plant.meters.flow_range_m3h
    assert high is not None
    after = plant(
        {"of": "flow", "set_m3h": 25.0 + high / 10, "gain": 0.2, "integral_s": 3000.0},
        valve={"stroke_s": 20.0},
    )
    begun = begin(one)
    quarter = run(after, begun, 0.1).moment
    assert quarter.stem - begun.stem == pytest.approx(0.1 / 20.0, rel=1e-3)
    rest = run(after, begun, 20.0).moment
    off = 0.1 - (rest.flows["discharge-line"] - begun.flows["discharge-line"]) * 3600 / high
    assert rest.stem - begun.stem == pytest.approx(0.2 * off, rel=0.1)


def test_hand_and_automatic_take_over_without_a_bump() -> None:
    """By hand the output stays until the key is changed; automatic begins where the valve stands."""
    control = {"of": "flow", "set_m3h": 25.0}
    auto, manual = plant(control), plant({**control, "mode": "manual"})
    held = run(auto, begin(auto), 20.0).moment
    by_hand = run(manual, held, 30.0).moment
    assert by_hand.stem == held.stem and controller(by_hand).integral is None
    moved = run(plant({**control, "mode": "manual"}, valve={"opening": 0.9}), by_hand, 60.0).moment
    assert moved.stem == 0.9 and moved.controller is None
    again = plant(control, valve={"opening": 0.9})
    first = run(again, moved, 1e-3).moment
    assert first.stem == pytest.approx(0.9, abs=1e-4)
    back = run(again, first, 300.0).moment
    assert back.stem == pytest.approx(held.stem, abs=2e-3)


def test_at_a_limit_nothing_winds_up() -> None:
    """An hour at full output with the pump off; when it runs again the valve comes back at once."""
    control = {"of": "flow", "set_m3h": 25.0}
    on, off = plant(control), plant(control, pump={"running": False, "model": "medium"})
    begun = begin(on)
    stopped = run(off, begun, 3600.0).moment
    assert controller(stopped).output == 1.0
    again = in_steps(on, stopped, 20.0, 3)
    assert again.stem == pytest.approx(begun.stem, abs=0.05)
    assert run(on, again, 60.0).moment.stem == pytest.approx(begun.stem, abs=0.01)


@pytest.mark.parametrize("span", [1e-3, 0.1, 10.0, 3600.0])
@pytest.mark.parametrize("name", ["flow on valve", "discharge pressure on drive"])
def test_steps_of_any_size_stay_within_the_limits(name: str, span: float) -> None:
    """Also with a gain that a real loop would not bear."""
    before, change = CASES[name]
    limits = {"low_percent": 20.0, "high_percent": 95.0, "gain": 10.0, "integral_s": 2.0}
    one, after = plant(before | limits), plant(before | change | limits)
    moment = begin(one)
    for _ in range(2):
        ran = run(after, moment, span)
        moment = ran.moment
        assert bool(ran.step.stage.solved.solution.converged[0])
        assert 0.2 - 1e-9 <= controller(moment).output <= 0.95 + 1e-9


def test_a_current_limit_bounds_a_controller_on_the_drive() -> None:
    """It goes up to the frequency that the limit leaves, and no further."""
    control = {"of": "flow", "on": "drive", "set_m3h": 60.0}
    drive = {"start": "ramp", "ramp_s": 5.0, "current_limit_percent": 60.0}
    one = plant(control, drive=drive)
    moment = run(one, begin(one), 200.0).moment
    rest = settled([one])[0]
    assert rest.found is not None and rest.found.status == "lost-high"
    assert moment.shafts[0].frequency == pytest.approx(rest.plant.drive.frequency_hz, rel=1e-3)
