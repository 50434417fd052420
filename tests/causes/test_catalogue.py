"""Every cause: an edit that fits, a size that can mean nothing, a group, words, what shows it."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from typing import Any, get_args

import msgspec
import pytest

from loadfirst.causes.catalogue import CAUSES, cause
from loadfirst.causes.cause import Cause
from loadfirst.causes.group import Group
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.causes.signature import CHIEF, signatures
from loadfirst.days.groups import GROUPS, group_in
from loadfirst.errors import InputError
from loadfirst.plant import library, toml_text
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import resolve_data

pytestmark = pytest.mark.native  # reads files

HERE = Path(__file__).parent / "plants"
WORDS = Path(__file__).parents[2] / "site" / "words" / "causes.ftl"
FILES = [*sorted(HERE.glob("*.toml")), *(library.path("plants", id) for id in library.ids("plants"))]
HIGH = {f"gauges.{name}.height_m": 3.0 for name in ("suction", "discharge", "after_valve")}
MORE: dict[str, dict[str, Any]] = {
    "everything": {"drive.frequency_hz": None, "pump.second.running": True, "discharge.filled": 0.5,
                   "return_line.fitted": True, "meters.flow_fault.root": "right"},
    "displacement": {"control.fitted": True, "control.set_m3h": 4.0},
    "reference": {"drive.start": "ramp", "second_line.fitted": True, **HIGH},
}  # fmt: skip
"""The same plants, set otherwise."""
CONTROLLED: tuple[dict[str, Any], ...] = (
    {"control.fitted": True, "control.on": "drive", "control.set_m3h": 90.0},
    {"control.fitted": True, "control.of": "discharge-pressure", "control.set_bar": 4.2},
    {"control.fitted": True, "control.of": "delivery-level", "delivery.draw_m3h": 90.0},
)
"""Set-ups of a controller on the reference system."""
SECOND_ALONE = {"pump.running": False, "pump.second.running": True}
ORIFICE = {"meters.flow_kind": "orifice"}


@lru_cache(maxsize=1)
def plants() -> list[tuple[str, dict[str, Any], ResolvedPlant]]:
    """Name, data and resolved plant of every file, and of some set otherwise."""
    found = [(path.stem, toml_text.read(path)) for path in FILES]
    found += [(f"{name} again", apply_edits(dict(found)[name], edits)) for name, edits in MORE.items()]
    found += [("second alone", apply_edits(dict(found)["everything"], SECOND_ALONE))]
    found += [("controlled", apply_edits(dict(found)["reference"], edits)) for edits in CONTROLLED]
    return [(name, data, resolve_data(data)) for name, data in found]


def flat(plant: ResolvedPlant) -> dict[str, Any]:
    """A plant's values by dotted key."""

    def walk(table: dict[str, Any], above: str) -> dict[str, Any]:
        values: dict[str, Any] = {}
        for key, value in table.items():
            path = f"{above}{key}"
            values |= walk(value, f"{path}.") if isinstance(value, dict) else {path: value}
        return values

    return walk(msgspec.to_builtins(plant.plant), "")


def differing(before: ResolvedPlant, after: ResolvedPlant) -> set[str]:
    """Keys whose values differ."""
    one, other = flat(before), flat(after)
    return {key for key in {*one, *other} if one.get(key) != other.get(key)}


def ids(causes: tuple[Cause, ...]) -> list[str]:
    """For pytest's names."""
    return [one.id for one in causes]


@pytest.mark.parametrize("one", CAUSES, ids=ids(CAUSES))
def test_an_edit_fits_every_plant_to_which_the_cause_can_happen(one: Cause) -> None:
    """At the least, the usual and the greatest size; it touches the declared keys alone; some plant suits."""
    suited = 0
    for name, data, plant in plants():
        if one.applies(plant) is not None:
            with pytest.raises(InputError, match="can happen"):
                one.edits(plant, 1.0 if one.size is None else one.size.usual)
            continue
        suited += 1
        low, high = one.sizes(plant)
        assert one.sizes(plant)[0] <= one.usual(plant) <= one.sizes(plant)[1]
        for size in (low, one.usual(plant), high):
            edits = one.edits(plant, size)
            after = resolve_data(apply_edits(data, edits))
            assert set(edits) <= set(one.keys), name
            assert differing(plant, after) - {"drive.start"} <= set(one.keys), (name, size)
    assert suited > 0


