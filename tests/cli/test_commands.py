"""The command line: what it prints and how it exits."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import msgspec
import pytest
from tests.cases.samples import SOUND, changed

from loadfirst.__main__ import main
from loadfirst.cli.output import CurvesOutput, ReadOutput
from loadfirst.plant import library

PLANT = str(library.path("plants", "rinse-transfer"))


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    """Exit code, what it printed, and what it complained."""
    code = main(list(arguments))
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def as_json(capsys: pytest.CaptureFixture[str], *arguments: str) -> Any:
    """The JSON that a command prints."""
    code, out, err = run(capsys, *arguments, "--json")
    assert (code, err) == (0, "")
    return json.loads(out, parse_constant=pytest.fail)


def test_read_prints_what_an_engineer_asks_for(capsys: pytest.CaptureFixture[str]) -> None:
    """Every instrument with unit and error, duty point, both sides of the balance, power."""
    code, out, err = run(capsys, "read", PLANT)
    assert (code, err) == (0, "")
    instruments = [
        "gauge-suction",
        "gauge-discharge",
        "gauge-after-valve",
        "flow-meter",
        "ammeter-1",
        "tachometer-1",
    ]
    both_sides = ["Duty point", "Load and answer", "control valve", "+ height difference", "+ velocity head"]
    for words in ("Rinse-water transfer", *instruments, *both_sides, "of the motor's rated power", "NPSH"):
        assert words in out
    assert "Notes" not in out
    assert "-0.00" not in out


def test_both_sides_of_the_printed_balance_are_equally_tall(capsys: pytest.CaptureFixture[str]) -> None:
    """What the load asks for, what the machine answers: the same number, twice printed."""
    out = run(capsys, "read", PLANT, "--set", "valve.opening=0.35")[1]
    both = ("  the load asks", "  the pump answers")
    sums = [line.split()[3] for line in out.splitlines() if line.startswith(both)]
    assert len(sums) == 2
    assert sums[0] == sums[1]


def test_json_carries_units_in_its_keys_and_fits_its_schema_type(capsys: pytest.CaptureFixture[str]) -> None:
    """Decoded strictly by the type that the schema is made from."""
    data = as_json(capsys, "read", PLANT)
    output = msgspec.convert(data, ReadOutput)
    assert output.converged
    by_id = {instrument["id"]: instrument for instrument in data["instruments"]}
    assert by_id["gauge-discharge"]["pressure_bar"] == pytest.approx(4.7, abs=0.5)
    assert by_id["gauge-discharge"]["high_bar"] == pytest.approx(6)
    assert by_id["flow-meter"]["flow_m3h"] == pytest.approx(data["duty"]["flow_m3h"])
    assert by_id["tachometer-1"]["speed_rpm"] == pytest.approx(2950, abs=30)
    assert sum(block["head_m"] for block in data["head_breakdown"]) == pytest.approx(data["duty"]["head_m"])
    balance = data["balance"]
    parts = balance["pressure_head_m"] + balance["height_m"] + balance["velocity_head_m"]
    assert parts == pytest.approx(balance["answer_m"])


def test_curves_meet_at_the_duty_point(capsys: pytest.CaptureFixture[str]) -> None:
    """Load and machine, interpolated at the duty flow, give the duty head."""
    data = as_json(capsys, "curves", PLANT, "--points", "400")
    output = msgspec.convert(data, CurvesOutput)
    duty = output.duty
    after = next(at for at, flow in enumerate(output.flow_m3h) if flow >= duty.flow_m3h)
    for column in (output.load_head_m, output.station_head_m):
        near = sorted((column[after - 1] or 0.0, column[after] or 0.0))
        assert near[0] - 1e-6 <= duty.head_m <= near[1] + 1e-6


def test_curves_without_json_are_a_table(capsys: pytest.CaptureFixture[str]) -> None:
    """One row per point under a heading."""
    lines = run(capsys, "curves", PLANT, "--points", "5")[1].splitlines()
    heading = next(at for at, line in enumerate(lines) if "station m" in line)
    assert len([line for line in lines[heading + 1 :] if line.strip()]) == 5 + 1


@pytest.mark.parametrize(
    ("setting", "note"),
    [
        ("valve.opening=0", "minutes at most"),
        ("discharge.attached=false", "never open a flange"),
        ("drive.motor_kw=2", "No motor bears that for long"),
        ("drive.motor_kw=2", "The motor is too small for this pump"),
        ("suction.strainer_k=3000", "it cavitates"),
    ],
)
def test_notes_are_told_in_plain_words(capsys: pytest.CaptureFixture[str], setting: str, note: str) -> None:
    """With the caution where there is one."""
    assert note in " ".join(run(capsys, "read", PLANT, "--set", setting)[1].split())


DEEP = ("surface_m=-25", "bottom_m=-27", "top_m=-23")


@pytest.mark.parametrize(
    ("settings", "place", "advice"),
    [
        (["liquid.temperature_c=100", "site.barometer_bar=0.9"], "supply-surface", "pits the pump"),
        ([f"delivery.{key}" for key in DEEP], "after-valve", "may part here"),
    ],
)
def test_what_to_mind_where_liquid_boils_depends_on_the_place(
    capsys: pytest.CaptureFixture[str], settings: list[str], place: str, advice: str
) -> None:
    """Before the pump its vapour harms the pump; behind it the liquid column parts."""
    args = [part for setting in settings for part in ("--set", setting)]
    notes = as_json(capsys, "read", PLANT, *args)["notes"]
    boiling = {note["where"]: note["text"] for note in notes if note["kind"] == "below-vapour-pressure"}
    assert advice in boiling[place]
    assert all((advice in text) == (where == place) for where, text in boiling.items())


UNITS = ("_m3h", "_m", "_kw", "_percent", "_bar", "_rpm", "_a", "_s", "_nm")
NOTED = {
    "beyond-curve": ["valve.kv_open_m3h=1000", "delivery.surface_m=12", "discharge.bore_mm=300"],
    "dead-headed": ["valve.opening=0"],
    "overload": ["drive.motor_kw=2"],
    "npsh-short": ["suction.strainer_k=3000"],
    "below-vapour-pressure": ["liquid.temperature_c=100", "site.barometer_bar=0.9"],
    "bubbles": ["suction.strainer_k=130", "valve.opening=0.8"],
    "suction-dry": ["pump.centre_m=12.5"],
    "suction-boils": ["pump.model=gear", "suction.strainer_k=90000", "suction.bore_mm=50"],
    "vortex": ["suction.mouth_m=1.9"],
    "reverse-flow": ["check.fitted=false", "drive.frequency_hz=5"],
    "line-off": ["discharge.attached=false"],
    "trips": ["drive.motor_kw=2"],
    "belt-slips": ["drive.belt=v-belt", "drive.belt_tension_percent=20"],
    "start-hangs": ["drive.motor_kw=2", "drive.voltage_percent=60"],
    "low-voltage": ["drive.voltage_percent=85"],
    "phase-lost": ["drive.phases=2"],
    "other-speed": ["drive.poles=8", "delivery.surface_m=2", "delivery.bottom_m=0"],
}


@pytest.mark.parametrize("kind", NOTED)
def test_the_numbers_behind_a_note_have_their_units_in_their_keys(
    capsys: pytest.CaptureFixture[str], kind: str
) -> None:
    """As everything else in the JSON; the sentence beside them is made from the same numbers."""
    settings = [part for setting in NOTED[kind] for part in ("--set", setting)]
    notes = as_json(capsys, "read", PLANT, *settings)["notes"]
    note = next(note for note in notes if note["kind"] == kind)
    assert all(key.endswith(UNITS) for key in note["facts"])
    if kind == "dead-headed":
        assert f"{note['facts']['shaft_power_kw']:.2f} kW" in note["text"]


def test_settings_are_written_as_in_a_file_words_without_quotation_marks_too(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """Several may be given."""
    settings = (
        "--set",
        "pump.model=large",
        "--set",
        "gauges.discharge.range_bar=[0, 10]",
        "--set",
        "check.fitted=false",
    )
    data = as_json(capsys, "read", PLANT, *settings)
    gauge = next(i for i in data["instruments"] if i["id"] == "gauge-discharge")
    assert gauge["high_bar"] == pytest.approx(10)


@pytest.mark.parametrize(
    ("setting", "sentence"),
    [
        ("valve.openning=1", "valve.openning is not a known key. Did you mean valve.opening?"),
        ("valve.opening=1.4", "valve.opening is 1.4, but must be from 0 to 1."),
        (
            "valve.opening=0,3",
            "valve.opening is '0,3', but must be a number from 0 to 1. "
            "Write it with a decimal point and without quotation marks.",
        ),
        (
            "valve.opening",
            "--set is 'valve.opening', but must be of the form key=value. For example valve.opening=0.3",
        ),
        ("valve.opening=1\nx = 2", "valve.opening is '1·x = 2', but must be a number from 0 to 1."),
    ],
)
def test_a_setting_that_cannot_be_used_is_wrong_usage(
    capsys: pytest.CaptureFixture[str], setting: str, sentence: str
) -> None:
    """Exit code 2: the file is sound."""
    assert run(capsys, "read", PLANT, "--set", setting) == (2, "", sentence + "\n")


def test_wrong_usage_exits_with_2(capsys: pytest.CaptureFixture[str]) -> None:
    """No command, no file, an unknown command, too many points."""
    for arguments in ([], ["read"], ["reed", PLANT], ["curves", PLANT, "--points", "1"], ["schema", "x"]):
        with pytest.raises(SystemExit) as left:
            main(arguments)
        assert left.value.code == 2
    capsys.readouterr()


@pytest.mark.native
def test_a_problem_in_the_file_exits_with_1_and_names_the_file(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """A wrong value, wrong syntax, no file at all; nothing on the standard output."""
    wrong = tmp_path / "wrong.toml"
    wrong.write_text(
        'format = 1\ntitle = "x"\n[pump]\nmodel = "small"\n[valve]\nopening = 1.4\n', encoding="utf-8"
    )
    assert run(capsys, "read", str(wrong)) == (
        1,
        "",
        "wrong.toml: valve.opening is 1.4, but must be from 0 to 1.\n",
    )
    wrong.write_text("format 1", encoding="utf-8")
    assert run(capsys, "curves", str(wrong), "--json")[0] == 1
    assert run(capsys, "read", str(tmp_path / "none.toml"))[0] == 1


@pytest.mark.parametrize("command", ["read", "curves"])
def test_a_file_that_is_no_plant_is_called_what_it_is(
    capsys: pytest.CaptureFixture[str], command: str
) -> None:
    """Told by its keys as in the page, with what can be done with it."""
    path = library.path("pumps", library.ids("pumps")[0])
    code, out, err = run(capsys, command, str(path))
    assert (code, out) == (1, "")
    assert err.startswith(f"{path.name}: the file is a pump, but must be a plant. ") and "pump.model" in err


@pytest.mark.native
def test_the_id_of_a_packaged_plant_will_do(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As in a puzzle; a file of that name comes first, and what is neither is told with the nearest id."""
    by_path = run(capsys, "read", str(library.path("plants", "oil-press")))
    assert by_path[0] == 0 and run(capsys, "read", "oil-press") == by_path
    code, out, err = run(capsys, "curves", "oil-pres")
    assert (code, out) == (1, "") and err.startswith("oil-pres: ") and err.endswith("mean oil-press?\n")
    monkeypatch.chdir(tmp_path)
    Path("oil-press").write_bytes(Path(PLANT).read_bytes())
    assert run(capsys, "read", "oil-press")[1] != by_path[1]


