"""Instruments over two days: what stays, what changes, and what a puzzle about one needs."""

from __future__ import annotations

import pytest
from tests.cases.samples import SOUND, changed, check, decide, overnight, play_text, predict, prove_text, see

from loadfirst.cases.draw import drawn
from loadfirst.cases.happened import happened
from loadfirst.cases.read import decode_case
from loadfirst.days.two_days import Days, two_days
from loadfirst.instruments.faults.own_error import REPEATABLE
from loadfirst.instruments.instrument import Reading
from loadfirst.plant.edits import apply_edits

NOTHING = changed(
    ('cause = "valve-opened"\nsize = 0.6', 'cause = "nothing"'),
    ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["nothing"]'),
    ('shows = "It stands at {today.valve.opening}."', 'shows = "Touched, it seems."'),
    ('gauge-discharge = "falls"', 'gauge-discharge = "same"'),
    ('flow-meter = "rises"', 'flow-meter = "same"'),
)
"""Nothing has changed between the days but the look at the instruments."""

SHUT_OFF = overnight("gauge-shut-off", text=SOUND).replace(
    "[prediction]", '[[today]]\ncause = "valve-opened"\nsize = 0.6\n\n[prediction]'
)
"""Somebody has shut the root valve, and the control valve is wider open."""


def days(text: str, seed: int = 1, serial: int = 0) -> tuple[Days, Days]:
    """Both days of a case as a seed draws them, and the same without errors of the instruments."""
    found = happened(drawn(decode_case(text, "made-up.toml"), seed)).days
    today = apply_edits(found.today.data, {"gauges.discharge.serial": serial})
    exact = [apply_edits(plant, {"meters.seed": 0}) for plant in (found.yesterday.data, today)]
    return two_days(found.yesterday.data, today), two_days(exact[0], exact[1])


def error(drawn: Reading, exact: Reading) -> float:
    """Of a reading, in times its greatest error."""
    assert drawn.value is not None and exact.value is not None and exact.accuracy
    return (drawn.value - exact.value) / exact.accuracy


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_the_same_instrument_has_the_same_lasting_error_on_both_days(seed: int) -> None:
    """The readings differ by what does not repeat, and by no more."""
    drawn_days, exact = days(NOTHING, seed)
    for id in ("gauge-discharge", "gauge-suction", "flow-meter", "ammeter-1", "level-supply"):
        errors = [error(*pair) for pair in zip(drawn_days.reading(id), exact.reading(id), strict=True)]
        assert all(abs(one) <= 1 for one in errors)
        assert 0 < abs(errors[0] - errors[1]) <= 2 * REPEATABLE, id
        assert abs(sum(errors)) > 0


def test_another_seed_draws_other_errors() -> None:
    """Every play of another seed has another set of instruments."""
    assert len({days(NOTHING, seed)[0].reading("flow-meter")[0].value for seed in range(1, 11)}) == 10


def test_a_gauge_that_was_replaced_has_another_error() -> None:
    """In some of five draws by more than what does not repeat; its number is all that differs."""
    apart = []
    for seed in range(1, 6):
        drawn_days, exact = days(NOTHING, seed, serial=1)
        both = zip(drawn_days.reading("gauge-discharge"), exact.reading("gauge-discharge"), strict=True)
        before, after = (error(*pair) for pair in both)
        apart.append(abs(before - after))
    assert max(apart) > 2 * REPEATABLE
    assert list(drawn_days.differences) == ["gauges.discharge.serial"]


def test_a_gauge_that_was_shut_off_overnight_still_shows_yesterdays_pressure() -> None:
    """Nobody has to write down what that was."""
    shown, _ = days(SHUT_OFF)
    frozen, other = shown.reading("gauge-discharge"), shown.reading("gauge-after-valve")
    assert frozen[1].value == pytest.approx(
        frozen[0].value, rel=1e-14
    )  # not every Python sums to the last digit
    assert other[0].value != other[1].value


def test_a_gauge_that_is_shut_off_keeps_its_reading_in_a_test_too() -> None:
    """Yesterday it would have followed the shut valve; today it stands where it stood before the test."""
    what = happened(drawn(decode_case(SHUT_OFF, "made-up.toml"), 1))
    sound, dead = what.shift_in(what.case.checks[2], "gauge-discharge"), what.shift("gauge-discharge")
    assert sound.yesterday and sound.today and dead.yesterday and dead.today
    assert sound.yesterday.value is not None and dead.yesterday.value is not None
    assert sound.yesterday.value > dead.yesterday.value + 2e4
    assert sound.today.value == dead.today.value == pytest.approx(dead.yesterday.value, rel=1e-14)


def test_a_puzzle_may_have_a_gauge_that_has_long_been_shut_off() -> None:
    """It stands still while the load grows lighter; another instrument tells; the verdict is the load's."""
    text = changed(
        (
            "[yesterday.plant]\n",
            '[yesterday.plant]\ngauges.discharge.fault = {root_valve = "shut", frozen_bar = 4}\n',
        ),
        ('gauge-discharge = "falls"', 'gauge-discharge = "same"'),
    )
    assert prove_text(text).truth.groups == ("discharge-side",)
    seen = play_text(text, predict("machine"), check("flow"))
    gauge = next(reading for reading in seen["readings"] if reading["id"] == "gauge-discharge")
    assert gauge["moved"] == "same" and gauge["today"]["value"] == 4e5
    assert "fault" not in str(seen)  # what is wrong is not told before the verdict
    moves = [predict("machine"), check("flow"), see("gauge-discharge", "same"), see("flow-meter", "up")]
    assert play_text(text, *moves, decide("lighter"))["verdict"]["rightness"] == "right"


def test_whatever_sound_instruments_err_nothing_moves_where_nothing_happened() -> None:
    """A hundred plays by other seeds: all the claims of the case hold in each of them."""
    for seed in range(1, 101):
        shifts = prove_text(NOTHING, seed).happened.shift
        assert {shifts(id).moved for id in ("level-supply", "ammeter-1", "gauge-suction")} == {"same"}
