"""What a file is, its keys tell."""

from __future__ import annotations

import pytest
from tests.cases.samples import changed

from loadfirst.cases.recognise import kind_of
from loadfirst.plant import library
from loadfirst.plant.toml_text import parse


@pytest.mark.parametrize(("shelf", "kind"), [("plants", "plant"), ("pumps", "pump"), ("cases", "case")])
def test_every_packaged_file_is_of_its_shelf(shelf: library.Shelf, kind: str) -> None:
    """Neither its folder nor its name is looked at."""
    assert {kind_of(library.data(shelf, name)) for name in library.ids(shelf)} == {kind}


def test_a_puzzle_with_misspelt_keys_or_a_plant_inside_is_still_one() -> None:
    """So that its author is told of the slip, and not of a plant that was never meant."""
    slips = changed(("format = 1", "format = 9"), ("story =", "storey ="), ("[prediction]", "[predicton]"))
    inside = changed(('plant = "rinse-transfer"', 'plant = {format = 1, title = "x", pump.model = "small"}'))
    assert kind_of(parse(slips)) == kind_of(parse(inside)) == "case"


def test_what_could_be_anything_is_a_plant() -> None:
    """An empty file, or one that has a title only."""
    assert kind_of({}) == kind_of({"format": 1, "title": "x"}) == kind_of({"valve": 3}) == "plant"
