"""Two days compared: which side has changed, what every instrument makes of it, and why.

Directions are those of the duty point on both curves (Hydraulic Institute's worked systems and
common practice): what is throttled moves the duty point back along the same pump's curve.
"""

from __future__ import annotations

from typing import Any

import msgspec
import pytest

from loadfirst.clock.moment import Moment
from loadfirst.days.compare import Compared, compare
from loadfirst.door.answer import answer
from loadfirst.door.messages import AnswerAsk, Shown, StepAsk
from loadfirst.door.step import step
from loadfirst.errors import InputError
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import plant_data

PLANT = "rinse-transfer"
SEEDED = {"meters.seed": 7}


def compared(today: dict[str, Any], yesterday: dict[str, Any] | None = None) -> Compared:
    """The plant with edits today against the plant with edits yesterday."""
    before = yesterday or {}
    data = plant_data(PLANT)
    return compare(apply_edits(data, before), apply_edits(data, today), {*before, *today})


def moved(of: Compared) -> dict[str, str | None]:
    """Which way every instrument went."""
    return {one.id: one.moved for one in of.readings}


def test_nothing_changed_moves_nothing() -> None:
    """Neither a curve nor a reading."""
    same = compared({})
    assert same.changed == () and same.parts is None and same.reasons == {}
    assert same.meeting.mover == "neither" and same.meeting.flow[0] == same.meeting.flow[1]
    assert set(moved(same).values()) == {"same"}


def test_a_throttled_valve_is_another_load_and_the_same_machine() -> None:
    """At yesterday's flow the load asks for more, the pump answers what it answered."""
    of = compared({"valve.opening": 0.4})
    assert [(one.key, one.side) for one in of.changed] == [("valve.opening", "load")]
    met = of.meeting
    assert met.mover == "load" and met.flow[1] < met.flow[0] and met.head[1] > met.head[0]
    assert met.asked[0] == pytest.approx(met.head[0]) and met.answered[0] == pytest.approx(met.head[0])
    assert met.asked[1] is not None and met.asked[1] > met.head[0]
    assert met.answered[1] == met.answered[0]
    assert of.reasons == {
        "gauge-suction": "flow-before", "gauge-discharge": "curve", "gauge-after-valve": "flow-behind",
        "flow-meter": "load", "ammeter-1": "curve", "tachometer-1": "slip",
    }  # fmt: skip
    ways = moved(of)
    assert ways["gauge-discharge"] == "up" and ways["gauge-after-valve"] == ways["flow-meter"] == "down"


def test_a_worn_pump_is_another_machine_under_the_same_load() -> None:
    """It answers with less at yesterday's flow."""
    of = compared({"pump.wear_percent": 25})
    met = of.meeting
    assert met.mover == "machine" and met.asked[1] == pytest.approx(met.asked[0])
    assert met.answered[0] is not None and met.answered[1] is not None and met.answered[1] < met.answered[0]
    assert of.reasons["gauge-discharge"] == "machine" and of.reasons["flow-meter"] == "machine"


def test_a_pump_whose_flow_leaks_back_through_its_twin_is_the_same_pump() -> None:
    """It runs out on its own curve; the less that comes out of the station is no fault of it."""
    twins = {"pump.arrangement": "side-by-side", "pump.second.running": False, "check.fitted": True}
    of = compared(twins | {"check.leak_kv_m3h": 15.0}, twins)
    ways = moved(of)
    assert ways["gauge-discharge"] == ways["flow-meter"] == "down" and ways["ammeter-1"] == "up"
    assert of.reasons["gauge-discharge"] == of.reasons["ammeter-1"] == "curve"
    assert of.reasons["flow-meter"] == "load"


@pytest.mark.parametrize(
    ("edits", "reason"),
    [
        ({"supply.surface_m": 1.0}, "supply"),
        ({"suction.strainer_k": 80.0}, "line-before"),
        ({"valve.opening": 0.2}, "flow-before"),
        ({"gauges.suction.fault.zero_bar": 0.2}, "instrument"),
    ],
)
def test_the_suction_gauge_says_what_moved_it(edits: dict[str, Any], reason: str) -> None:
    """The level in front of it, the line, the flow through the line, or itself."""
    of = compared(edits)
    assert of.reasons["gauge-suction"] == reason


def test_a_faulty_instrument_moves_alone() -> None:
    """The plant stands as it stood, and so do all other readings."""
    of = compared({"gauges.discharge.fault.zero_bar": 0.5})
    assert of.meeting.mover == "neither"
    assert [id for id, way in moved(of).items() if way != "same"] == ["gauge-discharge"]
    assert of.changed[0].side == "instrument"


def test_a_second_pump_is_another_machine_to_the_station() -> None:
    """Its instruments have no reading yesterday, and nobody can say which way they went."""
    of = compared({"pump.arrangement": "side-by-side"})
    assert of.changed[0].side == "machine"
    second = next(one for one in of.readings if one.id == "ammeter-2")
    assert second.yesterday is None and second.moved is None and second.change is None


