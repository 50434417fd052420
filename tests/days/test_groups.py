"""Every plant key has a place in the table of causes, or cannot change overnight."""

from __future__ import annotations

from typing import get_args

from loadfirst.causes.group import Group
from loadfirst.days.groups import GROUPS, group_of
from loadfirst.plant.keys import keys_of
from loadfirst.plant.plant import Plant


def test_every_key_of_a_plant_belongs_to_a_group() -> None:
    """Only the file's own data (format, title, about) cannot differ between two days."""
    without = {key for key in keys_of(Plant) if group_of(key) is None}
    assert without == {"format", "title", "about"}


def test_every_group_but_nothing_has_keys() -> None:
    """Each of the six groups can be the truth of a case."""
    assert set(GROUPS.values()) | {"nothing"} == set(get_args(Group))


def test_the_number_of_pumps_running_is_part_of_the_load() -> None:
    """To any one pump the other is part of what it meets, while its own size is the machine's."""
    assert group_of("pump.arrangement") == "discharge-side"
    assert group_of("pump.model") == group_of("pump.curve.head_m") == "machine"
