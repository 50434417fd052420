"""A case that does not hold is refused, with file, place and reason."""

from __future__ import annotations

import re

import pytest
from tests.cases.samples import (
    SOUND,
    changed,
    decide,
    overnight,
    play_text,
    predict,
    prove_text,
    refused,
    said,
)

from loadfirst.plant.near import nearest


def test_the_sound_case_holds() -> None:
    """The text from which the refused ones are made is itself accepted."""
    proven = prove_text(SOUND)
    assert proven.id == "made-up"
    assert proven.truth == (("valve-opened",), ("discharge-side",), "lighter")


@pytest.mark.parametrize(
    ("cause", "size", "where", "rule"),
    [
        ("valve-opened", 0, "today[0].size", "range"),  # nothing happens
        ("valve-opened", 1.5, "today[0].size", "range"),  # more than the travel that is left
        ("valve-opened", 0.0001, "today", "days"),  # no instrument shows it
        ("gauge-shut-off", 3, "today[0].size", "together"),  # it happens or does not
        ("filter-fouled", 3, "today[0].cause", "together"),  # there is no filter
        ("valve-openned", None, "today[0].cause", "choice"),
        ("worn", '"much"', "today[0].size", "type"),
    ],
)
def test_what_cannot_have_happened_is_refused(cause: str, size: object, where: str, rule: str) -> None:
    """Unknown, out of room, invisible, or not on this plant."""
    error = refused(overnight(cause, size))
    assert (error.where, error.rule) == (where, rule)


def test_it_is_said_why_a_cause_cannot_happen_and_what_room_there_is() -> None:
    """So that the author need not guess."""
    assert "there is no filter" in refused(overnight("filter-fouled")).hint
    assert "from 0 to 1" in refused(overnight("valve-opened", 1.5)).allowed


@pytest.mark.parametrize(
    ("key", "value", "where", "rule"),
    [
        ("valve.openning", 0.65, "yesterday.plant.valve.openning", "unknown"),
        ("valve.opening", 1.4, "yesterday.plant.valve.opening", "range"),
        ("pump.model", '"gigantic"', "yesterday.plant.pump.model", "lookup"),
        ("valve", '"open"', "yesterday.plant.valve", "unknown"),
        ("suction", "{bore_mm = 5, roughness_mm = 5}", "yesterday.plant.suction.roughness_mm", "together"),
    ],
)
def test_plants_that_cannot_be_are_refused(key: str, value: object, where: str, rule: str) -> None:
    """Edits of yesterday are those of a plant file."""
    error = refused(changed(("valve.opening = 0.65", f"{key} = {value}")))
    assert (error.where, error.rule) == (where, rule)


def test_a_proof_that_the_physics_does_not_bear_out_is_refused() -> None:
    """The author wrote that the flow falls; it is computed to rise."""
    error = refused(changed(('flow-meter = "rises"', 'flow-meter = "falls"')))
    assert (error.where, error.got, error.rule) == ("proof.flow-meter", "falls", "proof")
    assert "rises (from 27." in error.allowed


def test_every_wrong_line_of_a_proof_is_told_at_once() -> None:
    """In the units of files; the page gets which other lines are wrong."""
    error = refused(changed(('= "falls"\nflow-meter = "rises"', '= "same"\nflow-meter = "falls"')))
    assert error.where == "proof.gauge-discharge"
    assert re.search(r"falls \(from 4\.73 to [34]\.\d\d bar, scatter 0\.\d\d\)", error.allowed)
    assert re.match(r"Wrong as well: flow-meter rises \(from 27\.\d+ to \d+\.\d+ m³/h, scatter", error.hint)
    assert (error.facts["computed"], error.facts["also"]) == ("falls", ["flow-meter = rises"])


SHUT_IN = (("[proof]\n", '[proof]\n"shut-in:gauge-discharge" = "same"\n'),)


def test_what_a_test_reads_can_be_claimed_and_told_after_the_verdict() -> None:
    """Under the id of the check; the gauge of a sound pump stands at the shut valve as yesterday."""
    told = ("Yes: one step", "At {today.shut-in:gauge-discharge}: one step")
    happened = prove_text(changed(*SHUT_IN, told)).happened
    shut, open_ = happened.shift("shut-in:gauge-discharge"), happened.shift("gauge-discharge")
    assert shut.today and open_.today and shut.today.value > open_.today.value + 5e4  # type: ignore[operator]
    assert happened.quantity("today", "shut-in:gauge-discharge") == ("pressure", shut.today.value)
    end = play_text(changed(told), predict("machine"), decide("lighter"))
    assert said(end["verdict"]["reply"]) == "At <shut-in:gauge-discharge>: one step along the same curve."
    wrong = refused(changed(("[proof]\n", '[proof]\n"shut-in:gauge-discharge" = "falls"\n')))
    assert (wrong.where, wrong.rule) == ("proof.shut-in:gauge-discharge", "proof")


