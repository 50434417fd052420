"""A pump is found beside the plant's file, then in ../pumps, then among the packaged ones."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from tests.plants import LEAST

from loadfirst.errors import FileError, InputError
from loadfirst.plant import library
from loadfirst.plant.pumps import find_pump, resolve_pump
from loadfirst.plant.read import decode_plant, read_resolved, resolve_data

POINTS = """
format = 1
title = "{title}"
motor_kw = 3
flow_m3h = [0, 10, 20]
head_m = [30, 28, 23]
efficiency_percent = [0, 50, 65]
npshr_m = [1, 1, 2]
"""

PLANT = 'format = 1\ntitle = "A test stand"\n[pump]\nmodel = "{model}"\n'


def named(model: str) -> dict[str, Any]:
    """The least plant, its pump named."""
    return {**LEAST, "pump": {"model": model}}


def test_the_three_packaged_sizes_are_found_without_a_folder() -> None:
    """What the page knows."""
    titles = [resolve_data(named(model)).curve.title for model in ("small", "medium", "large")]
    assert [title.split()[0] for title in titles] == ["Small", "Medium", "Large"]


def test_points_in_the_plant_need_no_file() -> None:
    """[pump.curve] is used as it stands."""
    assert resolve_pump(decode_plant(LEAST)).head_m == (30, 28, 23, 14)


@pytest.mark.native
def test_the_nearest_file_wins(tmp_path: Path) -> None:
    """Beside the plant before ../pumps, that before the packaged one of the same name."""
    plants, pumps = tmp_path / "plants", tmp_path / "pumps"
    plants.mkdir()
    pumps.mkdir()
    plant = plants / "mine.toml"
    plant.write_text(PLANT.format(model="medium"), encoding="utf-8")
    assert read_resolved(plant).curve.title.startswith("Medium pump")
    (pumps / "medium.toml").write_text(POINTS.format(title="next door"), encoding="utf-8")
    assert read_resolved(plant).curve.title == "next door"
    (plants / "medium.toml").write_text(POINTS.format(title="beside"), encoding="utf-8")
    assert read_resolved(plant).curve.title == "beside"


@pytest.mark.parametrize(
    "model",
    ["../pumps/medium", "/etc/passwd", "medium.toml", "..", "", "Medium", "a/b", "medium\n", "x" * 61],
)
def test_a_name_that_is_no_id_is_never_made_into_a_path(model: str) -> None:
    """A stranger's file may not reach other files."""
    assert not library.is_id(model)
    with pytest.raises(InputError) as caught:
        find_pump(model, Path("."))
    assert caught.value.rule == "lookup"


def test_a_misspelt_pump_gets_the_nearest_known_one() -> None:
    """Known pumps are listed, the nearest is offered."""
    with pytest.raises(InputError) as caught:
        resolve_data(named("medum"))
    assert caught.value.text == (
        "pump.model is 'medum', but must be the id of a pump: axial, drooping, gear, large, lobe, medium, "
        "mixed, screw or small. "
        "Did you mean medium?"
    )


def test_a_pump_nobody_knows_gets_the_way_out() -> None:
    """A file opened in the page sees only packaged pumps: the points go into the plant."""
    with pytest.raises(
        FileError, match=r"mine.toml: pump.model .*Or give the pump's points in a table \[pump.curve\]"
    ):
        resolve_data(named("seventeen"), "mine.toml")


@pytest.mark.native
def test_a_fault_in_a_pump_file_names_that_file(tmp_path: Path) -> None:
    """Not the plant's file, which is sound."""
    plant = tmp_path / "mine.toml"
    plant.write_text(PLANT.format(model="own"), encoding="utf-8")
    (tmp_path / "own.toml").write_text(POINTS.format(title="x").replace("28", "30"), encoding="utf-8")
    with pytest.raises(
        FileError, match=r"^own.toml: head_m\[1\] is 30.0, but must be below the one before it"
    ):
        read_resolved(plant)
