"""A puzzle in a plant with a controller: the controlled reading stands still, the output tells the story."""

from __future__ import annotations

import pytest
from tests.cases.samples import SOUND, changed, prove_text, refused

from loadfirst.days.two_days import DayName

HELD = changed(
    ("[yesterday.plant]\nvalve.opening = 0.65", "[yesterday.plant]\ncontrol = {fitted = true, set_m3h = 30}"),
    ('cause = "valve-opened"\nsize = 0.6', 'cause = "worn"\nsize = 15'),
    (
        'from {yesterday.gauge-discharge}."',
        'from {yesterday.gauge-discharge}; the flow is {today.flow-meter}."',
    ),
    ('shows = "It stands at {today.valve.opening}."', 'shows = "Wide open!"'),
    ("Yes: one step along the same curve.", "No: the valve went to {today.valve.opening}."),
    ('reading = "flow-meter"', 'reading = "controller-output"'),
    ('reads = ["flow-meter"]', 'reads = ["controller-output"]'),
    ('when_seen.flow-meter = "You read the flow meter."\n', ""),
    ('when_unseen.flow-meter = "You left the flow meter alone."\n', ""),
    ('flow-meter = "rises"', 'flow-meter = "same"\ncontroller-output = "rises"'),
)
"""A pump has worn overnight; the valve has opened to make up for it."""


def test_a_worn_pump_behind_a_controller_is_a_case_that_holds() -> None:
    """The flow meter stands still, the output has risen, and the machine is the truth."""
    proven = prove_text(HELD)
    assert proven.truth == (("worn",), ("machine",), None)
    before, after = (day.state.duty.flow for day in (proven.days.yesterday, proven.days.today))
    assert after == pytest.approx(before, rel=1e-6)
    assert list(proven.days.differences) == ["pump.wear_percent"]


def test_what_the_controller_has_moved_can_be_named() -> None:
    """A placeholder for the valve shows where the controller has put it, on either day."""
    proven = prove_text(HELD)
    openings = [day.settled.plant.valve.opening for day in (proven.days.yesterday, proven.days.today)]
    assert openings[1] > openings[0] + 0.01
    assert proven.days.yesterday.resolved.plant.valve.opening == 0.75
    days: tuple[DayName, ...] = ("yesterday", "today")
    assert [proven.days.quantity(day, "valve.opening") for day in days] == [
        ("opening", opening) for opening in openings
    ]


@pytest.mark.parametrize("on", ["valve", "drive"])
def test_a_blocked_filter_makes_the_load_heavier_though_the_pump_meets_the_same(on: str) -> None:
    """Judged with the output where it stood: the controller has made up for the filter."""
    held = (
        f'control = {{fitted = true, on = "{on}", set_m3h = 25}}\nfilter = {{fitted = true, fouling = 1.0}}'
    )
    text = changed(
        ("control = {fitted = true, set_m3h = 30}", held),
        ('cause = "worn"\nsize = 15', 'cause = "filter-fouled"\nsize = 8'),
        ('gauge-discharge = "falls"\n', ""),
        text=HELD,
    )  # fmt: skip
    proven = prove_text(text)
    assert proven.truth == (("filter-fouled",), ("discharge-side",), "heavier")


@pytest.mark.parametrize(("on", "truth"), [("valve", "discharge-side"), ("drive", "drive")])
def test_another_set_point_is_as_if_valve_or_drive_had_been_moved(on: str, truth: str) -> None:
    """A controller belongs to what it moves."""
    text = changed(
        (
            "control = {fitted = true, set_m3h = 30}",
            f'control = {{fitted = true, on = "{on}", set_m3h = 20}}',
        ),
        ('cause = "worn"\nsize = 15', f'cause = "{on}-set-point-moved"\nsize = 1.15'),
        ('blames = ["worn"]', 'blames = ["drive"]'),
        ('gauge-discharge = "falls"\nflow-meter = "same"', 'flow-meter = "rises"'),
        text=HELD,
    )
    found = prove_text(text).truth
    assert found.groups == (truth,)
    assert found.load == {"valve": "lighter", "drive": None}[on]


def test_the_output_is_an_instrument_of_plants_with_a_controller_only() -> None:
    """Elsewhere a case that reads it is refused."""
    error = refused(changed(('reads = ["flow-meter"]', 'reads = ["controller-output"]'), text=SOUND))
    assert (error.where, error.rule) == ("checks[0].reads", "choice")