def test_a_pump_that_gives_its_flow_at_any_head_is_not_asked_what_it_answers() -> None:
    """Its pressure is what the load asks."""
    gear = {"pump.model": "gear", "relief.fitted": True}
    of = compared({**gear, "valve.opening": 0.5}, {**gear, "valve.opening": 0.6})
    assert of.meeting.answered == (None, None) and of.meeting.mover == "load"
    assert of.reasons["gauge-discharge"] == "asked"
    of = compared({**gear, "valve.opening": 0.15}, {**gear, "valve.opening": 0.6})
    assert moved(of)["ammeter-1"] == "up" and of.reasons["ammeter-1"] == "asked"


def test_the_same_instrument_hides_less_than_another_one_would() -> None:
    """A replaced gauge brings another lasting error, and so explains a larger change."""
    kept = compared({"valve.opening": 0.74, **SEEDED}, SEEDED)
    other = compared({"valve.opening": 0.74, "gauges.discharge.serial": 3, **SEEDED}, SEEDED)
    one, two = (next(each for each in of.readings if each.id == "gauge-discharge") for of in (kept, other))
    assert one.same_instrument and not two.same_instrument
    assert one.explained is not None and two.explained is not None
    assert two.explained == pytest.approx(5 * one.explained)  # a fifth of the class repeats


def test_several_changes_are_told_apart_and_the_order_is_said_to_matter_where_it_does() -> None:
    """Each first and last; what a valve takes depends on the speed of the pump, and the other way round."""
    of = compared({"valve.opening": 0.4, "drive.frequency_hz": 45.0})
    assert of.parts is not None and of.parts.order_matters
    before, after = of.meeting.flow
    valve, drive = sorted(of.parts.each, key=lambda one: one.key, reverse=True)
    assert valve.first + drive.last == pytest.approx(after - before)
    assert drive.first + valve.last == pytest.approx(after - before)
    gentle = compared({"supply.surface_m": 2.1, "delivery.surface_m": 14.1})
    assert gentle.parts is not None and not gentle.parts.order_matters


def test_a_reading_off_its_scale_has_moved_even_if_nobody_knows_how_far() -> None:
    """Against its stop there is no number for the change."""
    of = compared({"pump.arrangement": "in-line", "valve.opening": 0.2})
    discharge = next(one for one in of.readings if one.id == "gauge-discharge")
    assert discharge.today is not None and discharge.today.off_scale == "high"
    assert discharge.change is None and discharge.moved == "up"


def test_a_day_without_a_state_says_which_day() -> None:
    """The error's place begins with it."""
    with pytest.raises(InputError) as refused:
        compared({"valve.opening": 1.4})
    assert refused.value.where.startswith("today")


def test_a_value_that_was_left_out_is_told_as_what_it_stands_for() -> None:
    """No frequency of the drive: the supply's."""
    (drive,) = compared({"drive.frequency_hz": 45.0}).changed
    assert (drive.yesterday, drive.today) == (50.0, 45.0)


def test_todays_dials_are_the_ones_that_are_compared() -> None:
    """The live answer, told that it is the second look, shows what the comparison says of today."""
    edits = {**SEEDED, "valve.opening": 0.6, "gauges.discharge.fault.root_valve": "shut"}
    first = answer(AnswerAsk(plant=PLANT, edits=SEEDED))["shown"]
    before = {one["id"]: Shown(value=one["value"], low=one["low"], high=one["high"]) for one in first[:3]}
    second = answer(AnswerAsk(plant=PLANT, edits=edits, look=1, before=before))["shown"]
    of = {one.id: one for one in compared(edits, SEEDED).readings}
    for one in second:
        today = of[one["id"]].today
        assert today is not None and one["value"] == pytest.approx(today.value)
    assert second[1]["value"] == pytest.approx(first[1]["value"], rel=0.01)  # shut off: it keeps yesterday's


def at_moment(seconds: float, today: dict[str, Any]) -> tuple[Any, Compared]:
    """The step that time has come to with today's edits, and yesterday compared with that moment."""
    data = apply_edits(plant_data(PLANT), today)
    moved_on = step(StepAsk(plant=data, span=seconds))
    moment = msgspec.convert(moved_on["moment"], Moment)
    of = compare(plant_data(PLANT), data, set(today), moment)
    return moved_on, of


def test_while_time_runs_today_is_what_dials_show_at_its_moment() -> None:
    """Not the plant at rest: the levels have moved, and time has moved them."""
    moved_on, of = at_moment(500.0, {"delivery.draw_m3h": 0.0, "supply.inflow_m3h": 0.0})
    shown = {one["id"]: one["value"] for one in moved_on["shown"]}
    for one in of.readings:
        assert one.today is not None and one.today.value == pytest.approx(shown[one.id], rel=1e-3)
    ways = moved(of)
    assert (ways["level-supply"], ways["level-delivery"], ways["flow-meter"]) == ("down", "up", "down")
    assert of.reasons["level-supply"] == of.reasons["level-delivery"] == "time"
    assert of.meeting.mover == "load" and of.meeting.flow[1] < of.meeting.flow[0]
    at_rest = compared({})
    assert moved(at_rest)["level-supply"] == "same"


def test_a_level_set_by_hand_is_told_as_set_also_while_time_runs() -> None:
    """The other one is time's."""
    _, of = at_moment(60.0, {"supply.surface_m": 3.0})
    assert (of.reasons["level-supply"], of.reasons["level-delivery"]) == ("set", "time")
    assert [one.key for one in of.changed] == ["supply.surface_m"]