@pytest.mark.parametrize(
    ("old", "new", "where", "rule"),
    [
        ("Look at a second instrument.", "{today.shut-in:ammeter-1}", "hints[0].text", "too-early"),
        ("{today.gauge-discharge}", "{today.shut-in:gauge-discharge}", "story", "too-early"),
        ("Yes: one step", "{today.shut-in:gauge-suction}", "choices[1].reply", "lookup"),  # not read by it
        ("Yes: one step", "{today.flow:flow-meter}", "choices[1].reply", "lookup"),  # no test
        ("[proof]", '[proof]\n"stem:flow-meter" = "same"', "proof", "choice"),
        ('observes = "valve-stem"', 'observes = "controller-face"', "checks[1].observes", "together"),
        (
            'observes = "valve-stem"',
            'observes = "valve-stem"\nisolated = false',
            "checks[1].isolated",
            "together",
        ),
        ("minutes = 3", "minutes = 3\nisolated = false", "checks[0].isolated", "together"),
    ],
)
def test_a_check_is_claimed_and_offered_for_what_it_is(old: str, new: str, where: str, rule: str) -> None:
    """A test's reading only after the verdict, by its name; nothing that is not there."""
    error = refused(changed((old, new)))
    assert (error.where, error.rule) == (where, rule)


def test_a_look_at_what_is_not_there_is_told_what_is_missing() -> None:
    """Two that the plant of the sound case lacks."""
    for seen, reason in (("controller-face", "no controller"), ("relief-felt", "no relief valve")):
        error = refused(changed(('observes = "valve-stem"', f'observes = "{seen}"')))
        assert error.hint == f"Here there is {reason}, so it tells nothing."


def test_choices_without_the_truth_are_refused() -> None:
    """A learner must be able to be right."""
    error = refused(changed(('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["drive"]')))
    assert (error.where, error.rule, error.facts["groups"]) == ("choices", "truth", ["discharge-side"])
    assert "valve-opened, load lighter" in error.allowed


def test_two_right_choices_are_refused_with_a_way_out() -> None:
    """Both blame the discharge side and neither gives a direction."""
    error = refused(changed(('load = "lighter"\n', ""), ('load = "heavier"\n', "")))
    assert (error.where, error.rule) == ("choices", "truth")
    assert "lighter or heavier" in error.hint


TWO_MORE = '[[today]]\ncause = "worn"\n[[today]]\ncause = "burst"\n[prediction]'
MORE = '"Load."]\nleaves_out = '
WITHIN = "checks[2].does.valve.opening"
SAME_REPLY = '"YES: one step  along the same curve."'


