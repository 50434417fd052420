"""What nobody does for a reading: refused from the true state, free of charge, and told why."""

from __future__ import annotations

from typing import Any, get_args, get_type_hints

import pytest
from tests.cases.samples import SOUND, changed, check, decide, play_text, predict, prove_text, refused

from loadfirst.cases.case import Check
from loadfirst.cases.proof_checks import BY_HAND
from loadfirst.cases.safety import HARMFUL, PRESSURE, SHUT_IN, harmful, refusal
from loadfirst.days.two_days import OneDay, two_days
from loadfirst.plant.answer import Note
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.keys import keys_of
from loadfirst.plant.plant import Plant

TEST = Check(id="test", says="A test.", minutes=1, reads=("gauge-discharge",))
RELIEF = {"relief.fitted": True, "relief.set_bar": 2.0}


def during(model: str, **does: Any) -> OneDay:
    """A plant with one pump, while a test is on."""
    plant = {"format": 1, "title": "A test stand", "pump": {"model": model}, "valve": {"kv_open_m3h": 63}}
    edits = {key.replace("__", "."): value for key, value in does.items()}
    return two_days(plant, apply_edits(plant, edits)).today


@pytest.mark.parametrize(
    ("model", "why"),
    [
        ("medium", None), ("small", None), ("drooping", None),
        ("mixed", "shut-propeller"), ("axial", "shut-propeller"),
        ("gear", "shut-displacement"), ("lobe", "shut-displacement"), ("screw", "shut-displacement"),
    ],
)  # fmt: skip
def test_only_a_radial_pump_is_shut_in_for_a_test(model: str, why: str | None) -> None:
    """A propeller is overloaded by a shut valve, and what displaces bursts something."""
    assert refusal(TEST, during(model, valve__opening=0)) == why


@pytest.mark.parametrize("model", ["medium", "mixed", "gear"])
def test_any_pump_may_be_stopped_or_throttled_a_little_for_a_test(model: str) -> None:
    """No flow through a pump that stands is no harm; nor is another opening."""
    assert refusal(TEST, during(model, pump__running=False)) is None
    assert refusal(TEST, during(model, valve__opening=0.5)) is None


def test_a_relief_valve_is_no_way_for_a_test() -> None:
    """It is there for the day on which somebody makes the mistake."""
    relief = {key.replace(".", "__"): value for key, value in RELIEF.items()}
    assert refusal(TEST, during("gear", **relief)) is None
    day = during("gear", **relief, valve__opening=0)
    assert day.state.duty.flow > 0
    assert refusal(TEST, day) == "shut-displacement"


def test_a_pump_that_liquid_turns_backward_is_not_started() -> None:
    """Not even for a test; one that stands still is."""
    pair = {"format": 1, "title": "A pair", "pump": {"model": "small", "arrangement": "side-by-side"}}
    pair |= {"pump": {**pair["pump"], "second": {"running": False}}, "valve": {"kv_open_m3h": 63}}
    started = apply_edits(pair, {"pump.second.running": True})
    for leak, why in ((0.0, None), (20.0, "starts-backward")):
        days = [two_days(one, apply_edits(one, {"check.leak_kv_m3h": leak})) for one in (pair, started)]
        assert refusal(TEST, days[1].today, days[0].today) == why


def test_what_would_be_opened_under_pressure_is_refused() -> None:
    """With line or pump isolated it is done, with the usual care."""
    for seen in ("strainer-basket", "gaps-measured", "impeller-seen", "piece-of-pipe"):
        opened = Check(id="x", says="Open it.", minutes=9, observes=seen, isolated=False)
        assert refusal(opened, None) == "opens-under-pressure"
        assert refusal(Check(id="x", says="Open it.", minutes=9, observes=seen), None) is None
    assert (
        refusal(Check(id="x", says="Look.", minutes=9, observes="valve-stem", isolated=False), None) is None
    )


OWN = '{format = 1, title = "Own", pump = {model = "gear"}, valve = {kv_open_m3h = 9}}'
SHUT_GEAR = changed(
    ('plant = "rinse-transfer"', f"plant = {OWN}"),
    ('[[today]]\ncause = "valve-opened"\nsize = 0.6', '[[today]]\ncause = "valve-throttled"\nsize = 0.3'),
    ('load = "lighter"', 'load = "same"'), ('load = "heavier"', 'load = "lighter"'),
    ('load = "same"', 'load = "heavier"'),
    ("gauge has gone to", "gauge stands at"),
    ('gauge-discharge = "falls"\nflow-meter = "rises"', 'gauge-discharge = "rises"'),
)  # fmt: skip


