"""A case that does not hold is refused, with file, place and reason."""

from __future__ import annotations

import pytest
from tests.cases.samples import SOUND, changed, prove_text

from loadfirst.cases.proof import Proven
from loadfirst.errors import FileError


def refused(text: str) -> FileError:
    """The error that a case text gets."""
    with pytest.raises(FileError) as error:
        prove_text(text)
    assert error.value.file == "made-up.toml"
    return error.value


def with_today(edits: str, *more: tuple[str, str]) -> str:
    """The sound case with other edits for today."""
    return changed(("[today.plant]\nvalve.opening = 0.85", f"[today.plant]\n{edits}"), *more)


def blaming(group: str, edits: str, proof: str) -> Proven:
    """A case whose right verdict blames `group`, with today's edits and a proof of its own."""
    own = "nothing" if group in ("machine", "discharge-side") else group  # other choices blame these
    return prove_text(
        with_today(
            edits,
            ('blames = "discharge-side"\nload = "lighter"', f'blames = "{own}"'),
            ('gauge-discharge = "falls"\nflow-meter = "rises"', proof),
        )
    )


def test_the_sound_case_holds() -> None:
    """The text from which the refused ones are made is itself accepted."""
    proven = prove_text(SOUND)
    assert (proven.id, proven.truth, proven.load) == ("made-up", "discharge-side", "lighter")


@pytest.mark.parametrize(
    ("group", "edits", "proof"),
    [
        ("suction-side", "suction.strainer_k = 200", 'flow-meter = "falls"'),
        ("drive", "drive.frequency_hz = 44", 'flow-meter = "falls"'),
        ("machine", 'pump.model = "small"', 'gauge-discharge = "falls"'),
        ("instrument", "gauges.discharge.height_m = 4.0", 'gauge-discharge = "falls"'),
        ("liquid", 'liquid = {name = "brine", density_kgm3 = 1180, viscosity_mpas = 1.9, vapour_bar = 0.02}',
         'gauge-discharge = "rises"'),
        ("discharge-side", "delivery.gas_bar = 1.5", 'flow-meter = "falls"'),
    ],
)  # fmt: skip
def test_the_truth_follows_from_what_differs(group: str, edits: str, proof: str) -> None:
    """Six groups of plant keys give the six groups of causes; no key names the answer."""
    assert blaming(group, edits, proof).truth == group


def test_a_strainer_that_blocks_makes_the_load_heavier() -> None:
    """The suction side belongs to the load: at yesterday's flow it asks for more head."""
    assert blaming("suction-side", "suction.strainer_k = 200", 'flow-meter = "falls"').load == "heavier"


def test_a_slower_drive_leaves_the_load_as_it_was() -> None:
    """What happens inside the machine is no change of the load."""
    assert blaming("drive", "drive.frequency_hz = 44", 'flow-meter = "falls"').load is None


def test_that_nothing_has_changed_must_be_said() -> None:
    """Equal days are refused as a slip, unless the author says that this is the point."""
    empty = changed(("[today.plant]\nvalve.opening = 0.85", ""))
    error = refused(empty)
    assert (error.where, error.rule) == ("today", "days")
    assert "unchanged = true" in error.hint
    said = changed(
        ("[today.plant]\nvalve.opening = 0.85", "[today]\nunchanged = true"),
        ('blames = "discharge-side"\nload = "lighter"', 'blames = "nothing"'),
        ('gauge-discharge = "falls"\nflow-meter = "rises"', 'flow-meter = "same"'),
    )
    assert prove_text(said).truth == "nothing"


