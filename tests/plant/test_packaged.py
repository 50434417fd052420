"""The plants and pumps that come with the program."""

from __future__ import annotations

import pytest

from loadfirst.plant import library
from loadfirst.plant.build import build
from loadfirst.plant.effective import effective
from loadfirst.plant.pumps import find_pump
from loadfirst.plant.read import decode_plant, resolve_data
from loadfirst.plant.state import true_state

STORY = {
    "late-second": {"dead-headed", "held-shut", "more-than-one-state"},
    "hill-village": {"standing"},  # its standby
}
"""Notes of plants that are about just that."""


@pytest.mark.parametrize("name", library.ids("plants"))
def test_a_packaged_plant_runs_without_any_note(name: str) -> None:
    """It is read, says what it does, converges, and its pump is well: a sound place to start from."""
    resolved = resolve_data(library.data("plants", name), name)
    state = true_state(build([resolved]))
    assert resolved.plant.about
    assert state.converged
    assert {note.kind for note in state.notes} == STORY.get(name, set())


@pytest.mark.parametrize("name", library.ids("plants"))
def test_every_pointer_of_a_packaged_plant_is_on_its_dial(name: str) -> None:
    """The ranges of its instruments suit it."""
    from loadfirst.instruments.panel import readings

    resolved = resolve_data(library.data("plants", name), name)
    shown = readings(true_state(build([resolved])), resolved.plant)
    assert [reading.id for reading in shown if reading.off_scale or reading.value is None] == []


def test_there_are_three_plants_and_three_sizes_of_pump() -> None:
    """One of the plants filters and transfers."""
    assert {"rinse-transfer", "must-filter", "pit-lift", "warm-makeup"} <= set(library.ids("plants"))
    assert {"small", "medium", "large"} <= set(library.ids("pumps"))


@pytest.mark.parametrize("shelf", ["plants", "pumps"])
def test_file_names_are_ids(shelf: str) -> None:
    """Anything else could not be named by a plant or a link."""
    assert all(library.is_id(name) for name in library.ids(shelf))  # type: ignore[arg-type]


def test_the_sizes_of_pump_are_told_apart_by_their_titles() -> None:
    """The page lists them by title."""
    titles = [find_pump(name).title for name in library.ids("pumps")]
    assert all(titles)
    assert len(set(titles)) == len(titles)


@pytest.mark.parametrize("name", library.ids("plants"))
def test_the_effective_plant_is_the_same_plant(name: str) -> None:
    """All defaults filled in, it gives the same state to the last digit."""
    resolved = resolve_data(library.data("plants", name))
    whole = effective(resolved)
    assert decode_plant(whole).valve == resolved.plant.valve
    assert true_state(build([resolve_data(whole)])) == true_state(build([resolved]))


def test_changing_what_the_library_gave_changes_nothing_in_the_library() -> None:
    """Files are read once; everyone gets a copy of their own."""
    library.data("plants", "rinse-transfer")["valve"]["opening"] = 0
    assert library.data("plants", "rinse-transfer")["valve"]["opening"] == 0.75