@pytest.mark.parametrize("one", CAUSES, ids=ids(CAUSES))
def test_at_the_size_of_nothing_nothing_is_edited(one: Cause) -> None:
    """Whatever the plant; and just beyond that size next to nothing is."""
    for _, data, plant in plants():
        assert one.edits(plant, 0.0 if one.size is None else one.size.none) == {}
        if one.size is None or one.size.none not in one.sizes(plant) or one.applies(plant) is not None:
            continue
        low, high = one.sizes(plant)
        near = one.size.none + 1e-9 * (1 if one.size.none < high else -1)
        after = flat(resolve_data(apply_edits(data, one.edits(plant, near))))
        for key, value in flat(plant).items():
            other_key = after.get(key) is None  # a stated altitude gives way to a barometer
            if isinstance(value, float) and key in one.keys and not other_key:
                assert after[key] == pytest.approx(value, rel=1e-6, abs=1e-6), key


@pytest.mark.parametrize("one", CAUSES, ids=ids(CAUSES))
def test_something_is_edited_at_the_usual_size(one: Cause) -> None:
    """But for nothing at all."""
    changed = [
        bool(differing(plant, resolve_data(apply_edits(data, one.edits(plant)))))
        for _, data, plant in plants()
        if one.applies(plant) is None
    ]
    assert any(changed) == (one.id != "nothing")


def test_sizes_beyond_the_range_are_refused() -> None:
    """With the range of that plant, and the place."""
    plant = plants()[0][2]
    with pytest.raises(InputError, match="cause worn is 60.0, but must be from 0 to 50 %"):
        cause("worn").edits(plant, 60.0)
    with pytest.raises(InputError, match="the id of a cause"):
        cause("gremlins")


def test_ids_are_single_and_all_groups_have_causes() -> None:
    """The six, and nothing."""
    assert len({one.id for one in CAUSES}) == len(CAUSES)
    assert {one.group for one in CAUSES} == set(get_args(Group))
    assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", one.id) for one in CAUSES)


@pytest.mark.parametrize("one", CAUSES, ids=ids(CAUSES))
def test_a_causes_group_is_that_of_its_keys(one: Cause) -> None:
    """Or it is declared alike a cause of that group: then only an observation tells the two apart."""
    on = "drive" if one.group == "drive" else "valve"
    groups = {group_in(key, on) for key in one.keys} - {one.group}
    if groups:
        assert one.alike and groups == {cause(one.alike).group}


def test_every_table_of_the_groups_has_a_cause() -> None:
    """No part of a plant can change without a cause in the catalogue, but for these."""
    without = {
        "pump.centre_m", "pump.curve", "pump.displacement", "pump.arrangement", "pump.history_m3h",
    }  # fmt: skip
    touched = {key for one in CAUSES for key in one.keys}
    for table in set(GROUPS) - without:
        assert any(key == table or key.startswith(f"{table}.") for key in touched), table


def test_causes_that_edit_the_same_are_declared_alike() -> None:
    """Every pair with equal edits on a plant at its usual sizes, and each declared one points to a first."""
    for one in CAUSES:
        if one.alike:
            first = cause(one.alike)
            assert not first.alike and set(one.shown_by) != set(first.shown_by), one.id
            assert one.hunts == first.hunts
    for _, _, plant in plants():
        can = [one for one in CAUSES if one.size is None and one.applies(plant) is None]
        edited = [(one, one.edits(plant)) for one in can]
        for at, (one, edits) in enumerate(edited):
            for other, same in edited[:at]:
                if edits == same:
                    assert other.id == one.alike or one.id == other.alike, (one.id, other.id)


def test_a_half_shut_suction_valve_reads_as_a_blocked_strainer() -> None:
    """The same loss coefficient by either: the same five quantities, to the last digits."""
    name, data, plant = plants()[FILES.index(HERE / "reference.toml")]
    strainer, valve = cause("strainer-blocked"), cause("suction-valve-half-shut")
    added = strainer.edits(plant, 0.7)["suction.strainer_k"] - plant.plant.suction.strainer_k
    both = [
        (one, resolve_data(apply_edits(data, one.edits(plant, size))))
        for one, size in ((strainer, 0.7), (valve, added))
    ]
    first, second = signatures(plant, both)
    for quantity in CHIEF:
        one, other = first[quantity], second[quantity]
        assert one.after == pytest.approx(other.after, rel=1e-9), (name, quantity)


