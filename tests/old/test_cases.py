"""Case files of every format that there has been: they load, hold, and keep their right verdict, for ever.

The files in `cases` are as they were when their format was today's, each with its plant
and its pumps inside, so that nothing which lies elsewhere can change them. None is ever
edited or taken away; a new format gets a folder of its own.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from msgspec import Struct, inspect

from loadfirst.cases.case import Case, Change, Check, Choice, Hint, Prediction, Shown, Yesterday
from loadfirst.cases.load import load_case
from loadfirst.cases.read import decode_case
from loadfirst.cases.truth import right_choice
from loadfirst.plant.toml_text import parse

SHELF = Path(__file__).parent / "cases"
RIGHT = {
    "format-0/after-the-service": "cartridges: filter-changed, load lighter",
    "format-0/not-double": "nothing: nothing",
    "format-0/the-straight-line": "filter: filter-fouled, load heavier",
    "format-0/the-tidy-pit": "whirl: whirl-at-outlet",
    "format-0/the-waiting-lorry": "relief: relief-passing, load lighter",
    "format-0/to-a-hair": "both: gauge-shut-off and second-line-shut, load heavier",
    "format-0/worn-in-a-night": "passing: standby-passing, load heavier",
    "format-1/practice-7": "air-bound: air-bound",
    "format-1/short-measure": "strainer: strainer-blocked, load heavier",
    "format-1/the-figure-that-stayed": "both: drive-set-back and gauge-moved-down",
    "format-1/the-hard-morning": "thicker: thicker-liquid, load heavier",
    "format-1/under-the-grass": "burst: burst, load lighter",
}
"""By file: the right verdict and what it was derived from, written down when the file came here."""

TABLES: list[type[Struct]] = [Case, Yesterday, Change, Prediction, Shown, Check, Choice, Hint]


def text_of(name: str) -> str:
    """A file of the shelf."""
    return (SHELF / f"{name}.toml").read_text(encoding="utf-8")


def right(name: str, seed: int | None) -> str:
    """The right verdict of a file as a seed draws it, and what it is derived from."""
    proven = load_case((f"{Path(name).name}.toml", text_of(name)), seed)
    load = "" if proven.truth.load is None else f", load {proven.truth.load}"
    return f"{right_choice(proven.case, proven.truth).id}: {' and '.join(proven.truth.causes)}{load}"


def test_no_file_has_left_the_shelf_and_none_came_without_its_verdict() -> None:
    """Each in the folder of the number that it bears."""
    found = {f"{path.parent.name}/{path.stem}" for path in SHELF.rglob("*.toml")}
    assert found == set(RIGHT)
    assert {name: f"format-{parse(text_of(name))['format']}" for name in found} == {
        name: name.partition("/")[0] for name in found
    }


@pytest.mark.parametrize("name", RIGHT)
def test_an_old_case_holds_and_keeps_its_right_verdict(name: str) -> None:
    """As its own seed and others draw it."""
    assert [right(name, seed) for seed in (None, 5, 77, 999_999)] == [RIGHT[name]] * 4


@pytest.mark.parametrize("name", RIGHT)
def test_an_old_case_depends_on_no_file_beside_it(name: str) -> None:
    """Its plant stands in it, and the points of each of its pumps."""
    plant = decode_case(text_of(name), name).plant
    assert isinstance(plant, dict)
    pumps = [plant["pump"], *([plant["pump"]["second"]] if "second" in plant["pump"] else [])]
    assert [pump for pump in pumps if "model" in pump] == []


@pytest.mark.parametrize("name", [name for name in RIGHT if name.startswith("format-0/")])
def test_a_case_of_format_0_is_one_of_format_1_under_another_number(name: str) -> None:
    """It is lifted without loss."""
    text = text_of(name)
    assert decode_case(text, name) == decode_case(text.replace("format = 0", "format = 1", 1), name)


def test_a_key_of_format_1_stays_and_none_becomes_needed() -> None:
    """What the format held when it became stable is held still; whatever came since may be left out."""
    then = json.loads((Path(__file__).parent / "case-format-1.json").read_text(encoding="utf-8"))
    now = {}
    for kind in TABLES:
        info = inspect.type_info(kind)
        assert isinstance(info, inspect.StructType)
        now |= {f"{kind.__name__}.{field.encode_name}": field.required for field in info.fields}
    assert set(then) <= set(now)
    assert {key for key, needed in now.items() if needed} <= {key for key, needed in then.items() if needed}
