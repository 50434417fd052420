"""Cases from a seed: the same each time, fair, playable, without a gap in their words."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from typing import Any, get_args

import pytest
from tests.cases.samples import check, decide, play_text, predict, said, see

from loadfirst.cases.case import ReadingId
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.compose import Composed, compose, draw, file_name
from loadfirst.cases.compose.pieces import fill, pieces
from loadfirst.cases.compose.subject import GROUPS, Wish
from loadfirst.cases.compose.toml_file import toml
from loadfirst.cases.fairness import fairness, unfair
from loadfirst.cases.load import load_case
from loadfirst.cases.reckoning import _kept
from loadfirst.cases.scope import told
from loadfirst.cases.truth import rightness
from loadfirst.cases.weighing import Weighing
from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.observations import OBSERVATIONS

WISHES = [
    Wish(2, plant="rinse-transfer", group="suction-side", level="operator"),
    Wish(3, plant="oil-press", group="instrument", level="first-steps"),
    Wish(1, plant="rinse-transfer", group="nothing", level="first-steps"),
]
TOKENS = {"name", "today", "yesterday", "then", "day", "at", "blame", "check", "minutes", "facts", "pump"}
NOUNS = {"supply", "delivery", "liquid", "user"}


@pytest.fixture(scope="module", params=WISHES, ids=lambda wish: f"{wish.plant}-{wish.group}")
def made(request: pytest.FixtureRequest) -> Composed:
    """A composed case."""
    return compose(request.param)


def texts(data: Any) -> Iterator[str]:
    """Every text in plain data."""
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for one in data.values():
            yield from texts(one)
    elif isinstance(data, list):
        for one in data:
            yield from texts(one)


def test_every_observation_reading_and_group_has_its_words() -> None:
    """None is missing, none is left over."""
    checks, stories, replies = (pieces(file) for file in ("checks", "stories", "verdicts"))
    assert checks["observation"].keys() == OBSERVATIONS.keys()
    assert stories["instrument"].keys() - {"of-two"} == stories["teaches"].keys() == set(get_args(ReadingId))
    assert {id for one in checks["reading"].values() for id in one["reads"]} == set(get_args(ReadingId))
    assert (
        stories["blame"].keys() - {"plain", "plain-for"} == replies["because"].keys() - {"of"} == set(GROUPS)
    )
    assert replies["because"]["of"].keys() <= {cause.id for cause in CAUSES}


@pytest.mark.parametrize("id", OBSERVATIONS)
def test_an_observation_says_what_is_done_and_found(id: str) -> None:
    """Two different findings, and at least the two minutes of whoever goes there."""
    one = pieces("checks")["observation"][id]
    assert one["shows"] != one["shows_nothing"]
    assert one["minutes"] >= 2
    assert one["says"].endswith((".", "?"))


@pytest.mark.parametrize("file", ["stories", "checks", "verdicts", "spoken"])
def test_pieces_hold_no_token_but_the_known_ones(file: str) -> None:
    """Whatever stands between angle brackets is put in by somebody."""
    found = {token.lower() for text in texts(pieces(file)) for token in re.findall(r"<(\w+)>", text)}
    assert found <= TOKENS | NOUNS


def test_a_token_without_a_word_is_an_error() -> None:
    """Nobody would see it in a file of prose."""
    assert fill("<Name> is <name>", name="the pump") == "The pump is the pump"
    with pytest.raises(KeyError):
        fill("<nmae>", name="the pump")


def test_chance_is_the_same_for_a_name_and_another_for_another() -> None:
    """Nothing depends on the order of the choices; ten thousand shares are spread evenly."""
    one = Chance(7, ("words",))
    assert one.mixed("order", range(9)) == one.mixed("order", range(9)) != one.mixed("other", range(9))
    assert sorted(one.mixed("order", range(9))) == list(range(9))
    mean = sum(Chance(seed, ("a",)).share("b") for seed in range(10_000)) / 10_000
    assert mean == pytest.approx(0.5, abs=0.01)


def test_a_file_reads_back_as_what_was_written() -> None:
    """Values, long prose, tables, lists of tables, a table within one of these."""
    data = {
        "format": 1, "story": "One “two” three.\n\n" + "word " * 40 + "end.", "shown": {"at_first": []},
        "checks": [{"id": "a", "does": {"valve.opening": 0.0}, "reads": ["x", "y"]}, {"id": "b"}],
    }  # fmt: skip
    read = tomllib.loads(toml(data))
    assert " ".join(read.pop("story").split()) == " ".join(data.pop("story").split())  # type: ignore[attr-defined]
    assert read.pop("checks")[0] == {"id": "a", "does": {"valve": {"opening": 0.0}}, "reads": ["x", "y"]}
    assert read == {"format": 1, "shown": {"at_first": []}}


@pytest.mark.native
def test_a_wish_is_kept_and_nothing_is_left_to_fill_in(
    made: Composed, request: pytest.FixtureRequest
) -> None:
    """Plant, level, group; neither brackets nor two spaces in any text."""
    proven = load_case((made.name, made.text))
    case = tomllib.loads(made.text)
    assert case["teaches"] == [pieces("stories")["teaches"][told(proven.case)[0]]]
    assert all(f"{{word.{name}}}" in case["story"] for name in case["words"])
    wish = next(one for one in WISHES if made.name == file_name(one))
    assert (proven.case.plant, proven.case.level) == (wish.plant, wish.level)
    assert proven.truth.groups == (wish.group,)
    for text in texts(tomllib.loads(made.text)):
        assert not re.search(r"[<>]|  |\.\.|“\s|\s”", text), text


@pytest.mark.native
def test_it_is_fair_and_has_something_to_find(made: Composed) -> None:
    """By the same judgement as any other file, with chance of its own for every player."""
    weighing = Weighing(load_case((made.name, made.text)))
    found = fairness(weighing, plays_each=2)
    assert [fault.text for fault in unfair(found, weighing)] == []
    assert found.checks >= (1 if weighing.proven.case.level == "first-steps" else 2)
    assert all(made.refused)


@pytest.mark.native
def test_other_seeds_hold_and_are_fair_too(made: Composed) -> None:
    """Sizes, words, and the instruments' errors are others then."""
    for seed in (5, 77, 4321):
        weighing = Weighing(load_case((made.name, made.text), seed))
        assert [fault.text for fault in unfair(fairness(weighing, 60, 1), weighing)] == []


