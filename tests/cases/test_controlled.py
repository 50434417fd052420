"""A puzzle in a plant with a controller: the controlled reading stands still, the output tells the story."""

from __future__ import annotations

import pytest
from tests.cases.samples import SOUND, changed, prove_text

from loadfirst.cases.read import decode_case
from loadfirst.days.two_days import Days, both_days
from loadfirst.errors import FileError

HELD = changed(
    ("[yesterday.plant]\nvalve.opening = 0.65", "[yesterday.plant]\ncontrol = {fitted = true, set_m3h = 30}"),
    ("[today.plant]\nvalve.opening = 0.85", "[today.plant]\npump.wear_percent = 15"),
    (
        'from {yesterday.gauge-discharge}."',
        'from {yesterday.gauge-discharge}; the flow is {today.flow-meter}."',
    ),
    ('reading = "flow-meter"', 'reading = "controller-output"'),
    ('reads = ["flow-meter"]', 'reads = ["controller-output"]'),
    ('when_seen.flow-meter = "You read the flow meter."\n', ""),
    ('when_unseen.flow-meter = "You left the flow meter alone."\n', ""),
    ('flow-meter = "rises"', 'flow-meter = "same"\ncontroller-output = "rises"'),
)
"""A pump has worn overnight; the valve has opened to make up for it."""


def days_of(text: str) -> Days:
    """Both days of a case, not proven."""
    return both_days(decode_case(text, "made-up.toml"))


def test_a_worn_pump_behind_a_controller_is_a_case_that_holds() -> None:
    """The flow meter stands still, the output has risen, and the machine is the truth."""
    proven = prove_text(HELD)
    assert (proven.truth, proven.load) == ("machine", None)
    before, after = proven.days.reading("flow-meter")
    assert after.value == pytest.approx(before.value, rel=1e-6)
    assert list(proven.days.differences) == ["pump.wear_percent"]


def test_what_the_controller_has_moved_can_be_named() -> None:
    """A stem that is looked at stands where the controller has put it, on either day."""
    proven = prove_text(HELD)
    stem = proven.case.checks[1].result
    assert stem is not None and "valve.opening" in stem
    openings = [day.settled.plant.valve.opening for day in (proven.days.yesterday, proven.days.today)]
    assert openings[1] > openings[0] + 0.01
    assert proven.days.yesterday.resolved.plant.valve.opening == 0.75


@pytest.mark.parametrize("on", ["valve", "drive"])
def test_a_blocked_filter_makes_the_load_heavier_though_the_pump_meets_the_same(on: str) -> None:
    """Judged with the output where it stood: the controller has made up for the filter."""
    held = (
        f'control = {{fitted = true, on = "{on}", set_m3h = 25}}\nfilter = {{fitted = true, fouling = 1.0}}'
    )
    text = changed(
        ("control = {fitted = true, set_m3h = 30}", held),
        ("pump.wear_percent = 15", "filter.fouling = 8.0"),
        ('load = "lighter"\nreply = "Yes: one step along the same curve."',
         'load = "lighter"\nreply = "No: the output has risen, to {today.controller-output}."'),
        ('gauge-discharge = "falls"\n', ""),
        text=HELD,
    )  # fmt: skip
    proven = prove_text(text)
    assert (proven.truth, proven.load) == ("discharge-side", "heavier")


@pytest.mark.parametrize(("on", "truth"), [("valve", "discharge-side"), ("drive", "drive")])
def test_another_set_point_is_as_if_valve_or_drive_had_been_moved(on: str, truth: str) -> None:
    """A controller belongs to what it moves."""
    text = changed(
        (
            "control = {fitted = true, set_m3h = 30}",
            f'control = {{fitted = true, on = "{on}", set_m3h = 20}}',
        ),
        ("pump.wear_percent = 15", "control.set_m3h = 23"),
        ('blames = "machine"', 'blames = "drive"'),
        ('gauge-discharge = "falls"\nflow-meter = "same"', 'flow-meter = "rises"'),
        text=HELD,
    )
    proven = prove_text(text)
    assert proven.truth == truth
    assert proven.load == {"valve": "lighter", "drive": None}[on]


def test_the_output_is_an_instrument_of_plants_with_a_controller_only() -> None:
    """Elsewhere a case that reads it is refused."""
    with pytest.raises(FileError) as error:
        prove_text(changed(('reads = ["flow-meter"]', 'reads = ["controller-output"]'), text=SOUND))
    assert error.value.where == "checks[0].reads"


def test_a_controller_that_was_taken_away_overnight_leaves_no_reading_today() -> None:
    """Neither up nor down, and no failure."""
    text = changed(("pump.wear_percent = 15", "control.fitted = false"), text=HELD)
    before, after = days_of(text).reading("controller-output")
    assert before.value is not None and after.value is None
