"""What a seed draws: sizes, words, instruments, and whether an observation shows something."""

from __future__ import annotations

import math
from collections import Counter

import pytest
from tests.cases.samples import (
    SOUND,
    changed,
    check,
    overnight,
    play_text,
    predict,
    prove_text,
    refused,
    said,
)

from loadfirst.cases.case import Case
from loadfirst.cases.draw import drawn, instrument_seed, shows
from loadfirst.cases.play import outcome
from loadfirst.cases.read import decode_case
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.errors import FileError

RANGED = changed(
    ("size = 0.6", "between = [0.4, 0.8]"),
    ("[yesterday.plant]", '[words]\nwho = ["foreman", "shift leader", "new fitter"]\n\n[yesterday.plant]'),
    ('story = "The gauge', 'story = "The {word.who} says: the gauge'),
)
"""A size between two ends and a word of the story, both drawn."""

SEEDS = 2000


def case_of(text: str) -> Case:
    """A case as its file has it."""
    return decode_case(text, "made-up.toml")


def test_the_same_seed_draws_the_same_case() -> None:
    """Size, words and readings, to the last bit."""
    once, again = (prove_text(RANGED, 7) for _ in range(2))
    assert once.case == again.case
    assert once.days.today.readings == again.days.today.readings


def test_another_seed_draws_other_sizes_words_and_instruments() -> None:
    """Sizes fill their range and never leave it; every word comes."""
    cases = [drawn(case_of(RANGED), seed) for seed in range(1, 201)]
    sizes = [case.today[0].size or 0.0 for case in cases]
    assert 0.4 <= min(sizes) < 0.42 and 0.78 < max(sizes) <= 0.8
    assert len(set(sizes)) == 200
    words = Counter(case.story.split()[1] for case in cases)
    assert words.keys() == {"foreman", "shift", "new"} and min(words.values()) > 40
    assert len({instrument_seed(seed) for seed in range(1, 201)}) > 150


def test_sizes_that_differ_by_factors_are_drawn_by_factors() -> None:
    """As many below the geometric mean of the ends as above it."""
    text = overnight("hand-valve-half-shut").replace(
        '"hand-valve-half-shut"', '"hand-valve-half-shut"\nbetween = [1, 400]'
    )
    sizes = [drawn(case_of(text), seed).today[0].size or 0.0 for seed in range(1, 401)]
    below = sum(size < 20 for size in sizes)
    assert abs(below - 200) < 5 * math.sqrt(400 / 4)


def test_a_seed_of_the_file_draws_unless_the_learner_brings_another() -> None:
    """The view says which seed was played."""
    own = changed(("[yesterday.plant]", "seed = 12\n\n[yesterday.plant]"), text=SOUND)
    own = own.replace("\nseed = 12\n", "").replace("format = 1", "format = 1\nseed = 12")
    assert play_text(own)["seed"] == 12
    assert play_text(own, seed=13)["seed"] == 13
    assert play_text(own, seed=12)["story"] == play_text(own)["story"] != play_text(own, seed=13)["story"]


def test_the_word_that_was_drawn_stands_in_the_story() -> None:
    """And no brace is left."""
    story = said(play_text(RANGED, seed=7)["story"])
    assert story.startswith("The ") and "{" not in story


@pytest.mark.parametrize(
    ("cause", "extra", "where", "rule"),
    [
        ("valve-opened", "between = [0.5, 1.5]", "today[0].between", "range"),  # more than the travel left
        ("valve-opened", "between = [0, 0.5]", "today[0].between", "range"),  # nothing happens at 0
        ("valve-opened", "between = [0.8, 0.4]", "today[0].between", "together"),
        ("valve-opened", "between = [0.4, 0.4]", "today[0].between", "together"),
        ("valve-opened", "size = 0.5\nbetween = [0.4, 0.6]", "today[0].between", "together"),
        ("gauge-shut-off", "between = [0.4, 0.6]", "today[0].between", "together"),
        ("valve-openned", "between = [0.4, 0.6]", "today[0].cause", "choice"),
        ("valve-opened", "between = [0.4]", "today[0].between", "points"),
    ],
)
def test_a_range_that_cannot_be_drawn_is_refused(cause: str, extra: str, where: str, rule: str) -> None:
    """Whatever seed is drawn: both ends must be sizes that the plant leaves room for."""
    error = refused(overnight(cause).replace(f'cause = "{cause}"\n', f'cause = "{cause}"\n{extra}\n'))
    assert (error.where, error.rule) == (where, rule)