@pytest.mark.parametrize(
    ("id", "size", "first", "equal"),
    [
        ("gauge-moved-up", 2.0, "gauge-zero-off", lambda weight: -2 * weight),
        ("gauge-moved-down", 3.0, "gauge-zero-off", lambda weight: 3 * weight),
        ("gauge-leg-gassed", 0.5, "gauge-zero-off", lambda weight: 1.25 * weight),
        ("gauge-from-vacuum", 1.0, "gauge-zero-off", lambda weight: 10.1325),
        ("gauge-re-ranged", 0.8, "gauge-span-off", lambda weight: -20.0),
        ("plate-reversed", 1.0, "flow-meter-span-off", lambda weight: 100 * (0.85**2 - 1)),
        ("flow-meter-other-density", 1.25, "flow-meter-span-off", lambda weight: -20.0),
    ],
)
def test_instruments_declared_alike_read_alike_at_every_load(
    id: str, size: float, first: str, equal: Callable[[float], float]
) -> None:
    """A column, a gas pocket and a vacuum only shift the zero; a plate and a density only stretch the span.

    `weight` is that of a metre of liquid, in per cent of the dial's 10 bar; the dial hangs 2.5 m above
    its tapping. At two openings of the valve, so that no single coincidence passes.
    """
    data = apply_edits(toml_text.read(HERE / "reference.toml"), {**ORIFICE, "gauges.discharge.height_m": 3.0})
    weight = 998.2 * 9.80665 / 1e6 * 100
    for opening in (0.392, 0.2):
        there = apply_edits(data, {"valve.opening": opening})
        plant = resolve_data(there)
        both = [
            (one, resolve_data(apply_edits(there, one.edits(plant, at))))
            for one, at in ((cause(id), size), (cause(first), equal(weight)))
        ]
        one, other = signatures(plant, both)
        assert one["discharge"].after == pytest.approx(other["discharge"].after, rel=1e-4)
        assert one["flow"].after == pytest.approx(other["flow"].after, rel=1e-4)
        assert (one["discharge"].sign, one["flow"].sign) != ("0", "0")


def test_every_cause_is_shown_by_observations_that_exist() -> None:
    """And every observation shows some cause; a hit is likelier than a false alarm."""
    used = {id for one in CAUSES for id in one.shown_by}
    assert used == set(OBSERVATIONS)
    assert all(one.shown_by for one in CAUSES)
    assert all(0 < seen.false_alarm < seen.hit < 1 for seen in OBSERVATIONS.values())


def test_every_cause_and_observation_has_words_on_the_page_and_at_the_terminal() -> None:
    """A title, one sentence on what happened, one on what follows, what its size is; none is left over."""
    text = WORDS.read_text(encoding="utf-8")
    told = dict(re.findall(r"^(cause-[\w-]+|observation-[\w-]+) = (.*(?:\n    .*)*)", text, re.MULTILINE))
    assert set(told) == {f"cause-{one.id}" for one in CAUSES} | {f"observation-{id}" for id in OBSERVATIONS}
    for one in CAUSES:
        happened, title, follows, *size = told[f"cause-{one.id}"].split("\n")
        assert len(size) == (one.size is not None) and all(line.startswith("    .size = ") for line in size)
        assert title.startswith("    .title = ") and follows.startswith("    .follows = ")
        for sentence in (happened, follows, one.says):
            assert sentence.endswith(".") and len(re.findall(r"\.(?: |$)", sentence)) == 1, sentence
        assert one.source
    assert all(seen.says.endswith((".", "?")) for seen in OBSERVATIONS.values())


def test_sizes_spread_over_the_room_that_a_plant_leaves() -> None:
    """Evenly or by equal factors, every one of them usable; from 3.5 m the level can fall by 3 m here."""
    _, _, plant = plants()[FILES.index(HERE / "reference.toml")]
    assert cause("supply-level-lower").spread(plant, 4) == pytest.approx((0, 1, 2, 3))
    assert cause("burst").spread(plant, 3) == pytest.approx((2, (2 * 150) ** 0.5, 150))
    assert cause("phases-swapped").spread(plant, 9) == (1.0,)
    for one in CAUSES:
        if one.applies(plant) is None:
            assert all(isinstance(one.edits(plant, size), dict) for size in one.spread(plant, 7))


def test_sizes_have_a_usual_value_in_their_range() -> None:
    """A logarithmic one starts above nought."""
    for one in CAUSES:
        if one.size is not None:
            assert one.size.low < one.size.high and one.size.low <= one.size.usual <= one.size.high
            assert one.size.usual != one.size.none
            assert one.size.scale == "linear" or one.size.low > 0
