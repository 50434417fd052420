"""What the instruments of a whole plant show of its true state."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest
from tests.plants import CURVE, LEAST, with_table

from loadfirst.instruments.instrument import Reading
from loadfirst.instruments.panel import readings
from loadfirst.plant.answer import State
from loadfirst.plant.build import build
from loadfirst.plant.effective import effective
from loadfirst.plant.plant import Plant
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import true_state
from loadfirst.units import BAR, HOUR, RPM, G


def run(data: dict[str, Any]) -> tuple[Plant, State, dict[str, Reading]]:
    """A plant, its true state and its readings by id."""
    resolved = resolve_data(data)
    state = true_state(build([resolved]))
    return resolved.plant, state, {reading.id: reading for reading in readings(state, resolved.plant)}


def test_every_instrument_is_there_in_a_fixed_order() -> None:
    """Two pumps bring two ammeters and two tachometers."""
    single = list(run(LEAST)[2])
    assert single == [
        "gauge-suction", "gauge-discharge", "gauge-after-valve", "flow-meter", "ammeter-1", "tachometer-1",
        "level-supply", "level-delivery",
    ]  # fmt: skip
    pair = list(run(with_table("pump", arrangement="side-by-side"))[2])
    assert {"ammeter-2", "tachometer-2"} == set(pair) - set(single)


def test_a_gauge_shows_head_less_height_less_velocity_head() -> None:
    """p = ρ g (H - z) - ρ v²/2, worked out here from the flow and the bore."""
    data = with_table("gauges", discharge={"height_m": 2.3, "range_bar": [0, 10]})
    plant, state, shown = run(data)
    velocity = state.flow / (3.141592653589793 * 0.08**2 / 4)
    density = state.liquid.density
    expected = density * G * (state.station.discharge_head - 2.3) - density * velocity**2 / 2
    assert plant.discharge.bore_mm == 80
    assert shown["gauge-discharge"].value == pytest.approx(expected, rel=1e-9)


def test_hanging_a_gauge_higher_lowers_its_reading_and_changes_nothing_else() -> None:
    """An instrument looks at the truth; it does not make it."""
    _, low_state, low = run(with_table("gauges", suction={"height_m": 0.5, "range_bar": [-1, 5]}))
    _, high_state, high = run(with_table("gauges", suction={"height_m": 2.5, "range_bar": [-1, 5]}))
    fall = low["gauge-suction"].value - high["gauge-suction"].value  # type: ignore[operator]
    assert fall == pytest.approx(low_state.liquid.density * G * 2.0)
    assert low_state == high_state


@pytest.mark.parametrize("centre", [0.5, -3.0, 1.7])
def test_a_gauge_without_a_height_hangs_at_the_shaft(centre: float) -> None:
    """Wherever the pump stands: it reads the pressure at its tapping; a height that is given stays."""
    data = with_table("pump", centre_m=centre)
    data["gauges"] = {
        "after_valve": {"height_m": 4.0, "range_bar": [-1, 10]},
        "discharge": {"range_bar": [-1, 10]},
    }
    plant, state, shown = run(data)
    heights = [
        dial.height_m for dial in (plant.gauges.suction, plant.gauges.discharge, plant.gauges.after_valve)
    ]
    assert heights == [centre, centre, 4.0]
    assert shown["gauge-suction"].value == pytest.approx(state.nodes["suction"].pressure)
    assert shown["gauge-discharge"].value == pytest.approx(state.nodes["discharge"].pressure)
    told = effective(resolve_data(data))
    assert [told["gauges"][name]["height_m"] for name in ("suction", "discharge", "after_valve")] == heights


def test_ranges_and_errors_are_those_of_the_file() -> None:
    """In SI, from bar, m³/h and per cent."""
    data = with_table("gauges", discharge={"range_bar": [0, 10], "class": 1})
    data["meters"] = {"flow_range_m3h": 50, "flow_percent": 2, "current_range_a": 30, "speed_range_rpm": 3600}
    _, _, shown = run(data)
    gauge, meter = shown["gauge-discharge"], shown["flow-meter"]
    assert (gauge.low, gauge.high) == (0, 10 * BAR)
    assert gauge.accuracy == pytest.approx(0.1 * BAR)
    assert meter.high == pytest.approx(50 / HOUR)
    assert meter.accuracy == pytest.approx(1 / HOUR)
    assert shown["ammeter-1"].high == 30
    assert shown["tachometer-1"].high == pytest.approx(3600 * RPM)


def test_flow_current_speed_and_levels_are_passed_on() -> None:
    """Exact within their scales."""
    plant, state, shown = run(LEAST)
    assert shown["flow-meter"].value == state.station.flow
    assert shown["ammeter-1"].value == state.machines[0].current
    assert shown["tachometer-1"].value == state.machines[0].speed
    assert shown["level-supply"].value == plant.supply.surface_m
    assert (shown["level-delivery"].low, shown["level-delivery"].high) == (12, 16)


def test_the_ammeter_suits_the_motor_where_the_file_says_nothing() -> None:
    """3 kW, two poles, 400 V: about 6 A rated, so the scale reaches 10 A."""
    assert run(LEAST)[2]["ammeter-1"].high == 10


@pytest.mark.parametrize(
    ("last", "arrangement", "end"),
    [(30.0, "single", 40), (30.0, "side-by-side", 100), (30.0, "in-line", 40), (32.01, "single", 60)],
)
def test_the_flow_meter_suits_the_pumps_where_the_file_says_nothing(
    last: float, arrangement: str, end: float
) -> None:
    """A quarter beyond the last point, of both pumps side by side; it stays when the speed is changed."""
    data = with_table("pump", arrangement=arrangement)
    data["pump"]["curve"] = {**CURVE, "flow_m3h": [0, 10, 20, last]}
    for drive in ({}, {"frequency_hz": 20}, {"poles": 8}):
        assert run({**data, "drive": drive})[2]["flow-meter"].high == pytest.approx(end / HOUR)


@pytest.mark.parametrize(("last", "end"), [(0.012, 0.015), (1e5, 1.5e5)])
def test_the_meter_of_any_pump_is_one_that_a_file_may_name(last: float, end: float) -> None:
    """What the page is given, all defaults filled in, is a plant again."""
    data = with_table("pump")
    data["pump"]["curve"] = {**CURVE, "flow_m3h": [0, last / 3, last / 2, last]}
    if last < 1:
        data["pump"]["curve"] |= {"motor_kw": 0.1}
    told = effective(resolve_data(data))
    assert told["meters"]["flow_range_m3h"] == pytest.approx(end)
    assert effective(resolve_data(told)) == told


def test_a_flow_meter_too_small_stands_at_its_stop() -> None:
    """And says so."""
    meter = run(with_table("meters", flow_range_m3h=2))[2]["flow-meter"]
    assert (meter.value, meter.off_scale) == (pytest.approx(2 / HOUR), "high")


def test_with_the_line_off_the_gauge_after_the_valve_shows_nothing_and_the_meter_goes_on() -> None:
    """The flow meter stands at the flange; the other gauge went with the line."""
    shown = run(with_table("discharge", attached=False))[2]
    assert shown["gauge-after-valve"].value is None
    assert shown["flow-meter"].value > 0  # type: ignore[operator]
    assert shown["gauge-discharge"].value == pytest.approx(0, abs=1e-6)


def test_no_steady_state_no_reading() -> None:
    """The last iterate of a solver that gave up is not a reading; levels do not depend on it."""
    plant, state, _ = run(LEAST)
    lost = msgspec.structs.replace(state, converged=False, why="stalled")
    for reading in readings(lost, plant):
        assert (reading.value is None) == (not reading.id.startswith("level")), reading.id


def test_an_undefined_pressure_shows_nothing() -> None:
    """Between two shut elements the pressure is whatever was trapped there."""
    plant, state, _ = run(LEAST)
    node = msgspec.structs.replace(state.nodes["discharge"], head=None, pressure=None)
    trapped = msgspec.structs.replace(state, nodes={**state.nodes, "discharge": node})
    assert next(r for r in readings(trapped, plant) if r.id == "gauge-discharge").value is None