@pytest.mark.native
def test_it_is_played_to_its_end(made: Composed) -> None:
    """Every check is taken, every verdict has its reply; the right one is among them."""
    proven = load_case((made.name, made.text))
    case = proven.case
    start = [predict(case.teller)]
    taken = [check(one.id) for one in case.checks]
    seen = [see(id, "same") for id in play_text(made.text, *start, *taken)["to_see"]]
    for choice in case.choices:
        end = play_text(made.text, *start, *taken, *seen, decide(choice.id))
        assert end["verdict"]["rightness"] == rightness(choice, proven.truth)
        assert said(end["verdict"]["reply"])


@pytest.mark.native
def test_a_pump_that_stands_is_no_witness() -> None:
    """Its speed of nought stands as it stood whatever happened: a reply names what could have moved."""
    made = tomllib.loads(compose(Wish(503, level="operator")).text)
    right = next(one for one in made["choices"] if one["blames"] == [made["today"][0]["cause"]])
    assert "today.gauge-after-valve}" in right["reply"]
    assert not {"tachometer-2", "ammeter-2"} & set(re.findall(r"today\.([\w-]+)", right["reply"]))


@pytest.mark.native
def test_the_same_seed_gives_the_same_file() -> None:
    """Whatever was made between, and whatever is still remembered."""
    made = compose(WISHES[0])
    load_case.cache_clear()
    _kept.cache_clear()
    assert draw(WISHES[0], made.tried - 1).text == made.text
