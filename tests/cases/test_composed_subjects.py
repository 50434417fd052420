"""What composed cases are about: plausible where it happens, spoken of as people speak, of every kind."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from loadfirst.cases.case import ReadingId
from loadfirst.cases.compose import plausible
from loadfirst.cases.compose.chance import Chance
from loadfirst.cases.compose.lead import lead
from loadfirst.cases.compose.morning import Morning
from loadfirst.cases.compose.pieces import pieces
from loadfirst.cases.compose.place import parted, place_of
from loadfirst.cases.compose.refused import Refused
from loadfirst.cases.compose.sizes import WIDTHS
from loadfirst.cases.compose.subject import UNFIT, Subject, Wish, possible, subject
from loadfirst.cases.happened import yesterday_of
from loadfirst.causes.catalogue import CAUSES
from loadfirst.days.two_days import two_days
from loadfirst.errors import InputError
from loadfirst.plant import library
from loadfirst.plant.read import plant_data, resolve_data

PLANTS = [id for id in library.ids("plants") if id not in UNFIT]
KINDS = {parted(cause.id)[1] for cause in CAUSES} | {cause.id for cause in CAUSES}
DRAWS = [(seed, number) for seed in range(1, 41) for number in range(5)]


@pytest.fixture(scope="module")
def many() -> list[Subject]:
    """Two hundred draws."""
    return [subject(Wish(seed), number) for seed, number in DRAWS]


@pytest.mark.parametrize("plant", PLANTS)
def test_whatever_can_happen_is_spoken_of_twice(plant: str) -> None:
    """A dry line for the verdict, another for the teller; whole sentences, no figures, no gap."""
    place = place_of(plant)
    for cause in possible(plant):
        verdict, *spoken = place.lines(cause)
        assert spoken and verdict not in spoken, cause.id
        for line in (verdict, *spoken):
            assert line[0].isupper() and line.endswith(".") and not re.search(r"[<>0-9]", line), line


def test_no_spoken_line_is_left_over() -> None:
    """Nor said of two things, but where readings cannot part them at one place either."""
    spoken = pieces("spoken")
    kinds = [kind for table in spoken.values() for kind in table]
    assert set(kinds) <= KINDS
    verdicts = Counter(lines[0] for table in spoken.values() for lines in table.values())
    assert set(verdicts.values()) == {1}


def test_what_is_plausible_names_what_there_is() -> None:
    """Plants, sets, causes, instruments; every plant has its table."""
    data = pieces("plausible")
    assert data["plant"].keys() == set(PLANTS)
    for table in (data["any"], *data["plant"].values()):
        assert set(table["never"]) <= KINDS | data["sets"].keys()
        assert table.get("sizes", {}).keys() <= {cause.id for cause in CAUSES}
        assert set(table.get("unread", ())) <= set(ReadingId.__args__)  # type: ignore[attr-defined]
    for some in (*data["sets"].values(), *data["span"].values(), data["two"]["never"]):
        assert set(some) <= KINDS


@pytest.mark.parametrize("plant", PLANTS)
def test_plausible_sizes_have_room_at_the_plant(plant: str) -> None:
    """From the faintest to the strongest, on one side of nothing."""
    resolved = resolve_data(plant_data(plant))
    for cause in possible(plant):
        ends = plausible.sizes(plant, cause)
        if ends is not None and cause.size is not None:
            low, high = cause.sizes(resolved)
            assert low <= min(ends) < max(ends) and min(ends) < high, cause.id
            assert abs(ends[0] - cause.size.none) < abs(ends[1] - cause.size.none), cause.id


@pytest.mark.parametrize("plant", PLANTS)
def test_air_leaks_in_only_where_the_air_pushes(plant: str) -> None:
    """At the suction gauge, as the plant stands."""
    data = yesterday_of(plant, 1)
    if "air-leak" in {cause.id for cause in possible(plant)}:
        suction = two_days(data, data).yesterday.readings["gauge-suction"].value
        assert suction is not None and suction < 0


@pytest.mark.parametrize(
    "cause", ["thinner-liquid", "hotter-liquid", "back-pressure-higher", "check-valve-sticks"]
)
def test_some_things_are_thought_of_at_some_places_only(cause: str) -> None:
    """Cold water is not thin, an open vessel has no pressure, and what is not fitted does not stick."""
    where = {plant for plant in PLANTS if cause in {one.id for one in possible(plant)}}
    assert where and "over-the-dam" not in where


def test_a_group_that_a_plant_has_nothing_of_is_refused_at_once() -> None:
    """No draw would help; another plant is drawn where none was wished for."""
    with pytest.raises(InputError) as refused:
        subject(Wish(1, plant="snow-line", group="liquid"), 0)
    assert "drive" in refused.value.facts["choices"]
    plants = {subject_or_none(number) for number in range(0, 240, 12)} - {None}
    assert plants and "snow-line" not in plants


def subject_or_none(number: int) -> str | None:
    """The plant of a draw of a liquid, None where it was refused."""
    try:
        return subject(Wish(1, group="liquid"), number).plant
    except Refused:
        return None


def test_draws_are_plausible_and_their_sizes_apart(many: list[Subject]) -> None:
    """The ends lie round one middle, three digits each; fixed where they are as near as can be."""
    for about, (seed, number) in zip(many, DRAWS, strict=True):
        narrow = subject(Wish(seed), number, WIDTHS[-1])
        assert narrow.causes == about.causes and narrow.seed == about.seed
        assert {*about.causes} <= {*possible(about.plant)}
        assert about.span in plausible.spans(*about.causes)
        for cause, wide, fixed in zip(about.causes, about.sizes, narrow.sizes, strict=True):
            assert (wide is None) == (fixed is None) == (cause.size is None)
            if wide is not None and fixed is not None and cause.size is not None:
                assert wide.low <= fixed.low == fixed.high <= wide.high
                assert all(one == float(f"{one:.3g}") != cause.size.none for one in wide)


def test_most_things_are_drawn_and_now_and_then_two(many: list[Subject]) -> None:
    """Every group, nothing among them; two of different groups seldom, never for beginners."""
    groups = Counter(group for about in many for group in about.groups)
    assert len(groups) == 7 and max(groups.values()) < 0.35 * len(many)
    two = [about for about in many if len(about.causes) == 2]
    assert 0.03 * len(many) < len(two) < 0.25 * len(many)
    assert all(len(about.groups) == 2 and about.level != "first-steps" for about in two)
    assert all(map(plausible.beside, (cause for about in two for cause in about.causes)))
    mistaken = [about for about in many if about.mistaken is not None]
    assert len(mistaken) > len(two) / 2, "a verdict that names two would give it away"


@pytest.mark.native
def test_who_blames_the_machine_is_seldom_right() -> None:
    """In a third of the stories at most; it is what is blamed most."""
    tellers = []
    for number in range(80):
        about = subject(Wish(5, plant="rinse-transfer", level="operator", group=None), number)
        try:
            of = lead(Morning(about), Chance(about.seed, ("words",)))
        except Refused as why:
            assert str(why)
            continue
        tellers.append((of.teller, about.groups))
    blamed = [truth for teller, truth in tellers if teller == "machine"]
    assert len(tellers) > 20
    assert len(blamed) > len(tellers) / 5
    assert sum("machine" in truth for truth in blamed) <= len(blamed) / 3
