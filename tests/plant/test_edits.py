"""Dotted keys change a plant and nothing else."""

from __future__ import annotations

import copy

import pytest
from tests.plants import LEAST, with_table

from loadfirst.errors import InputError
from loadfirst.plant.edits import MOST, apply_edits
from loadfirst.plant.read import decode_plant


def test_an_edit_changes_one_key_and_leaves_the_original_alone() -> None:
    """Edits are applied to a copy: a drag must not change what reset goes back to."""
    before = copy.deepcopy(with_table("valve", rangeability=30))
    data = copy.deepcopy(before)
    edited = apply_edits(data, {"valve.opening": 0.25})
    assert edited["valve"] == {"rangeability": 30, "opening": 0.25}
    assert {key for key in edited if edited[key] != before.get(key)} == {"valve", "supply", "delivery"}
    assert data == before


def test_an_edit_makes_the_table_that_is_missing() -> None:
    """A file need not have a table for its keys to be changed."""
    assert (
        decode_plant(apply_edits(LEAST, {"gauges.after_valve.class": 1})).gauges.after_valve.accuracy_class
        == 1
    )


def test_none_puts_a_key_back_to_its_default() -> None:
    """The page sends null for that."""
    assert (
        decode_plant(apply_edits(with_table("valve", opening=0.1), {"valve.opening": None})).valve.opening
        == 0.6
    )


def test_naming_another_pump_takes_the_points_away() -> None:
    """Swapping the pump of a plant that carries its own points."""
    assert apply_edits(LEAST, {"pump.model": "large"})["pump"] == {"model": "large"}


def test_giving_points_takes_the_model_away() -> None:
    """And the other way round."""
    data = apply_edits({**LEAST, "pump": {"model": "large"}}, {"pump.curve": LEAST["pump"]["curve"]})
    assert "model" not in data["pump"]


@pytest.mark.parametrize(
    ("key", "sentence"),
    [
        ("valve.openning", "valve.openning is not a known key. Did you mean valve.opening?"),
        ("opening", "opening is not a known key. Did you mean valve.opening?"),
        ("check", "check is not a known key. Did you mean check.k?"),
        (
            "gauges",
            "gauges is not a known key. Known here: gauges.suction, gauges.discharge, gauges.after_valve.",
        ),
        ("__class__.x", "__class__.x is not a known key."),
    ],
)
def test_an_unknown_key_gets_the_nearest_known_one(key: str, sentence: str) -> None:
    """The whole dotted key is compared, then its last part."""
    with pytest.raises(InputError) as caught:
        apply_edits(LEAST, {key: 1})
    assert caught.value.text == sentence


def test_an_edit_into_something_that_is_no_table_says_so() -> None:
    """A broken plant stays a broken plant."""
    with pytest.raises(InputError, match="valve is 3, but must be a table"):
        apply_edits({**LEAST, "valve": 3}, {"valve.opening": 1})


def test_thousands_of_edits_are_refused() -> None:
    """A link may carry no more than the plant has keys, several times over."""
    with pytest.raises(InputError, match="edits is 201, but must be at most 200 keys"):
        apply_edits(LEAST, {f"k{number}": 1 for number in range(MOST + 1)})