def test_a_word_that_nobody_draws_is_refused() -> None:
    """With the words that there are."""
    error = refused(RANGED.replace("{word.who}", "{word.whom}"))
    assert (error.where, error.rule, error.facts["choices"]) == ("story", "lookup", ["who"])


@pytest.mark.parametrize("name", ["valve-stem", "suction-joints", "shaking", "pumps-counted"])
def test_an_observation_shows_as_often_as_its_chances_say(name: str) -> None:
    """Over many seeds, hits and false alarms within five standard deviations of the binomial."""
    one = OBSERVATIONS[name]
    for chance in (one.hit, one.false_alarm):
        count = sum(shows(seed, "check", chance) for seed in range(1, SEEDS + 1))
        assert abs(count - SEEDS * chance) < 5 * math.sqrt(SEEDS * chance * (1 - chance)), (name, chance)


def test_two_checks_of_one_seed_have_chances_of_their_own() -> None:
    """That one was missed says nothing of the other."""
    pairs = Counter((shows(s, "one", 0.5), shows(s, "other", 0.5)) for s in range(1, SEEDS + 1))
    assert min(pairs.values()) > 0.2 * SEEDS


def test_what_happened_is_seen_missed_or_only_seems_to_be_there_by_seed() -> None:
    """The stem shows the opened valve; the rings, which are sound, now and then seem wide."""
    case = prove_text(SOUND).case
    stem, rings = case.checks[1], case.checks[3]
    found = {seed: (outcome(drawn(case_of(SOUND), seed), stem), outcome(drawn(case_of(SOUND), seed), rings))
             for seed in range(1, 101)}  # fmt: skip
    assert sum(hit for hit, _ in found.values()) > 85
    assert 0 < sum(alarm for _, alarm in found.values()) < 15
    missed = next(seed for seed, (hit, _) in found.items() if not hit)
    alarmed = next(seed for seed, (_, alarm) in found.items() if alarm)
    moves = predict("machine"), check("stem"), check("open-it")
    assert said(play_text(SOUND, *moves, seed=missed)["checks"][1]["result"]).startswith("Under the paint")
    opened = play_text(SOUND, *moves, seed=alarmed)["checks"][3]
    assert (said(opened["result"]), opened["found"]) == ("The gaps are wide.", "at-fault")


LONG = " ".join(["man"] * 49)


def test_words_that_overrun_a_text_are_refused_whatever_is_drawn() -> None:
    """With every seed, though most of them draw a shorter one."""
    text = RANGED.replace("Read the flow meter.", "Ask the {word.who} to read the flow meter.")
    prove_text(text.replace('"new fitter"', f'"{LONG[:118]}"'))
    for seed in (1, 2, 3, 4):
        with pytest.raises(FileError) as refusal:
            prove_text(text.replace('"new fitter"', f'"{LONG}"'), seed)
        assert (refusal.value.where, refusal.value.rule) == ("checks[0].says", "range")
        assert refusal.value.hint == "So it is once its words are drawn."


@pytest.mark.parametrize(
    ("old", "new", "rule"),
    [
        ('"new fitter"', '"fitter (3 bar)"', "typed-number"),
        (
            "gauge has gone to {today.gauge-discharge}, from {yesterday.gauge-discharge}",
            "gauge {word.way} from {yesterday.gauge-discharge} to {today.gauge-discharge}",
            "proof",
        ),
    ],
)  # fmt: skip
def test_every_word_is_held_to_what_the_texts_are(old: str, new: str, rule: str) -> None:
    """A typed number, or the wrong direction, in a word that this seed does not draw."""
    text = changed((old, new), ("[words]", '[words]\nway = ["fell", "sank", "rose"]'), text=RANGED)
    for seed in (1, 2, 3, 4):
        with pytest.raises(FileError) as refusal:
            prove_text(text, seed)
        assert (refusal.value.where, refusal.value.rule) == ("story", rule)


def test_a_word_with_a_brace_is_refused_whatever_is_drawn() -> None:
    """It would hold with one seed and be a wrong placeholder with another."""
    error = refused(RANGED.replace('"new fitter"', '"{today.bogus}"'))
    assert (error.where, error.rule) == ("words.who[2]", "range")
    assert "without braces" in error.text