@pytest.mark.parametrize(
    ("edits", "where", "rule"),
    [
        ("valve.opening = 0.65", "today", "days"),  # the same as yesterday
        ("valve.opening = 0.651", "today.plant", "days"),  # no instrument shows it
        ("valve.opening = 0.85\ndrive.frequency_hz = 45", "today.plant", "days"),  # two groups
        ('title = "Another plant"', "today.plant.title", "days"),  # does not change overnight
        ("valve.openning = 0.85", "today.plant.valve.openning", "unknown"),
        ("valve.opening = 1.4", "today.plant.valve.opening", "range"),
        ('pump.model = "gigantic"', "today.plant.pump.model", "lookup"),
        ('valve = "open"', "today.plant.valve", "unknown"),
        ("suction.roughness_mm = 5\nsuction.bore_mm = 5", "today.plant.suction.roughness_mm", "together"),
    ],
)
def test_days_that_cannot_be_are_refused(edits: str, where: str, rule: str) -> None:
    """Equal days, invisible or mixed differences, and impossible plants."""
    error = refused(with_today(edits))
    assert (error.where, error.rule) == (where, rule)


def test_a_proof_that_the_physics_does_not_bear_out_is_refused() -> None:
    """The author wrote that the flow falls; it is computed to rise."""
    error = refused(changed(('flow-meter = "rises"', 'flow-meter = "falls"')))
    assert (error.where, error.got, error.rule) == ("proof.flow-meter", "falls", "proof")
    assert "up" in error.text


def test_choices_without_the_truth_are_refused() -> None:
    """A learner must be able to be right."""
    error = refused(changed(('blames = "discharge-side"\nload = "lighter"', 'blames = "drive"')))
    assert (error.where, error.rule, error.facts["group"]) == ("choices", "truth", "discharge-side")


def test_two_right_choices_are_refused_with_a_way_out() -> None:
    """Both blame the discharge side and neither gives a direction."""
    error = refused(changed(('load = "lighter"\n', ""), ('load = "heavier"\n', "")))
    assert (error.where, error.rule) == ("choices", "truth")
    assert "lighter or heavier" in error.hint


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
        ('blames = "machine"', 'blames = "machine"\nload = "heavier"', "choices[0].load", "together"),
        ('blames = "machine"', 'blames = "pump"', "choices[0].blames", "choice"),
        ('when_seen.flow-meter', 'when_seen.ammeter-1', "choices[0].when_seen", "choice"),
        ('when_unseen.flow-meter', 'when_unseen.gauge-discharge', "choices[0].when_unseen", "choice"),
        ('result = "It stands at {today.valve.opening}."\n', "", "checks[1].result", "missing"),
        ('result = "It stands', 'strips_down = true\nresult = "It stands', "checks", "together"),
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
        ('format = 0', 'format = 7', "format", "version"),
        ('plant = "rinse-transfer"', 'plant = "moon-base"', "plant", "lookup"),
        ('plant = "rinse-transfer"', 'plant = 5', "plant", "type"),
        ('teaches = ["Pressure follows the load."]', 'teaches = []', "teaches", "points"),
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
        ("It stands at {today.valve.opening}.", "{today.flow-meter}", "checks[1].result", "too-early"),
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


def test_a_reading_off_its_scale_is_no_number_for_prose() -> None:
    """A pointer on its stop has no value to be told."""
    dial = "valve.opening = 0.65\ngauges.discharge.range_bar = [0.0, 2.0]"
    short = changed(("valve.opening = 0.65", dial))
    error = refused(short)
    assert (error.where, error.rule) == ("story", "lookup")


HOSTILE = ["", "format = 0", "= 5", "format = 0\n" + "[a" * 5000, '"' * 999, "\x00", "x" * 300_000]


@pytest.mark.parametrize("text", HOSTILE)
def test_a_hostile_file_is_answered_like_any_other(text: str) -> None:
    """Nothing but a FileError comes out, whatever goes in."""
    refused(text)


def test_a_whole_plant_may_stand_in_the_case() -> None:
    """A case can bring its own plant in a table."""
    table = 'plant = {format = 1, title = "Own", pump = {model = "medium"}, valve = {kv_open_m3h = 63}}'
    assert prove_text(changed(('plant = "rinse-transfer"', table))).days.today.state.converged
