"""A collection in which a habit is right too often is refused."""

from __future__ import annotations

import msgspec
import pytest
from tests.cases.samples import SOUND

from loadfirst.cases.collection import Played, faults, groups, machine_blamed, shares
from loadfirst.cases.fairness import Fairness
from loadfirst.cases.players import HABITS
from loadfirst.cases.read import decode_case
from loadfirst.cases.truth import Truth

CASE = decode_case(SOUND, "made-up.toml")
TRUTHS = ["discharge-side", "suction-side", "liquid", "drive", "machine", "instrument"]


def one(group: str, teller: str, **habits: float) -> Played:
    """A case with that truth and teller; every habit earns nothing unless said."""
    earned = {habit: habits.get(habit.replace("-", "_"), 0.0) for habit in HABITS}
    found = Fairness(
        group=1.0,
        cause=1.0,
        told=True,
        right=1.0,
        rivals={},
        checks=2.0,
        cost=10.0,
        decided=1.0,
        led=90.0,
        habits=earned,
    )
    case = msgspec.structs.replace(CASE, teller=teller)
    return Played("x", case, Truth((group,), (group,), None), found)  # type: ignore[arg-type]


SOUND_ONES = [
    *(one(group, "machine") for group in TRUTHS),
    *(one(group, "drive") for group in TRUTHS[:4]),
    one("machine", "discharge-side"),
    one("instrument", "nothing"),
]


def test_a_mixed_collection_is_sound() -> None:
    """Groups even, the machine blamed six times and once rightly, one teller wrong about the load."""
    assert list(faults(SOUND_ONES)) == []
    assert groups(SOUND_ONES)["machine"] == 2
    assert machine_blamed(SOUND_ONES) == (6, 1)


@pytest.mark.parametrize(
    ("every", "says"),
    [
        ([one("discharge-side", "drive")] * 8 + SOUND_ONES, "discharge-side in 10 of 20"),
        ([one("machine", "machine")] * 3 + SOUND_ONES, "rightly in 4"),
        ([each for each in SOUND_ONES if each.case.teller != "discharge-side"], "insists on the load"),
        ([one("liquid", "machine", blames_load=60.0)] * 12, "blames-load earns 67%"),
    ],
)
def test_what_is_wrong_is_said(every: list[Played], says: str) -> None:
    """With the number that is too large."""
    assert any(says in fault.text for fault in faults(every))


def test_habits_are_held_against_what_looking_earns() -> None:
    """Sums over all cases."""
    assert shares([one("liquid", "drive", guesses=30.0), one("drive", "drive")])["guesses"] == pytest.approx(
        1 / 6
    )
