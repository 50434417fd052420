"""Instruments in time: a damped one follows late by the law of first order, one that is shut off stays."""

from __future__ import annotations

from math import exp
from typing import Any

import pytest
from msgspec.structs import replace
from tests.rig import rig

from loadfirst.clock.begin import begin
from loadfirst.clock.look import look, now
from loadfirst.clock.moment import Moment
from loadfirst.clock.pointers import pointers
from loadfirst.clock.run import Run, run
from loadfirst.instruments.panel import readings
from loadfirst.plant.pumps import ResolvedPlant

WIDE: dict[str, dict[str, Any]] = {"supply": {"area_m2": 1e5}, "delivery": {"area_m2": 1e5}}
"""Vessels so wide that hardly anything moves."""


def damped(seconds: float, **more: dict[str, Any]) -> ResolvedPlant:
    """Discharge gauge and flow meter follow late."""
    fault = {"fault": {"damping_s": seconds}}
    meters = {"flow_fault": {"damping_s": seconds}}
    return rig(**WIDE, gauges={"discharge": fault}, meters=meters, **more)


def shown(ran: Run, name: str) -> float:
    """What an instrument shows at the end of a run."""
    found = readings(look(ran), now(ran).plant, pointers=ran.moment.pointers)
    value = next(reading.value for reading in found if reading.id == name)
    assert value is not None
    return value


def let_fall(moment: Moment) -> Moment:
    """The moment with all pointers on 0."""
    return replace(moment, pointers=dict.fromkeys(moment.pointers, 0.0))


@pytest.mark.parametrize("count", [1, 7, 1000])
def test_a_truth_that_stands_still_is_followed_alike_in_any_steps(count: int) -> None:
    """1 - exp(-t/τ) of what it will show, to round-off."""
    plant = damped(20.0)
    one = run(plant, begin(plant), 1.0).step.stage.solved.of(0)
    end = pointers(plant.plant, one)
    found = dict.fromkeys(end, 0.0)
    for _ in range(count):
        found = pointers(plant.plant, one, found, 30.0 / count)
    for name in ("gauge-discharge", "flow-meter"):
        assert found[name] == pytest.approx(end[name] * (1 - exp(-1.5)), rel=1e-12)
    assert found["gauge-suction"] == end["gauge-suction"]


@pytest.mark.parametrize("name", ["gauge-discharge", "flow-meter"])
@pytest.mark.parametrize("count", [1, 20])
def test_a_damped_pointer_rises_while_time_runs(name: str, count: int) -> None:
    """However many asks there are, and however many steps each is made of."""
    plant = damped(20.0)
    moment = let_fall(begin(plant))
    end = shown(run(plant, begin(plant), 1.0), name)
    for _ in range(count):
        ran = run(plant, moment, 30.0 / count)
        moment = ran.moment
    assert shown(ran, name) == pytest.approx(end * (1 - exp(-1.5)), rel=1e-4)
    assert shown(run(plant, moment, 3600.0), name) == pytest.approx(end, rel=1e-3)


def test_an_orifice_is_damped_in_what_it_senses() -> None:
    """The pressure difference follows late; its root is shown: √(1 - exp(-t/τ)) of the flow."""
    meters = {"flow_kind": "orifice", "flow_fault": {"damping_s": 10.0}}
    plant = rig(**WIDE, meters=meters)
    end = shown(run(plant, begin(plant), 1.0), "flow-meter")
    ran = run(plant, let_fall(begin(plant)), 10.0)
    assert shown(ran, "flow-meter") == pytest.approx(end * (1 - exp(-1.0)) ** 0.5, rel=1e-4)


def test_without_damping_a_pointer_stands_where_the_truth_is() -> None:
    """In a plant that moves, at every step."""
    plant = rig(valve={"opening": 0.3, "stroke_s": 20.0})
    moment = begin(rig())
    for _ in range(5):
        ran = run(plant, moment, 2.0)
        moment = ran.moment
        late = readings(look(ran), now(ran).plant, pointers=moment.pointers)
        at_once = readings(look(ran), now(ran).plant)
        for one, other in zip(late, at_once, strict=True):
            assert one == other


def test_a_gauge_that_is_shut_off_keeps_what_it_showed_then() -> None:
    """While the valve goes on to shut; opened again it shows the truth."""
    shutting: dict[str, Any] = {"valve": {"opening": 0.2, "stroke_s": 40.0}}
    sound = rig(**shutting)
    closed = rig(**shutting, gauges={"discharge": {"fault": {"root_valve": "shut"}}})
    then = run(sound, begin(rig()), 5.0)
    after = run(closed, then.moment, 30.0)
    meanwhile = run(sound, then.moment, 30.0)
    assert shown(after, "gauge-discharge") == shown(then, "gauge-discharge")
    assert shown(meanwhile, "gauge-discharge") > shown(then, "gauge-discharge") + 1e4
    again = run(sound, after.moment, 1.0)
    assert shown(again, "gauge-discharge") == pytest.approx(
        shown(run(sound, meanwhile.moment, 1.0), "gauge-discharge"), rel=1e-6
    )


def test_a_damped_gauge_lags_behind_a_level_that_falls() -> None:
    """Behind a steady ramp a pointer of first order stands by rate times time constant too high."""
    tables: dict[str, dict[str, Any]] = {
        "supply": {"inflow_m3h": 36.0, "surface_m": 0.5, "bottom_m": 0.0, "top_m": 9.0, "area_m2": 10.0},
        "pump": {"running": False, "model": "medium"},
    }
    late = rig(**tables, gauges={"suction": {"fault": {"damping_s": 15.0}}})
    sound, moment = rig(**tables), begin(late)
    for _ in range(400):
        ran = run(late, moment, 0.5)
        moment = ran.moment
    truth = shown(run(sound, moment, 1e-4), "gauge-suction")
    density = look(ran).liquid.density
    assert truth - shown(ran, "gauge-suction") == pytest.approx(density * 9.80665 * 1e-3 * 15.0, rel=0.03)