@pytest.mark.parametrize(
    ("old", "new", "where", "rule"),
    [
        ('reply = "Then the pressure would have risen."\n', "", "choices[2].reply", "missing"),
        ('"Then the pressure would have risen."', SAME_REPLY, "choices[2].reply", "together"),
        ('"Then the pressure would have risen."', '""', "choices[2].reply", "range"),
        ('id = "heavier"', 'id = "lighter"', "choices[2].id", "together"),
        ('id = "stem"', 'id = "flow"', "checks[1].id", "together"),
        ('id = "stem"', 'id = "The Stem"', "checks[1].id", "range"),
        ('plant = "rinse-transfer"', 'plant = {}', "plant.format", "missing"),
        ('plant = "rinse-transfer"', 'plant = [1]', "plant", "type"),
        ('blames = ["worn"]', 'blames = ["worn"]\nload = "heavier"', "choices[0].load", "together"),
        ('blames = ["worn"]', 'blames = ["pump"]', "choices[0].blames", "choice"),
        ('blames = ["worn"]', 'blames = []', "choices[0].blames", "points"),
        ('teller = "machine"', 'teller = "worn"', "teller", "choice"),
        ('teller = "machine"\n', '', "teller", "missing"),
        ('when_seen.flow-meter', 'when_seen.ammeter-1', "choices[0].when_seen", "choice"),
        ('when_unseen.flow-meter', 'when_unseen.gauge-discharge', "choices[0].when_unseen", "choice"),
        ('shows = "It stands at {today.valve.opening}."\n', "", "checks[1].shows", "missing"),
        ('shows_nothing = "Under the paint it looks as ever."\n', "", "checks[1].shows_nothing", "missing"),
        ('reads = ["flow-meter"]', 'reads = ["flow-meter"]\nshows = "x"', "checks[0].shows", "together"),
        ('reads = ["flow-meter"]', 'reads = []', "checks[0].observes", "missing"),
        ('reads = ["gauge-discharge", "ammeter-1"]', '', "checks[2].reads", "missing"),
        ('observes = "valve-stem"', 'observes = "valve-steam"', "checks[1].observes", "choice"),
        ('money = 2', 'does = {valve.opening = 0}', "checks[1].does", "together"),
        ('does = {valve.opening = 0}', 'does = {valve.bore_mm = 50}', "checks[2].does", "choice"),
        ('does = {valve.opening = 0}', 'does = {valve.opening = 2}', WITHIN, "range"),
        ('money = 2', 'money = -2', "checks[1].money", "range"),
        ('minutes = 3', 'minutes = -3', "checks[0].minutes", "range"),
        ('minutes = 3', 'minuets = 3', "checks[0].minuets", "unknown"),
        ('reads = ["flow-meter"]', 'reads = ["ammeter-2"]', "checks[0].reads", "choice"),
        ('reads = ["flow-meter"]', 'reads = ["nose"]', "checks[0].reads[0]", "choice"),
        ('reading = "flow-meter"', 'reading = "gauge-discharge"', "prediction.reading", "together"),
        ('reading = "flow-meter"', 'reading = "ammeter-1"', "prediction.reading", "together"),
        ('reading = "flow-meter"', 'reading = "tachometer-2"', "prediction.reading", "choice"),
        ('flow-meter = "rises"', 'nose = "rises"', "proof", "choice"),
        ('flow-meter = "rises"', 'flow-meter = "turns"', "proof.flow-meter", "choice"),
        ('when_seen.flow-meter = "', 'when_seen.stem = 5 # "', "choices[0].when_seen.stem", "type"),
        ('level = "operator"', 'level = "wizard"', "level", "choice"),
        ('format = 1', 'format = 2', "format", "version"),
        ('format = 1', 'format = 1.0', "format", "version"),
        ('format = 1', 'format = false', "format", "version"),
        ('format = 1', 'format = 0.0', "format", "version"),
        ('plant = "rinse-transfer"', 'plant = "moon-base"', "plant", "lookup"),
        ('plant = "rinse-transfer"', 'plant = 5', "plant", "type"),
        ('teaches = ["Pressure follows the load."]', 'teaches = []', "teaches", "points"),
        ('[prediction]', TWO_MORE, "today", "points"),
        ('blames = ["worn"]', 'blames = ["worn", "nothing"]', "choices[0].blames", "together"),
        ('blames = ["worn"]', 'blames = ["worn", "worn"]', "choices[0].blames", "together"),
        ('id = "stem"', 'id = "flow-meter"', "checks[1].id", "together"),  # `when_seen` could mean either
        ('title = "A made-up morning"', 'title = "At {today.gauge-discharge}"', "title", "range"),
        ('"Pressure follows the load."', '"So it is.", "From {word.who}."', "teaches[1]", "range"),
        ('"Pressure follows the load."]', MORE + '["}"]', "leaves_out[0]", "range"),
        ('title = "A made-up morning"', 'title = "Down to 3 bar"', "title", "typed-number"),
        ('"Pressure follows the load."]', MORE + '["60 rpm"]', "leaves_out[0]", "typed-number"),
        ('title = "A made-up morning"', 'title = ""', "title", "range"),
        ('title = "A made-up morning"', f'title = "{"x" * 81}"', "title", "range"),
        ('title = "A made-up morning"', 'tittle = "x"', "tittle", "unknown"),
    ],
)  # fmt: skip
def test_a_slip_of_the_author_is_answered_where_it_stands(old: str, new: str, where: str, rule: str) -> None:
    """Each names its place and the rule it broke."""
    error = refused(changed((old, new)))
    assert (error.where, error.rule) == (where, rule)


def test_a_misspelt_key_is_answered_with_the_nearest_known_one() -> None:
    """The commonest slip comes with its remedy, in one sentence that starts with the file."""
    error = refused(changed(("minutes = 3", "minuets = 3")))
    assert error.facts["nearest"] == "checks[0].minutes"
    assert str(error).startswith("made-up.toml: checks[0].minuets")


