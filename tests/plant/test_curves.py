"""Curves over flow: the load's, the pump's and the station's."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from tests.rig import rig

from loadfirst.plant.answer import Duty
from loadfirst.plant.build import build
from loadfirst.plant.curves import Curves, curves, load_curve, pump_curve, station_curve
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import true_state


def curves_of(plant: ResolvedPlant) -> Curves:
    """All curves of a plant, through its duty point."""
    one = build([plant])
    return curves(one, true_state(one).duty)


@pytest.mark.parametrize("arrangement", ["single", "side-by-side", "in-line"])
def test_curves_are_columns_of_equal_length_from_no_flow_to_beyond_the_pumps(arrangement: str) -> None:
    """Sixty points unless asked otherwise; the last lies beyond the pumps' points and the duty."""
    built = build([rig(pump={"arrangement": arrangement})])
    drawn = curves(built, true_state(built).duty)
    columns = [drawn.flow, drawn.load, drawn.machine, drawn.station, drawn.npsh_required, drawn.power]
    assert {len(column) for column in columns} == {60}
    assert drawn.flow[0] == 0.0
    assert drawn.flow[-1] > built.layout.side_by_side * built.machines["pumps"].last_flow[0, 0]
    assert curves(built, Duty(1.0, 0.0), 7).flow[-1] == pytest.approx(1.1)


def test_the_load_asks_its_lift_at_no_flow_and_more_with_flow() -> None:
    """A rising load: the static head, then friction."""
    load = curves_of(rig()).load
    assert load[0] == pytest.approx(12.0, abs=1e-9)
    assert all(a < b for a, b in zip(load, load[1:], strict=False))


def test_behind_a_shut_valve_there_is_no_load_curve() -> None:
    """A shut valve answers any head: the curve does not exist, rather than being very high."""
    shut = curves_of(rig(valve={"opening": 0.0}))
    assert set(shut.load) == {None}
    assert None not in shut.station


def test_the_open_stations_load_is_its_suction_and_its_jet() -> None:
    """With the line off the load nearly vanishes: height of the outlet above the supply, suction, jet."""
    off = build([rig(discharge={"attached": False})])
    state = true_state(off)
    head, known = load_curve(off, np.array([[0.0, state.station.flow]]))
    assert known.all()
    assert head[0] == pytest.approx([-1.5, state.station.head], abs=1e-6)


def test_one_pump_is_its_own_station() -> None:
    """Single: both curves are the same line."""
    single = curves_of(rig())
    assert single.station == single.machine


def test_the_station_curves_of_two_pumps_add_flows_or_heads() -> None:
    """Side by side at twice the flow, in line at twice the head; check valves are no part of it."""
    beside = build([rig(pump={"arrangement": "side-by-side"})])
    in_line = build([rig(pump={"arrangement": "in-line"})])
    flow = np.linspace(0.0, 0.015, 9)[None]
    one = pump_curve(beside, flow).head  # so far all have plenty of NPSH
    assert station_curve(beside, 2 * flow) == pytest.approx(one, rel=1e-9, abs=1e-9)
    assert station_curve(in_line, flow) == pytest.approx(2 * one, rel=1e-9, abs=1e-9)


def test_curves_of_a_batch_are_those_of_its_plants() -> None:
    """Each row of flows goes through its own plant."""
    some = [rig(valve={"opening": x}, pump={"arrangement": "side-by-side"}) for x in (0.3, 0.7, 0.0)]
    flow = np.array([[0.0, 0.005, 0.01]] * 3) * np.array([[1.0], [1.5], [2.0]])
    together, known = load_curve(build(some), flow)
    station = station_curve(build(some), flow)
    for row, one in enumerate(some):
        alone, also = load_curve(build([one]), flow[row : row + 1])
        assert known[row].tolist() == also[0].tolist()
        assert together[row][known[row]] == pytest.approx(alone[0][also[0]], rel=1e-9)
        assert station[row] == pytest.approx(station_curve(build([one]), flow[row : row + 1])[0], rel=1e-9)


@pytest.mark.parametrize("arrangement", ["single", "side-by-side", "in-line"])
@pytest.mark.parametrize(
    "tables",
    [
        {},
        {"check": {"k": 50.0}},
        {"valve": {"opening": 0.05, "kv_open_m3h": 10}},
        {"discharge": {"attached": False}},
        {"drive": {"frequency_hz": 15.0}, "check": {"fitted": False}, "valve": {"opening": 1.0}},
        {"drive": {"frequency_hz": 15.0}, "check": {"fitted": False}, "valve": {"opening": 0.2}},
        {"drive": {"frequency_hz": 15.0}},
        {"drive": {"frequency_hz": 15.0}, "check": {"fitted": False}, "delivery": {"outlet_m": 16.0}},
    ],
)
def test_the_duty_point_lies_on_both_curves_that_are_drawn(arrangement: str, tables: dict[str, Any]) -> None:
    """Forward, backward and at rest, on a steep load and a flat one; straight lines join the points."""
    one = build([rig(pump={"arrangement": arrangement}, **tables)])
    duty = true_state(one).duty
    drawn = curves(one, duty)
    near = 1e-3 * float(one.head_scale[0])
    after = next(i for i, flow in enumerate(drawn.flow) if flow > drawn.flow[0] and flow >= duty.flow)
    share = (duty.flow - drawn.flow[after - 1]) / (drawn.flow[after] - drawn.flow[after - 1])
    for line in (drawn.load, drawn.station):
        before, beyond = line[after - 1], line[after]
        assert before is not None and beyond is not None
        lowest = min(before, line[0] or 0.0) if duty.flow == 0 else before
        assert lowest + share * (beyond - before) == pytest.approx(duty.head, abs=near)
    assert len(drawn.flow) == 60 and list(drawn.flow) == sorted(drawn.flow)
    assert drawn.flow[0] < duty.flow or duty.flow == 0


def test_the_loads_curve_falls_straight_down_to_a_duty_at_rest() -> None:
    """The first trickle asks for all the lift; below it the check valve holds any head."""
    one = build([rig(drive={"frequency_hz": 15.0})])
    drawn = curves(one, true_state(one).duty)
    assert drawn.flow[:2] == (0.0, 0.0) < drawn.flow[2:3]
    assert drawn.load[1] == pytest.approx(12.0, abs=1e-9)
