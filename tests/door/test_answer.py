"""The live answer holds together: its parts say the same thing."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

import loadfirst
from loadfirst.door.answer import answer
from loadfirst.door.catalogue import catalogue
from loadfirst.door.messages import AnswerAsk
from loadfirst.plant import toml_text

PACKAGE = str(Path(loadfirst.__file__).parents[1])
EDITS: dict[str, dict[str, Any]] = {
    "as it stands": {},
    "valve shut": {"valve.opening": 0},
    "line off": {"discharge.attached": False},
    "slow": {"drive.frequency_hz": 12},
    "60 Hz": {"drive.supply_hz": 60},
    "side by side": {"pump.arrangement": "side-by-side", "pump.model": "small"},
    "in line": {"pump.arrangement": "in-line", "pump.model": "large"},
}


@pytest.fixture(params=EDITS, name="body")
def _body(request: pytest.FixtureRequest) -> Any:
    return answer(AnswerAsk(plant="rinse-transfer", edits=EDITS[request.param], curve_points=21))


def test_the_stack_is_as_tall_as_the_machines_answer(body: Any) -> None:
    """What the load asks for and what the machine answers are one head."""
    asked = sum(block["head"] for block in body["stack"])
    assert asked == pytest.approx(body["state"]["station"]["head"], abs=1e-6)


def test_the_balance_closes(body: Any) -> None:
    """Pressure, height and velocity heads and the check valves between add up to the answer."""
    parts = body["state"]["balance"]
    total = sum(parts[name] for name in ("pressure_head", "height", "velocity_head", "check_valve"))
    assert total == pytest.approx(parts["answer"], abs=1e-9)


def test_the_curves_are_columns_of_one_length(body: Any) -> None:
    """Null where a curve does not reach; beside them stand single flows where the pump gets short of NPSH."""
    columns = {name: column for name, column in body["curves"].items() if name != "npsh"}
    assert {len(column) for column in columns.values()} == {len(body["curves"]["flow"])}
    assert set(body["curves"]["npsh"]) == {"begins", "bubbles_surely", "bubbles_first", "boils"}


def test_state_and_readings_are_two_things(body: Any) -> None:
    """The truth carries no readings, the readings no truth but their own value."""
    assert "shown" not in body["state"]
    about = {"accuracy", "off_scale", "uncertainty", "repeatability"}
    assert set(body["shown"][0]) == {"id", "quantity", "value", "low", "high"} | about


def test_the_drive_is_told_in_full(body: Any) -> None:
    """The page's sliders need numbers where the file says nothing."""
    drive = body["plant"]["drive"]
    assert drive["frequency_hz"] > 0
    assert drive["motor_kw"] > 0


def test_60_hertz_moves_the_drive_along_where_nothing_else_is_said() -> None:
    """Only a frequency that was asked for stays."""
    edits = {"drive.supply_hz": 60}
    assert answer(AnswerAsk(plant="rinse-transfer", edits=edits))["plant"]["drive"]["frequency_hz"] == 60
    edits["drive.frequency_hz"] = 45
    assert answer(AnswerAsk(plant="rinse-transfer", edits=edits))["plant"]["drive"]["frequency_hz"] == 45


def test_a_drag_reads_no_file_again(monkeypatch: pytest.MonkeyPatch) -> None:
    """Plant and pump are read once; every further answer is computed from memory."""
    ask = AnswerAsk(plant="rinse-transfer", edits={"valve.opening": 0.3})
    first = answer(ask)
    monkeypatch.setattr(toml_text, "read", lambda path: pytest.fail(f"read {path}"))
    assert answer(ask) == first


@pytest.mark.native
def test_the_first_reading_waits_for_nothing_that_it_does_not_need() -> None:
    """Typing for numpy, the speller and the puzzles come later, or never: a phone counts each of them."""
    import subprocess
    import sys

    ask = '{"v": 1, "id": 1, "kind": "answer", "body": {"plant": "rinse-transfer"}}'
    late = ("numpy.typing", "difflib", "loadfirst.cases", "loadfirst.door.catalogue")
    script = (
        f"import sys; from loadfirst.door.handle import handle; assert '\"ok\":true' in handle({ask!r}); "
    )
    script += f"print([name for name in {late!r} if name in sys.modules])"
    told = subprocess.run(
        [sys.executable, "-c", script], env={"PYTHONPATH": PACKAGE}, capture_output=True, text=True
    )
    assert told.stdout.strip() == "[]", told.stderr


def test_the_catalogue_lists_plants_pumps_and_cases() -> None:
    """Each by its id, with a title to show; pumps from the smallest motor up."""
    listed = catalogue()
    assert [pump["id"] for pump in listed["pumps"]] == [
        "small",
        "drooping",
        "gear",
        "axial",
        "lobe",
        "medium",
        "mixed",
        "screw",
        "large",
    ]
    assert "rinse-transfer" in [plant["id"] for plant in listed["plants"]]
    assert all(case["id"] and case["title"] and case["level"] for case in listed["cases"])
    assert listed["cases"]


def test_the_catalogue_gives_the_range_of_every_control() -> None:
    """In file units, as the file's decoder has them."""
    limits = catalogue()["limits"]
    assert limits["valve.opening"] == {"unit": "-", "low": 0, "high": 1, "default": 0.6}
    assert limits["drive.poles"] == {"choices": [2, 4, 6, 8], "default": 2}
    assert limits["drive.frequency_hz"]["high"] == 75
