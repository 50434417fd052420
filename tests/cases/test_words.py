"""Prose is split into words and quantities, and nothing is formatted here."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from loadfirst.cases.words import Quantity, Words, filled, placeholders, refuse_typed_numbers
from loadfirst.days.two_days import DayName


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


@given(st.text(alphabet=st.characters(blacklist_characters="{}", blacklist_categories=("Cs",)), max_size=80))
def test_words_without_braces_pass_as_they_are(text: str) -> None:
    """Markup, quotes and signs of any script are only text."""
    joined = "".join(
        part.text for line in filled(text, "x", five) for part in line if isinstance(part, Words)
    )
    assert joined.split() == text.split()
    assert placeholders(text, "x") == []