@pytest.mark.native
def test_a_puzzle_stands_for_its_plant_as_it_was_yesterday(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """With the edits of its `[yesterday.plant]`; a fault in them is one of the file."""
    puzzle = tmp_path / "mine.toml"
    puzzle.write_text(SOUND, encoding="utf-8")
    known = json.loads(run(capsys, "read", "rinse-transfer", "--set", "valve.opening=0.65", "--json")[1])
    found = json.loads(run(capsys, "read", str(puzzle), "--json")[1])
    assert (found["duty"], found["title"]) == (known["duty"], known["title"])
    again = json.loads(run(capsys, "read", str(puzzle), "--set", "valve.opening=0.3", "--json")[1])
    assert again["duty"]["flow_m3h"] < found["duty"]["flow_m3h"]
    puzzle.write_text(changed(("valve.opening = 0.65", "valve.opening = 6.5")), encoding="utf-8")
    code, out, err = run(capsys, "read", str(puzzle))
    assert (code, out) == (1, "")
    assert err.startswith("mine.toml: yesterday.plant.valve.opening is 6.5, but must be from 0 to 1.")


@pytest.mark.native
def test_a_fault_in_the_file_outranks_a_setting_that_would_mend_it(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """The file is judged first, as it stands."""
    wrong = tmp_path / "wrong.toml"
    wrong.write_text(
        'format = 1\ntitle = "x"\n[pump]\nmodel = "small"\n[valve]\nopening = 1.4\n', encoding="utf-8"
    )
    assert run(capsys, "read", str(wrong), "--set", "valve.opening=1")[0] == 1


@pytest.mark.native
def test_it_runs_as_a_module_even_where_the_terminal_knows_no_superscripts() -> None:
    """The process itself: exit code, and a terminal that has only ASCII."""
    source = str(Path(__file__).parents[2] / "pysrc")
    surroundings = {**os.environ, "PYTHONPATH": source, "PYTHONIOENCODING": "ascii"}
    done = subprocess.run(
        [sys.executable, "-m", "loadfirst", "read", PLANT], env=surroundings, capture_output=True, check=False
    )
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"m?/h" in done.stdout


def test_what_the_liquid_does_not_reach_is_printed_as_such(capsys: pytest.CaptureFixture[str]) -> None:
    """Line off and a slow pump below the flange: no flow is promised, unknown heads are no numbers."""
    plant = str(library.path("plants", "pit-lift"))
    edits = ["--set", "discharge.attached=false", "--set", "drive.frequency_hz=5"]
    out = run(capsys, "read", plant, *edits)[1]
    assert "the liquid does not get here: 2.40 m of head are missing" in out
    assert "= pressure head             undefined" in out
    assert "much flow" not in out and "never open a flange" in out