def test_a_refused_check_costs_nothing_tells_nothing_and_is_remembered() -> None:
    """The reason stands where the result would, and the path names it."""
    seen = play_text(SHUT_GEAR, predict("machine"), check("shut-in"))
    offered = seen["checks"][2]
    assert (offered["refused"], offered["taken"], offered["tested"]) == ("shut-displacement", False, [])
    assert (seen["minutes"], seen["money"]) == (0, 0)
    end = play_text(SHUT_GEAR, predict("machine"), check("shut-in"), decide("lighter"))
    path = end["reveal"]["path"]
    assert (path["refused"], path["steps"], path["minutes"]) == (["shut-in"], [], 0)


def test_what_a_refused_test_would_read_is_neither_claimed_nor_told() -> None:
    """Nobody has read it."""
    for old, new, where in (
        ("[proof]", '[proof]\n"shut-in:gauge-discharge" = "rises"', "proof.shut-in:gauge-discharge"),
        ("Yes: one step", "{today.shut-in:gauge-discharge}: a step", "choices[1].reply"),
    ):
        error = refused(changed((old, new), text=SHUT_GEAR))
        assert (error.where, error.rule) == (where, "together")
        assert "shut-in is refused: shut-displacement" in error.hint


def test_no_refusal_is_told_before_somebody_wants_the_check() -> None:
    """It would tell what kind of plant it is to those who have not thought of it."""
    assert [one["refused"] for one in play_text(SHUT_GEAR, predict("machine"))["checks"]] == [None] * 4


def test_a_test_shows_both_days_while_it_is_on_and_leaves_the_plant_as_it_was() -> None:
    """A sound pump gives the head of yesterday; the readings of the day are not those of the test."""
    seen = play_text(SOUND, predict("machine"), check("shut-in"))
    gauge, ammeter = seen["checks"][2]["tested"]
    assert (gauge["id"], gauge["moved"]) == ("gauge-discharge", "same")
    assert (ammeter["id"], ammeter["moved"]) == ("ammeter-1", "same")
    of_the_day = next(one for one in seen["readings"] if one["id"] == "gauge-discharge")
    assert gauge["today"]["value"] > of_the_day["today"]["value"] + 5e4
    assert "ammeter-1" not in [one["id"] for one in seen["readings"]]
    worn = SOUND.replace('cause = "valve-opened"\nsize = 0.6', 'cause = "worn"\nsize = 20')
    worn = changed(
        ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["drive"]'),
        ("It stands at {today.valve.opening}.", "It was touched."),
        ('flow-meter = "rises"', 'flow-meter = "falls"'), text=worn,
    )  # fmt: skip
    gauge, _ = play_text(worn, predict("machine"), check("shut-in"))["checks"][2]["tested"]
    assert gauge["moved"] == "down"


def test_every_test_has_a_scatter_of_its_own() -> None:
    """The same instrument, read once more: what does not repeat is drawn anew."""
    twice = changed(
        ('[[checks]]\nid = "open-it"', '[[checks]]\nid = "again"\nsays = "Once more."\nminutes = 10\n'
         'does = {valve.opening = 0}\nreads = ["gauge-discharge"]\n\n[[checks]]\nid = "open-it"'),
    )  # fmt: skip
    what = prove_text(twice).happened
    first, again = (what.shift_in(what.case.checks[number], "gauge-discharge").today for number in (2, 3))
    assert first and again and first.value != again.value
    assert first.value == pytest.approx(again.value, rel=0.02)


def test_what_does_harm_is_known_by_its_notes() -> None:
    """Every kind that is named is one that a state can carry; a sound plant carries none."""
    kinds = set(get_args(get_type_hints(Note)["kind"]))
    assert kinds >= HARMFUL >= PRESSURE and kinds >= SHUT_IN
    assert not harmful(during("medium"))
    assert harmful(during("medium", valve__opening=0))
    assert harmful(during("medium", suction__strainer_k=5000))


def test_what_a_hand_moves_are_keys_of_a_plant() -> None:
    """No misspelt one among them."""
    assert set(keys_of(Plant)) >= BY_HAND
