"""Every wrong value is answered with where it is, what it was and what would do."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.plants import LEAST, with_curve, with_table

from loadfirst.errors import FileError, InputError
from loadfirst.plant.decode import decode
from loadfirst.plant.plant import Plant

NO_TURNS = "but must be without characters that turn the direction of writing."
SENTENCES = [
    ("range", with_table("valve", opening=1.4), "valve.opening is 1.4, but must be from 0 to 1."),
    ("range", with_table("valve", opening=float("nan")), "valve.opening is nan, but must be from 0 to 1."),
    (
        "range",
        with_table("suction", bore_mm=float("inf")),
        "suction.bore_mm is inf, but must be from 5 to 2000 mm.",
    ),
    (
        "range",
        with_table("suction", length_m=10**400),
        "suction.length_m is a number of very many digits, but must be from 0.1 to 5000 m.",
    ),
    (
        "type",
        with_table("valve", opening="0.3"),
        "valve.opening is '0.3', but must be a number from 0 to 1. Write it without quotation marks.",
    ),
    (
        "type",
        with_table("drive", frequency_hz="42,5"),
        "drive.frequency_hz is '42,5', but must be a number from 5 to 75 Hz. "
        "Write it with a decimal point and without quotation marks.",
    ),
    ("type", with_table("valve", opening=True), "valve.opening is true, but must be a number from 0 to 1."),
    ("type", with_table("check", fitted="yes"), "check.fitted is 'yes', but must be true or false."),
    ("range", {**LEAST, "title": ""}, "title is '', but must be not empty, at most 80 characters long."),
    (
        "range",
        {**LEAST, "title": " \u00a0\n"},
        "title is ' ··', but must be not empty, at most 80 characters long.",
    ),
    ("turns", {**LEAST, "title": "\u202ecba"}, f"title is '·cba', {NO_TURNS}"),
    ("turns", {**LEAST, "about": "To\nthe\u2066 left"}, f"about is 'To·the· left', {NO_TURNS}"),
    ("turns", with_table("liquid", name="oil\u202d"), f"liquid.name is 'oil·', {NO_TURNS}"),
    ("turns", with_curve(title="pu\u2069mp"), f"pump.curve.title is 'pu·mp', {NO_TURNS}"),
    ("type", {**LEAST, "valve": 3}, "valve is 3, but must be a table."),
    ("type", [1, 2], "the file is a list of 2, but must be a table."),
    (
        "choice",
        with_table("valve", characteristic="lineal"),
        "valve.characteristic is 'lineal', but must be equal-percentage, linear or quick-opening. "
        "Did you mean linear?",
    ),
    ("choice", with_table("drive", poles=3), "drive.poles is 3, but must be 2, 4, 6 or 8."),
    (
        "choice",
        with_table("drive", poles=4.0),
        "drive.poles is 4.0, but must be 2, 4, 6 or 8. Did you mean 4?",
    ),
    (
        "unknown",
        with_table("valve", openning=0.3),
        "valve.openning is not a known key. Did you mean valve.opening?",
    ),
    (
        "choice",
        with_table("drive", trip_class=10),
        'drive.trip_class is 10, but must be 10, 10A, 20 or 30. Write it in quotation marks: "10".',
    ),
    (
        "choice",
        with_table("drive", trip_class=10**5000),
        "drive.trip_class is a number of very many digits, but must be 10, 10A, 20 or 30.",
    ),
    ("unknown", {**LEAST, "valves": {}}, "valves is not a known key. Did you mean valve?"),
    ("unknown", {**LEAST, "opening": 0.3}, "opening is not a known key. Did you mean valve.opening?"),
    (
        "unknown",
        with_table("site", weather="fine"),
        "site.weather is not a known key. Known here: barometer_bar, altitude_m.",
    ),
    (
        "missing",
        {key: value for key, value in LEAST.items() if key != "title"},
        "title is not there, but must be a text, not empty, at most 80 characters long.",
    ),
    ("missing", {"format": 1, "title": "No pump"}, "pump is not there, but must be a table."),
    (
        "missing",
        with_curve(npshr_m=None),
        "pump.curve.npshr_m is not there, but must be a list of 3 to 60 numbers from 0.01 to 100 m.",
    ),
    ("version", {**LEAST, "format": 2}, "format is 2, but must be 1."),
    (
        "points",
        with_curve(head_m=[30, 20]),
        "pump.curve.head_m is a list of 2, but must be a list of 3 to 60 numbers from 0.01 to 5000 m.",
    ),
    (
        "type",
        with_curve(head_m=[30, 20, "x", 9]),
        "pump.curve.head_m[2] is 'x', but must be a number from 0.01 to 5000 m. It is number 3 of the list.",
    ),
    (
        "range",
        with_curve(head_m=[30, 20, -1, 9]),
        "pump.curve.head_m[2] is -1, but must be from 0.01 to 5000 m. It is number 3 of the list.",
    ),
    (
        "points",
        {**LEAST, "gauges": {"discharge": {"range_bar": [0]}}},
        "gauges.discharge.range_bar is a list of 1, but must be a list of 2 numbers from -1 to 1000 bar.",
    ),
    (
        "range",
        {**LEAST, "gauges": {"discharge": {"class": 9}}},
        "gauges.discharge.class is 9, but must be from 0.1 to 4 %.",
    ),
    (
        "range",
        {**LEAST, "title": "long " * 40},
        "title is 'long long long long long long long long long long long long …', "
        "but must be not empty, at most 80 characters long.",
    ),
]


@pytest.mark.parametrize(("rule", "data", "sentence"), SENTENCES, ids=[s[2][:40] for s in SENTENCES])
def test_a_wrong_value_gets_its_sentence(rule: str, data: Any, sentence: str) -> None:
    """The sentence is read word by word, the rule is the one the page has words for."""
    with pytest.raises(InputError) as caught:
        decode(Plant, data)
    assert caught.value.text == sentence
    assert caught.value.rule == rule


def test_an_error_in_a_file_starts_with_the_files_name() -> None:
    """The same error, told of a file, is a FileError."""
    with pytest.raises(FileError) as caught:
        decode(Plant, with_table("valve", opening=1.4), "wash.toml")
    assert str(caught.value) == "wash.toml: valve.opening is 1.4, but must be from 0 to 1."
    assert (caught.value.code, caught.value.where) == ("file", "valve.opening")


def test_the_numbers_behind_a_sentence_are_there_for_the_page() -> None:
    """The page words errors itself, so it gets the range and the unit as they are."""
    with pytest.raises(InputError) as caught:
        decode(Plant, with_table("suction", bore_mm=1))
    assert caught.value.facts == {"unit": "mm", "low": 5, "high": 2000}


def test_tables_nested_ten_thousand_deep_are_refused() -> None:
    """A stranger's data cannot make the decoder fall over."""
    deep: dict[str, Any] = {}
    for _ in range(10_000):
        deep = {"liquid": deep}
    with pytest.raises(InputError, match="liquid.liquid is not a known key"):
        decode(Plant, {**LEAST, "liquid": deep})


def test_a_key_made_to_look_like_a_path_misleads_nobody() -> None:
    """The place is found from a message that repeats the stranger's key; it must not be believed too far."""
    for key in ("x` - at `$.valve.opening`", "x` - at `$[99]`", "missing required field `format`", "a\nb"):
        with pytest.raises(InputError) as caught:
            decode(Plant, {**LEAST, key: 1})
        assert "\n" not in caught.value.text


scalars = st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=8)
names = st.sampled_from(
    ["format", "title", "pump", "valve", "opening", "curve", "flow_m3h", "gauges", "liquid"]
)
anything = st.recursive(
    scalars,
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(names | st.text(max_size=8), inner, max_size=4)
    ),
    max_leaves=12,
)


@given(anything)
def test_whatever_comes_in_only_our_own_error_goes_out(data: Any) -> None:
    """Any data at all either makes a plant or is refused with a sentence of one line."""
    try:
        decode(Plant, data)
    except InputError as refusal:
        assert refusal.where
        assert "\n" not in refusal.text
