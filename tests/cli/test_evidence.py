"""The command that weighs causes against readings in a file."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest
from tests.evidence.looks import predictions

from loadfirst.__main__ import main
from loadfirst.evidence.readings_file import UNITS, read_readings
from loadfirst.evidence.weigh import row, weigh
from loadfirst.plant import library

pytestmark = pytest.mark.native  # reads files

GUIDE = Path(__file__).parents[2] / "scenarios" / "AUTHORS.md"
PLANT = library.path("plants", "rinse-transfer")
TEXT = GUIDE.read_text(encoding="utf-8")
SECTION = TEXT.split("## Readings of two days")[1].split("\n## ")[0]
SPECIMEN = re.search(r"```toml\n(.*?)```", SECTION, re.DOTALL)[1]  # type: ignore[index]
SUCTION = "gauge-suction_bar = 0.07"


def written(folder: Path, text: str) -> Path:
    """A file of readings."""
    path = folder / "readings.toml"
    path.write_text(text, encoding="utf-8")
    return path


def run(capsys: pytest.CaptureFixture[str], path: Path, *more: str) -> tuple[int, str, str]:
    """Exit code, what it printed, and what it complained."""
    code = main(["evidence", str(PLANT), str(path), *more])
    told = capsys.readouterr()
    return code, told.out, told.err


def test_the_guides_specimen_is_explained(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A blocked strainer, or its twin: the group, the pump's health, and the basket among the checks."""
    code, out, err = run(capsys, written(tmp_path, SPECIMEN))
    assert (code, err) == (0, "")
    where = out.split("Where it sits")[1].split("\n\n")[0]
    assert where.split("\n")[1].split()[2] == "suction-side"
    first = out.split("What explains the readings")[1].splitlines()[1]
    assert re.search(r"strainer-blocked|suction-valve-half-shut", first)
    assert "hydraulically healthy" in out
    assert "strainer-basket" in out.split("Checks that would tell most")[1]
    assert "licensed practice" in out
    assert "does not fit" not in out


def test_the_guide_names_every_unit() -> None:
    """And the code knows every one that it names."""
    named = set(re.findall(r"`_(\w+)`", SECTION))
    assert named == {unit for units in UNITS.values() for unit in units}


def test_other_units_say_the_same(tmp_path: Path) -> None:
    """Pressures in kPa and psi, flows in l/s and l/min, levels in millimetres: the same probabilities."""
    found = predictions("rinse-transfer")
    files = (
        "gauge-discharge_bar = 4.3\nflow-meter_m3h = 36.0\nlevel-supply_m = 2.01\n",
        "gauge-discharge_kpa = 430\nflow-meter_ls = 10\nlevel-supply_mm = 2010\n",
        "gauge-discharge_psi = 62.366228\nflow-meter_lmin = 600\nlevel-supply_m = 2.01\n",
        "gauge-discharge_mpa = 0.43\nflow-meter_m3s = 0.01\nlevel-supply_m = 2.01\n",
    )
    each = []
    for readings in files:
        taken = read_readings(written(tmp_path, f"format = 1\n[today]\n{readings}"), found.scales)
        each.append(weigh(found, row(found, taken.today)).probability[0])
    for other in each[1:]:
        assert other == pytest.approx(each[0], rel=1e-4, abs=1e-12)
    assert np.ptp(each[0]) > 0.05


@pytest.mark.parametrize(
    ("change", "complaint"),
    [
        ((SUCTION, "gauge-suktion_bar = 0.07"), "today.gauge-suktion_bar is not a known key. Did"),
        ((SUCTION, "gauge-suction = 0.07"), "Did you mean gauge-suction_"),
        ((SUCTION, "gauge-suction_bar = nan"), "today.gauge-suction_bar is nan"),
        ((SUCTION, f"gauge-suction_bar = {10**400}"), "today.gauge-suction_bar is a number of very many"),
        ((SUCTION, "gauge-suction_bar = 0.07\ngauge-suction_kpa = 7"), "has been given already"),
        (("near-vent = false", "near-went = false"), "seen is 'near-went', but must be known here."),
        (("near-vent = false", "near-vent = 3"), "seen.near-vent is 3, but must be true or false"),
        ((SUCTION, "gauge-suction_bar = 'low'"), "today.gauge-suction_bar is 'low', but must be a number"),
        (("format = 1", "format = 1\nreplaced = ['gauge']"), "replaced is 'gauge'"),
        (("format = 1", "format = 2"), "format is 2"),
        (("[today]", "[tomorrow]"), "tomorrow"),
    ],
)  # fmt: skip
def test_mistakes_are_told_with_file_and_place(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, change: tuple[str, str], complaint: str
) -> None:
    """What it was, what would do."""
    text = "".join(SPECIMEN.rpartition("[today]")[1:]) if change[0] == "[today]" else SPECIMEN
    head, mark, tail = text.rpartition(change[0])
    assert mark
    code, out, err = run(capsys, written(tmp_path, f"{head}{change[1]}{tail}"))
    assert (code, out) == (1, "")
    assert err.startswith("readings.toml: ") and complaint in err


def test_yesterdays_reading_that_does_not_fit_is_told(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """The plant's file says another thing than the ammeter did."""
    odd = SPECIMEN.replace("ammeter-1_a = 11.5", "ammeter-1_a = 14.0", 1)
    assert "Yesterday's ammeter-1 does not fit" in run(capsys, written(tmp_path, odd))[1]


def test_a_cause_can_be_weighed_with_every_other(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A gauge that was knocked, and the strainer: the pair leads; an unknown cause is refused."""
    both = re.sub(r"(\[today\].*?gauge-discharge_bar = )4\.30", r"\g<1>3.50", SPECIMEN, flags=re.DOTALL)
    plain = run(capsys, written(tmp_path, both))[1]
    assert "is not explained: perhaps two causes" in plain
    code, out, _ = run(capsys, written(tmp_path, both), "--with", "gauge-zero-off")
    first = out.split("What explains the readings")[1].splitlines()[1]
    assert code == 0 and "gauge-zero-off + " in first
    for other in ("gremlins", "nothing"):
        assert run(capsys, written(tmp_path, both), "--with", other)[0] == 2


def test_little_is_told_from_little(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """One reading leaves the curve unknown and says what is missing; none at all is an empty table."""
    one = "format = 1\n[today]\ngauge-discharge_bar = 6.0\n"
    out = run(capsys, written(tmp_path, one))[1]
    assert "on the upper stop" in out and "cannot be judged: gauge-suction was not read" in out
    code, out, _ = run(capsys, written(tmp_path, "format = 1\n[today]\n"))
    assert code == 0 and "Checks that would tell most" in out
