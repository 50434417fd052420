"""The right verdict follows from what happened: one cause or several, alike ones, or nothing."""

from __future__ import annotations

import pytest
from tests.cases.samples import (
    SOUND,
    TWO,
    changed,
    decide,
    overnight,
    play_text,
    predict,
    prove_text,
    refused,
)

from loadfirst.cases.case import Choice
from loadfirst.cases.truth import Truth, groups_of, rightness

WORN = Truth(("worn",), ("machine",), None)
STRAINER = Truth(("strainer-blocked",), ("suction-side",), "heavier")
OPENED = Truth(("valve-opened",), ("discharge-side",), "lighter")
BOTH = Truth(("worn", "strainer-blocked"), ("machine", "suction-side"), "heavier")
NOTHING = Truth(("nothing",), ("nothing",), None)


def blaming(*blames: str, load: str | None = None) -> Choice:
    """A verdict."""
    return Choice(id="one", says="One.", blames=blames, load=load, reply="Why.")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("choice", "truth", "wanted"),
    [
        (blaming("worn"), WORN, "right"),
        (blaming("machine"), WORN, "right"),
        (blaming("impeller-smaller"), WORN, "group"),
        (blaming("drive"), WORN, "wrong"),
        (blaming("discharge-side"), OPENED, "right"),
        (blaming("discharge-side", load="lighter"), OPENED, "right"),
        (blaming("discharge-side", load="heavier"), OPENED, "group"),
        (blaming("valve-opened", load="heavier"), OPENED, "group"),
        (blaming("filter-fouled"), OPENED, "group"),
        (blaming("nothing"), OPENED, "wrong"),
        (blaming("suction-valve-half-shut"), STRAINER, "right"),  # no reading tells the two apart
        (blaming("air-leak"), STRAINER, "group"),
        (blaming("worn", "strainer-blocked"), BOTH, "right"),
        (blaming("machine", "suction-side"), BOTH, "right"),
        (blaming("machine", "air-leak"), BOTH, "group"),
        (blaming("worn"), BOTH, "part"),
        (blaming("machine"), BOTH, "part"),
        (blaming("suction-valve-half-shut", load="heavier"), BOTH, "part"),
        (blaming("impeller-smaller"), BOTH, "wrong"),  # of one of the groups, but it did not happen
        (blaming("suction-side", load="lighter"), BOTH, "wrong"),
        (blaming("worn", "impeller-smaller"), BOTH, "wrong"),
        (blaming("worn", "strainer-blocked", "drive"), BOTH, "wrong"),  # a group too many
        (blaming("worn", "discharge-side"), BOTH, "wrong"),
        (blaming("worn", "strainer-blocked"), WORN, "wrong"),
        (blaming("nothing"), NOTHING, "right"),
        (blaming("instrument"), NOTHING, "wrong"),
    ],
)
def test_a_verdict_is_right_of_the_right_group_or_wrong(choice: Choice, truth: Truth, wanted: str) -> None:
    """Every group, no other, and every cause that is named; alike ones count as one; some of it is part."""
    assert rightness(choice, truth) == wanted


def test_a_verdict_blames_the_groups_of_its_causes() -> None:
    """By name or by what it says happened."""
    assert groups_of(blaming("worn", "suction-side")) == {"machine", "suction-side"}
    assert groups_of(blaming("worn", "impeller-smaller")) == {"machine"}


@pytest.mark.parametrize(
    ("cause", "size", "group", "load", "proof"),
    [
        ("strainer-blocked", 0.9, "suction-side", "heavier", 'flow-meter = "falls"'),
        ("supply-slow", None, "drive", None, 'flow-meter = "falls"'),
        ("impeller-smaller", 0.85, "machine", None, 'gauge-discharge = "falls"'),
        ("gauge-zero-off", -10, "instrument", None, 'gauge-discharge = "falls"'),
        ("denser-liquid", None, "liquid", None, 'gauge-discharge = "rises"'),
        ("back-pressure-higher", None, "discharge-side", "heavier", 'flow-meter = "falls"'),
    ],
)
def test_group_and_load_follow_from_the_cause(
    cause: str, size: object, group: str, load: str | None, proof: str
) -> None:
    """Six groups of causes; the direction of the load comes from the load curves of the two days."""
    named = f'blames = ["{group}"]' + ("" if load is None else f'\nload = "{load}"')
    text = changed(
        ('blames = ["worn"]', 'blames = ["nothing"]'),
        ('blames = ["discharge-side"]\nload = "heavier"', 'blames = ["nothing"]'),
        ('blames = ["discharge-side"]\nload = "lighter"', named),
        ("It stands at {today.valve.opening}.", "It was touched."),
        ('gauge-discharge = "falls"\nflow-meter = "rises"', proof),
        text=overnight(cause, size),
    )
    truth = prove_text(text).truth
    assert truth == ((cause,), (group,), load)


def test_two_causes_of_two_groups_are_one_truth() -> None:
    """Who names one of them only is right in part; the reveal has both, and what helps against either."""
    assert prove_text(TWO).truth == BOTH
    end = play_text(TWO, predict("machine"), decide("both", "overhaul"))
    assert (end["verdict"]["rightness"], end["verdict"]["outcome"]) == ("right", "fits")
    happened = [(one["cause"], one["group"], one["size"]) for one in end["reveal"]["happened"]]
    assert happened == [("worn", "machine", 20), ("strainer-blocked", "suction-side", 0.9)]
    assert end["reveal"]["fitting"][0] == "overhaul" and "clean" in end["reveal"]["fitting"]
    assert play_text(TWO, predict("machine"), decide("worn"))["verdict"]["rightness"] == "part"


def test_nothing_stands_alone() -> None:
    """Beside anything else it is a slip."""
    beside = SOUND.replace("[[today]]", '[[today]]\ncause = "nothing"\n\n[[today]]')
    error = refused(beside)
    assert (error.where, error.rule) == ("today", "together")
    text = changed(
        ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["nothing"]'),
        ("It stands at {today.valve.opening}.", "It was touched."),
        ('gauge-discharge = "falls"\nflow-meter = "rises"', 'flow-meter = "same"'),
        text=overnight("nothing"),
    )
    assert prove_text(text).truth == NOTHING


def test_two_verdicts_that_no_reading_tells_apart_cannot_both_be_offered() -> None:
    """Strainer and suction valve are one family: naming either is right."""
    text = changed(
        ('blames = ["discharge-side"]\nload = "lighter"', 'blames = ["strainer-blocked"]'),
        ('blames = ["discharge-side"]\nload = "heavier"', 'blames = ["suction-valve-half-shut"]'),
        ("It stands at {today.valve.opening}.", "It was touched."),
        ('flow-meter = "rises"', 'flow-meter = "falls"'),
        text=overnight("strainer-blocked", 0.9),
    )
    error = refused(text)
    assert (error.where, error.rule, error.got) == ("choices", "truth", "lighter, heavier")
