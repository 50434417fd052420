"""The command that prints the catalogue of causes and what each does to a plant."""

from __future__ import annotations

import csv
from io import StringIO
from pathlib import Path

import pytest

from loadfirst.__main__ import main
from loadfirst.cases.read import packaged
from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.causes.signature import CHIEF
from loadfirst.plant import library
from loadfirst.plant.read import read_resolved

pytestmark = pytest.mark.native  # reads files

PLANTS = Path(__file__).parents[1] / "causes" / "plants"


def test_the_command_prints_every_cause_and_a_table(capsys: pytest.CaptureFixture[str]) -> None:
    """With what shows it, and a row each: what moved, or why it cannot happen."""
    assert main(["causes"]) == 0
    printed = capsys.readouterr().out
    catalogue, table = printed.split("Rinse-water transfer")
    assert all(f"  {one.id}: {one.says}\n" in catalogue for one in CAUSES)
    assert all(f"{id}: {seen.says}" in catalogue for id, seen in OBSERVATIONS.items())
    rows = {line.split()[0] for line in table.splitlines() if line.startswith("  ")}
    assert rows == {"cause", *(one.id for one in CAUSES)}
    assert "cannot happen here: there is no second user" in table
    assert "licensed practice" in table


def test_another_plant_can_be_named(capsys: pytest.CaptureFixture[str]) -> None:
    """A file that is none is answered as everywhere."""
    assert main(["causes", "--plant", str(PLANTS / "reference.toml")]) == 0
    printed = capsys.readouterr().out
    worn = next(line for line in printed.splitlines() if line.startswith("  worn  "))
    assert worn.split()[:4] == ["worn", "10", "%", "(+4.1"]
    assert next(line for line in printed.splitlines() if line.startswith("  air-leak  ")).endswith("hunting")
    assert main(["causes", "--plant", "nowhere.toml"]) == 1
    capsys.readouterr()
    assert main(["causes", "--plant", str(library.path("pumps", "medium"))]) == 1
    assert "the file is a pump, but must be a plant." in capsys.readouterr().err


def test_a_packaged_plant_is_named_by_its_id_and_a_puzzle_by_its_file(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """The puzzle stands for its plant, edited as its yesterday says."""
    assert main(["causes", "--plant", "oil-press"]) == 0
    assert "Warm oil at an oil press\n" in capsys.readouterr().out
    case = packaged("the-dropped-gauge")
    assert isinstance(case.plant, str)
    assert main(["causes", "--plant", str(library.path("cases", "the-dropped-gauge"))]) == 0
    title = library.data("plants", case.plant)["title"]
    assert f"\n{title}\n" in capsys.readouterr().out


def test_the_table_as_comma_separated_values(capsys: pytest.CaptureFixture[str]) -> None:
    """Every quantity of every cause that can happen, with size, direction and whether a person can tell."""
    assert main(["causes", "--plant", str(PLANTS / "reference.toml"), "--csv"]) == 0
    rows = list(csv.DictReader(StringIO(capsys.readouterr().out)))
    plant = read_resolved(PLANTS / "reference.toml")
    assert {row["cause"] for row in rows} == {one.id for one in CAUSES if one.applies(plant) is None}
    of_wear = {row["quantity"]: row for row in rows if row["cause"] == "worn"}
    assert set(of_wear) >= {*CHIEF, "after-valve", "speed", "level-supply", "level-delivery"}
    assert (of_wear["head"]["direction"], of_wear["head"]["told"], of_wear["head"]["unit"]) == (
        "-",
        "yes",
        "m",
    )
    assert float(of_wear["flow"]["percent"]) == pytest.approx(-3.8, abs=0.9)  # the independent model's
    assert of_wear["level-supply"]["direction"] == "0"
    thin = next(row for row in rows if row["cause"] == "denser-liquid" and row["quantity"] == "flow")
    assert (thin["direction"] != "0", thin["told"]) == (True, "no")