@pytest.mark.parametrize(
    ("old", "new", "where", "rule"),
    [
        ("{today.gauge-discharge}", "{today.gauge-dishcarge}", "story", "lookup"),
        ("{today.gauge-discharge}", "{tomorrow.gauge-discharge}", "story", "syntax"),
        ("{today.gauge-discharge}", "{today.gauge-discharge", "story", "syntax"),
        ("{today.gauge-discharge}", "today.gauge-discharge}", "story", "syntax"),
        ("{today.gauge-discharge}", "{today.pump.model}", "story", "lookup"),
        ("{today.gauge-discharge}", "3.4 bar", "story", "typed-number"),
        ("{today.gauge-discharge}", "{today.valve.opening}", "story", "too-early"),
        ("Read the flow meter.", "Read {today.flow-meter}.", "checks[0].says", "too-early"),
        ("It stands at {today.valve.opening}.", "{today.flow-meter}", "checks[1].shows", "too-early"),
        ("Under the paint", "At {today.valve.opening}", "checks[1].shows_nothing", "too-early"),
        ("The gaps are wide.", "{today.valve.opening}", "checks[3].shows", "too-early"),  # a false alarm
        ("The load is lighter.", "{today.ammeter-1}", "choices[1].says", "too-early"),
        ("Where does the flow meter stand?", "From {yesterday.ammeter-1}?", "prediction.asks", "too-early"),
        ("Look at a second instrument.", "It is {today.flow-meter}.", "hints[0].text", "too-early"),
        ("Yes: one step", "Yes, {today.nose}: one step", "choices[1].reply", "lookup"),
    ],
)
def test_prose_that_tells_nothing_or_too_much_is_refused(old: str, new: str, where: str, rule: str) -> None:
    """Unknown placeholders, typed numbers, and what the learner cannot know yet."""
    error = refused(changed((old, new)))
    assert (error.where, error.rule) == (where, rule)


def test_a_verdict_that_only_has_the_load_the_wrong_way_is_named() -> None:
    """Not all of them, from which an author would have to guess."""
    error = refused(changed(('load = "lighter"', 'load = "heavier"')))
    assert (error.where, error.rule, error.facts["nearly"]) == ("choices", "truth", "lighter")
    assert error.hint == "`lighter` blames rightly, but says load heavier."
    assert "nearly" not in refused(overnight("gauge-shut-off")).facts


SEEN = "Seen by then (in check stem): gauge-discharge."


@pytest.mark.parametrize(
    ("old", "new", "hint"),
    [
        ("It stands at {today.valve.opening}.", "{today.flow-meter}", SEEN),
        ("Look at a second instrument.", "{today.flow-meter}", "Seen by then: gauge-discharge"),
        (
            "Under the paint",
            "At {today.valve.opening}",
            "(in check stem) too early: `shows` of a check that shows what happened (shift-log, ",
        ),
    ],
)
def test_what_tells_too_early_is_told_what_was_seen_by_then_and_who_may_tell_it(
    old: str, new: str, hint: str
) -> None:
    """With the id of the check, which an author knows better than its number."""
    assert hint in refused(changed((old, new))).hint


def test_a_placeholder_that_is_nearly_one_is_answered_with_it() -> None:
    """A reading or a key of the plant."""
    for wrong, right in (("discharge-gauge", "gauge-discharge"), ("valve.openin", "valve.opening")):
        error = refused(changed(("Yes: one step", f"Yes, {{yesterday.{wrong}}}: one step")))
        assert error.hint == f"Did you mean {{yesterday.{right}}}?"
        assert error.facts["nearest"] == f"{{yesterday.{right}}}"


def test_the_verdict_with_the_same_reply_is_named() -> None:
    """The other of the two."""
    error = refused(changed(('"Then the pressure would have risen."', SAME_REPLY)))
    assert (error.facts["same"], error.where) == ("lighter", "choices[2].reply")
    assert "lighter has the same one" in error.allowed


def test_a_share_where_per_cent_are_meant_is_asked_about() -> None:
    """The days hardly differ, which alone would not lead an author to the size."""
    stem = '"It stands at {today.valve.opening}."', '"As ever."'
    error = refused(overnight("worn", 0.16).replace(*stem))
    assert error.rule in ("days", "proof")
    assert (error.facts["percent"], error.facts["meant"]) == ("0.16", "16")
    assert "The size of today[0] is in %, now 0.16 %: was 16 meant?" in error.hint
    assert "percent" not in refused(overnight("worn", 10).replace(*stem)).facts


