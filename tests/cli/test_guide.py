"""The author's guide says what the types say."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from loadfirst.__main__ import main
from loadfirst.cli.guide import filled, guide
from loadfirst.plant.keys import keys_of
from loadfirst.plant.plant import DisplacementFile, Plant, PumpFile
from loadfirst.plant.read import resolve_data
from loadfirst.plant.toml_text import parse

GUIDE = Path(__file__).parents[2] / "scenarios" / "AUTHORS.md"


@pytest.mark.native
def test_the_guides_tables_are_those_that_the_types_make() -> None:
    """To mend it, put the output of ``python -m loadfirst guide plant`` (or pump) between its marks."""
    text = GUIDE.read_text(encoding="utf-8")
    assert text == filled(text)


@pytest.mark.native
def test_the_guide_has_its_marks() -> None:
    """Without them the test above would compare nothing."""
    text = GUIDE.read_text(encoding="utf-8")
    for mark in (
        "keys of a plant file",
        "keys of a pump file",
        "keys of a displacement file",
        "specimen plant",
    ):
        assert f"<!-- {mark} -->" in text


@pytest.mark.native
def test_the_specimen_is_a_plant_that_runs() -> None:
    """What authors copy works."""
    specimen = re.search(r"```toml\n(format = 1\n.*?)```", GUIDE.read_text(encoding="utf-8"), re.DOTALL)
    assert specimen
    assert resolve_data(parse(specimen[1], "specimen.toml")).plant.title == "Rinse-water transfer"


@pytest.mark.parametrize(
    ("kind", "type_"), [("plant", Plant), ("pump", PumpFile), ("displacement", DisplacementFile)]
)
def test_every_key_has_a_row(kind: str, type_: type) -> None:
    """With its unit, range, default and meaning; the points of a plant's pump are those of a pump file."""
    rows = guide(kind).splitlines()
    for path, key in keys_of(type_).items():
        if not path.startswith(("pump.curve.", "pump.displacement.")):
            start = f"| `{path.rpartition('.')[2]}` |"
            assert any(
                row.startswith(start) and key.says in row and key.expected.text in row for row in rows
            ), path


def test_the_command_prints_the_tables(capsys: pytest.CaptureFixture[str]) -> None:
    """For whoever mends the guide."""
    assert main(["guide", "pump"]) == 0
    assert capsys.readouterr().out.strip() == guide("pump")
