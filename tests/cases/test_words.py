"""Prose is split into words and quantities, and nothing is formatted here."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.cases.words import TYPED_UNITS, Quantity, Words, filled, placeholders, refuse_typed_numbers
from loadfirst.days.two_days import DayName
from loadfirst.errors import InputError


def five(day: DayName, source: str) -> tuple[str, float]:
    """Every placeholder is 5 Pa."""
    return "pressure", 5.0


def test_a_placeholder_becomes_a_quantity_between_words() -> None:
    """The number stays in SI; the page gives it digits and unit."""
    assert filled("From {yesterday.gauge-suction} up.", "x", five) == [
        [Words("From "), Quantity("pressure", 5.0, "gauge-suction", "yesterday"), Words(" up.")]
    ]


def test_blank_lines_part_paragraphs_and_other_line_ends_are_spaces() -> None:
    """An author may break lines as the editor likes."""
    assert filled("\none\ntwo\n\n \nthree\n", "x", five) == [[Words("one two")], [Words("three")]]


def test_figures_that_are_no_readings_may_be_typed() -> None:
    """Hours, counts and lengths of a walk are the author's; readings are the model's."""
    refuse_typed_numbers("At 6 in the morning, 12 barrels, pump 2 and 3 men.", "story")
    refuse_typed_numbers(
        "A ladder of 3 m, a 30 kW motor for 400 V; run it at 40 Hz, the valve at 50 %.", "story"
    )


@pytest.mark.parametrize(
    "unit", [*TYPED_UNITS, "litres per second", "cubic metres an hour", "liter per minute"]
)
@pytest.mark.parametrize("number", ["5", "5 ", "0.5\u00a0"])
def test_a_number_with_a_unit_of_a_reading_is_refused(unit: str, number: str) -> None:
    """With a blank or without one, in letters or in words; a longer word that begins so is none."""
    with pytest.raises(InputError) as caught:
        refuse_typed_numbers(f"It came to {number}{unit}, no more.", "story")
    assert caught.value.rule == "typed-number"
    refuse_typed_numbers(f"It came to {number}{unit}x, no more.", "story")


def test_a_brace_that_is_none_is_quoted_with_the_words_after_it() -> None:
    """By which its author finds it."""
    with pytest.raises(InputError) as caught:
        placeholders("It fell to {today.flow-meter, they say.", "story")
    assert caught.value.got == "{today.flow-meter, they say."


@given(st.text(alphabet=st.characters(blacklist_characters="{}", blacklist_categories=("Cs",)), max_size=80))
def test_words_without_braces_pass_as_they_are(text: str) -> None:
    """Markup, quotes and signs of any script are only text."""
    joined = "".join(
        part.text for line in filled(text, "x", five) for part in line if isinstance(part, Words)
    )
    assert joined.split() == text.split()
    assert placeholders(text, "x") == []