def test_names_beyond_counting_are_not_all_told() -> None:
    """Of the observations only the nearest, or where a list of them is."""
    error = refused(changed(('observes = "valve-stem"', 'observes = "valve-steam"')))
    assert error.text.endswith("but must be one of 59 that there are. Did you mean valve-stem?")
    assert "guide" in refused(changed(('observes = "valve-stem"', 'observes = "nose"'))).hint


def test_a_reading_off_its_scale_is_no_number_for_prose() -> None:
    """A pointer on its stop has no value to be told."""
    dial = "valve.opening = 0.65\ngauges.discharge.range_bar = [0.0, 2.0]"
    short = changed(("valve.opening = 0.65", dial))
    error = refused(short)
    assert (error.where, error.rule) == ("story", "lookup")
    assert error.facts["off"] == "high"
    assert error.hint == "On that day (today) it would stand above its scale, which goes from 0 to 2 bar."


def test_a_misspelt_name_is_answered_with_the_nearest() -> None:
    """Of a cause that happened, one that is blamed, an observation."""
    for old, new, meant in (
        ('cause = "valve-opened"', 'cause = "valve-openned"', "valve-opened"),
        ('blames = ["worn"]', 'blames = ["wornn"]', "worn"),
        ('observes = "valve-stem"', 'observes = "valve-steem"', "valve-stem"),
    ):
        assert refused(changed((old, new))).hint == f"Did you mean {meant}?"


@pytest.mark.parametrize(
    ("old", "new", "where", "hint"),
    [
        (
            "[yesterday.plant]",
            "[words]\nseed = 4\n[yesterday.plant]",
            "words.seed",
            "seed is a key of the file",
        ),
        (
            'reading = "flow-meter"',
            'reading = "flow-meter"\nseed = 4',
            "prediction.seed",
            "it belongs above the first",
        ),
        ("[[today]]", "[today]", "today", "Write [[today]] above each of them."),
        (
            'teaches = ["Pressure follows the load."]',
            'teaches = "Load."',
            "teaches",
            'Put it in square brackets: ["…"].',
        ),
        (
            "minutes = 3",
            "hours = 3",
            "checks[0].hours",
            "isolated, shows, shows_nothing. Still missing: minutes.",
        ),
        (
            'reading = "flow-meter"',
            'reading = "meter-flow"',
            "prediction.reading",
            "Did you mean flow-meter?",
        ),
        (
            '[[checks]]\nid = "shut-in"',
            '[[check]]\nid = "shut-in"',
            "check",
            "Did you mean checks?",  # although there are some
        ),
    ],
)
def test_a_key_or_a_list_that_stands_wrongly_is_answered_with_the_way_out(
    old: str, new: str, where: str, hint: str
) -> None:
    """Below a table that it does not belong to, in single brackets, without any; or what is still missing."""
    error = refused(changed((old, new)))
    assert error.where == where
    assert hint in error.hint


def test_a_key_of_the_file_that_stands_in_a_table_of_free_names_is_found() -> None:
    """What is edited at the plant may bear any name, so that the key is only missed where it belongs."""
    teller = 'teller = "machine"\n'
    error = refused(changed((teller, ""), ("valve.opening = 0.65", f"valve.opening = 0.65\n{teller}")))
    assert (error.where, error.rule, error.facts["below"]) == ("teller", "missing", "yesterday.plant")
    assert error.hint == "It stands below [yesterday.plant], but belongs above the first [table]."


@pytest.mark.parametrize(
    ("name", "known", "near"),
    [
        ("minuets", ["minutes", "money"], "minutes"),
        ("suction-gauge", ["gauge-suction", "gauge-discharge"], "gauge-suction"),
        ("filter-dirty", ["filter-fouled", "fitted"], "filter-fouled"),
        ("hours", ["shows", "says"], ""),
        ("pump", ["drive", "liquid", "machine"], ""),
    ],
)
def test_only_near_names_are_guessed(name: str, known: list[str], near: str) -> None:
    """A far-fetched guess sends an author the wrong way."""
    assert nearest(name, known) == near


HOSTILE = ["", "format = 1", "= 5", "format = 1\n" + "[a" * 5000, '"' * 999, "\x00", "x" * 300_000]


@pytest.mark.parametrize("text", HOSTILE)
def test_a_hostile_file_is_answered_like_any_other(text: str) -> None:
    """Nothing but a FileError comes out, whatever goes in."""
    refused(text)


def test_a_whole_plant_may_stand_in_the_case() -> None:
    """A case can bring its own plant in a table."""
    table = 'plant = {format = 1, title = "Own", pump = {model = "medium"}, valve = {kv_open_m3h = 63}}'
    assert prove_text(changed(('plant = "rinse-transfer"', table))).days.today.state.converged
