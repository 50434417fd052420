"""Instruments over two days: what stays, what changes, and what a puzzle about one needs."""

from __future__ import annotations

import pytest
from tests.cases.samples import SOUND, changed, check, decide, play, predict, prove_text, see

from loadfirst.cases.read import decode_case
from loadfirst.days.two_days import Days, both_days
from loadfirst.instruments.faults.own_error import REPEATABLE
from loadfirst.instruments.instrument import Reading

NOTHING = changed(
    ("valve.opening = 0.85", ""),
    ("today.plant]\n", "today]\nunchanged = true\n"),
    ('blames = "discharge-side"\nload = "lighter"', 'blames = "nothing"'),
    ('gauge-discharge = "falls"', 'gauge-discharge = "same"'),
    ('flow-meter = "rises"', 'flow-meter = "same"'),
)
"""Nothing has changed between the days but the look at the instruments."""

OVERNIGHT = SOUND.replace("[today.plant]\n", '[today.plant]\ngauges.discharge.fault.root_valve = "shut"\n')
"""Somebody has shut the root valve, and the control valve is wider open."""


def days(text: str, **yesterday: object) -> Days:
    """Both days of a case, with more keys of yesterday's plant (and so of today's)."""
    lines = "".join(f"{key.replace('__', '.')} = {value}\n" for key, value in yesterday.items())
    text = text.replace("[yesterday.plant]\n", f"[yesterday.plant]\n{lines}")
    return both_days(decode_case(text, "made-up.toml"))


def error(drawn: Reading, exact: Reading) -> float:
    """Of a reading, in times its greatest error."""
    assert drawn.value is not None and exact.value is not None and exact.accuracy
    return (drawn.value - exact.value) / exact.accuracy


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_the_same_instrument_has_the_same_lasting_error_on_both_days(seed: int) -> None:
    """The readings differ by what does not repeat, and by no more."""
    exact, drawn = days(NOTHING), days(NOTHING, meters__seed=seed)
    for id in ("gauge-discharge", "gauge-suction", "flow-meter", "ammeter-1", "level-supply"):
        errors = [error(*pair) for pair in zip(drawn.reading(id), exact.reading(id), strict=True)]
        assert all(abs(one) <= 1 for one in errors)
        assert 0 < abs(errors[0] - errors[1]) <= 2 * REPEATABLE, id
        assert abs(sum(errors)) > 0


def test_a_gauge_that_was_replaced_has_another_error() -> None:
    """In some of five draws by more than what does not repeat; its number is all that differs."""
    text = changed(
        ("unchanged = true\n", "plant.gauges.discharge.serial = 1\n"),
        text=NOTHING,
    )
    exact, apart = days(text), []
    for seed in range(1, 6):
        drawn = days(text, meters__seed=seed)
        both = zip(drawn.reading("gauge-discharge"), exact.reading("gauge-discharge"), strict=True)
        before, after = (error(*pair) for pair in both)
        apart.append(abs(before - after))
    assert max(apart) > 2 * REPEATABLE
    assert list(drawn.differences) == ["gauges.discharge.serial"]


def test_a_gauge_that_was_shut_off_overnight_still_shows_yesterdays_pressure() -> None:
    """Nobody has to write down what that was."""
    shown = days(OVERNIGHT)
    frozen, other = shown.reading("gauge-discharge"), shown.reading("gauge-after-valve")
    assert frozen[0].value == frozen[1].value
    assert other[0].value != other[1].value


def test_a_puzzle_may_have_a_gauge_that_has_long_been_shut_off() -> None:
    """It stands still while the load grows lighter; another instrument tells; the verdict is the load's."""
    text = changed(
        (
            "[yesterday.plant]\n",
            '[yesterday.plant]\ngauges.discharge.fault = {root_valve = "shut", frozen_bar = 4}\n',
        ),
        ('gauge-discharge = "falls"', 'gauge-discharge = "same"'),
    )
    assert prove_text(text).truth == "discharge-side"
    moves = [predict("machine"), check("flow"), see("gauge-discharge", "same"), see("flow-meter", "up")]
    case = {"name": "made-up.toml", "text": text}
    seen = play(case, predict("machine"), check("flow"))
    gauge = next(reading for reading in seen["readings"] if reading["id"] == "gauge-discharge")
    assert gauge["moved"] == "same" and gauge["today"]["value"] == 4e5
    assert "fault" not in str(seen)  # what is wrong is not told before the verdict
    assert play(case, *moves, decide("lighter"))["verdict"]["right"]


def test_the_sample_holds_without_a_seed_and_with_one() -> None:
    """Errors within the class change no direction of a case that is clear enough."""
    assert prove_text(SOUND).truth == "discharge-side"
    assert days(SOUND, meters__seed=5).reading("flow-meter")[0] != days(SOUND).reading("flow-meter")[0]
