"""Bottom and rim of a vessel whose file gives only the surface."""

from __future__ import annotations

import pytest
from tests.plants import LEAST, with_table

from loadfirst.errors import InputError
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.plant import Delivery, Supply
from loadfirst.plant.read import decode_plant
from loadfirst.plant.vessels import ROOM


def test_a_high_tank_needs_no_more_than_its_surface() -> None:
    """Two metres of room below and above."""
    delivery = decode_plant(with_table("delivery", surface_m=40)).delivery
    assert (delivery.bottom_m, delivery.top_m) == (38, 42)


def test_the_defaults_of_the_types_follow_the_same_rule() -> None:
    """So that the guide and the page say the same."""
    for vessel in (Supply(), Delivery()):
        assert (vessel.bottom_m, vessel.top_m) == (vessel.surface_m - ROOM, vessel.surface_m + ROOM)


def test_moving_the_level_does_not_move_the_vessel() -> None:
    """Else a level that is dragged would never come nearer to the rim."""
    edited = decode_plant(apply_edits(with_table("delivery", surface_m=40), {"delivery.surface_m": 41}))
    assert (edited.delivery.surface_m, edited.delivery.top_m, edited.delivery.bottom_m) == (41, 42, 38)


def test_a_vessel_without_walls_in_its_file_grows_with_a_level_beyond_them() -> None:
    """A file that names no rim cannot be overfilled."""
    edited = decode_plant(apply_edits(LEAST, {"supply.surface_m": 9}))
    assert (edited.supply.surface_m, edited.supply.top_m, edited.supply.bottom_m) == (9, 9, 0)


def test_a_rim_in_the_file_holds() -> None:
    """The level ends there."""
    with pytest.raises(
        InputError, match="supply.surface_m is 9.0, but must be at or below supply.top_m, 5 m"
    ):
        decode_plant(apply_edits(with_table("supply", top_m=5), {"supply.surface_m": 9}))


def test_a_pipe_that_ends_deep_in_the_vessel_deepens_it() -> None:
    """The bottom is never above the pipe's end."""
    assert decode_plant(with_table("delivery", outlet_m=3)).delivery.bottom_m == 3


@pytest.mark.parametrize("surface", ["high", True, float("nan"), 10**400, [], {}])
def test_a_surface_that_is_no_number_is_left_to_the_decoder(surface: object) -> None:
    """Which says so."""
    with pytest.raises(InputError) as caught:
        decode_plant(with_table("supply", surface_m=surface))
    assert caught.value.where == "supply.surface_m"
