"""``check``: whether an author's files hold."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.cases.samples import SOUND, changed
from tests.cases.test_fairness import BLIND

from loadfirst.__main__ import main
from loadfirst.cli.check import files
from loadfirst.plant import library

PLANT = 'format = 1\ntitle = "Mine"\n[pump]\nmodel = "small"\n'
PACKAGED = [
    str(library.path(shelf, name)) for shelf in ("plants", "pumps", "cases") for name in library.ids(shelf)
]


def check(capsys: pytest.CaptureFixture[str], *files: object) -> tuple[int, str, str]:
    """Exit code, what it printed, and what it complained."""
    code = main(["check", *(str(file) for file in files)])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def written(folder: Path, name: str, text: str) -> Path:
    """A file with that text."""
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_every_packaged_file_holds(capsys: pytest.CaptureFixture[str]) -> None:
    """All of them in one call, each told by its keys, none by its folder."""
    code, out, err = check(capsys, "--claims", *PACKAGED)
    assert (code, err) == (0, "")
    kinds = {"plants": "a plant", "pumps": "a pump", "cases": "a puzzle"}
    for file in map(Path, PACKAGED):
        assert f"{file.name}: {kinds[file.parent.name]}, " in out


@pytest.mark.native
def test_a_puzzle_is_printed_with_every_verdict_and_its_proof(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """The right one is derived; each claim of the proof stands beside both days' readings."""
    code, out, err = check(capsys, "--claims", written(tmp_path, "mine.toml", SOUND))
    assert (code, err) == (0, "")
    lines = [" ".join(line.split()) for line in out.splitlines()]
    assert lines[0] == "mine.toml: a puzzle, A made-up morning. It holds."
    assert lines[1] == "happened valve-opened 0.6 (discharge-side, load lighter)"
    assert lines[2] == "what differs valve.opening"
    assert lines[3:6] == [
        "wrong worn (worn)",
        "right lighter (discharge-side, load lighter)",
        "right group heavier (discharge-side, load heavier)",
    ]
    assert lines[6].startswith("falls gauge-discharge, 4.73 bar yesterday, ")
    assert lines[7].startswith("rises flow-meter, 27.2 m³/h yesterday, ")


@pytest.mark.native
def test_what_play_refuses_and_what_holds_too_seldom_is_told(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """Beside the figures, which are printed all the same; the faults follow, each with its place."""
    basket = changed(
        ('observes = "gaps-measured"', 'observes = "gaps-measured"\nisolated = false'),
        ("size = 0.6", "between = [0.004, 0.6]"),
    )
    code, out, err = check(capsys, "--claims", written(tmp_path, "mine.toml", basket))
    assert code == 1
    assert out.startswith("mine.toml: a puzzle, A made-up morning. It holds with its own seed.\n")
    assert "\n  refused        in play: open-it, which opens something under pressure\n" in out
    assert re.search(r"\n  other seeds    claims hold in at least \d+% of the draws", out)
    assert "but must be what holds in 80% of the draws, whatever the size" in err
    assert err.startswith("mine.toml: proof.") and "with valve-opened 0.004" in err


@pytest.mark.native
def test_a_puzzle_is_called_fair_in_plain_words_or_not(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """The last line says which; a puzzle whose cheap checks tell too little is not."""
    code, out, err = check(capsys, written(tmp_path, "mine.toml", SOUND))
    assert (code, err) == (0, "")
    assert out.splitlines()[-1].startswith("  Fair: the truth can be found")
    code, out, err = check(capsys, written(tmp_path, "mine.toml", BLIND))
    assert code == 1 and err.startswith("mine.toml: checks is '0.")
    assert out.splitlines()[-1].startswith("  Not fair yet. To be mended, as told for each: checks")


PROOF = changed(('flow-meter = "rises"', 'flow-meter = "falls"'))


UNSEEN = "choices[0].when_unseen.flow-meter"


@pytest.mark.native
@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        (PROOF, "proof.flow-meter is 'falls', but must be what is computed: rises (from 27."),
        (changed(('load = "lighter"', 'load = "heavier"')), "choices is 'worn, discharge-side"),
        (changed(("size = 0.6", "size = 0.0001")), "today is 'valve-opened', but must be such that"),
        (changed(("size = 0.6", "size = 1.6")), "today[0].size is 1.6, but must be from 0 to 1."),
        (changed(("it is {today.flow-meter}", "it is 42 m³/h")), "choices[0].reply is '"),
        (changed(("reads = [", "reeds = [")), "checks[0].reeds is not a known key. Did you mean"),
        (PLANT + "[valve]\nopening = 1.4\n", "valve.opening is 1.4, but must be from 0 to 1."),
        ("format = 1\nmotor_kw = 4\nflow_m3h = [0, 1]\n", "flow_m3h"),
        ("format 1", "line 1, column 8"),
        (PLANT.replace("Mine", "\u202eeniM"), "title is '·eniM', but must be without"),
        (changed(("A made-up morning", " ")), "title is ' ', but must be without braces, not empty"),
        (
            changed(("You left the flow", "You \u2067left the flow")),
            f"{UNSEEN} is 'You ·left the flow meter alone.',",
        ),
        ("", "format is not there"),
    ],
)
def test_a_file_that_does_not_hold_is_named_with_the_place(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, text: str, complaint: str
) -> None:
    """Exit code 1; the files beside it are answered all the same."""
    bad, good = written(tmp_path, "bad.toml", text), written(tmp_path, "good.toml", PLANT)
    code, out, err = check(capsys, bad, good)
    assert code == 1
    assert err.startswith(f"bad.toml: {complaint}") and err.count("\n") == 1
    assert out.startswith("good.toml: a plant, Mine. ")


@pytest.mark.native
def test_a_file_that_is_not_there_is_a_problem_of_the_file(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """As with the other commands."""
    assert check(capsys, tmp_path / "none.toml")[0] == 1


AFTER = 'teller = "machine"\n'


BESIDE = "the id of a case beside it, or of one that comes with the program. Did you mean second?"
ONE_FIRST = "such that one of them comes first. Now it is first after"


@pytest.mark.native
@pytest.mark.parametrize(
    ("first", "second", "complaint"),
    [
        ("secnod", "the-dropped-gauge", BESIDE),
        ("second", "first", f"{ONE_FIRST} second after first."),
        ("first", "the-dropped-gauge", f"{ONE_FIRST} first."),
    ],
)
def test_an_order_that_cannot_be_is_told_of_a_folder(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, first: str, second: str, complaint: str
) -> None:
    """A case that is not there, two that wait for each other, one for itself; of a file alone nothing."""
    for name, before in (("first", first), ("second", second)):
        written(tmp_path, f"{name}.toml", changed((AFTER, f'{AFTER}after = ["{before}"]\n')))
    code, out, err = check(capsys, "--claims", tmp_path)
    assert (code, err) == (1, f"first.toml: after[0] is '{first}', but must be {complaint}\n")
    assert out.count("It holds.") == 2
    assert check(capsys, "--claims", tmp_path / "first.toml")[0] == 0


def test_check_without_a_file_is_wrong_usage(capsys: pytest.CaptureFixture[str]) -> None:
    """Exit code 2."""
    with pytest.raises(SystemExit) as left:
        check(capsys)
    assert left.value.code == 2
    capsys.readouterr()


@pytest.mark.native
def test_a_folder_without_files_is_not_called_sound(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """Nothing was checked, so it is not good."""
    code, out, err = check(capsys, tmp_path)
    assert (code, out) == (1, "") and "the folder is 'empty'" in err


READINGS = "format = 1\n[today]\ngauge-discharge_bar = 4.2\n[yesterday]\ngauge-discharge_bar = 4.0\n"


@pytest.mark.native
def test_readings_are_called_what_they_are_and_passed_over_in_a_folder(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """They share a few keys with puzzles; whoever names the file meant it to be judged."""
    file = written(tmp_path, "morning.toml", READINGS)
    code, out, err = check(capsys, file)
    assert (code, out) == (1, "")
    assert err == (
        "morning.toml: the file is of readings, but must be a plant, a pump or a puzzle. "
        "Weigh them with `evidence PLANT morning.toml`.\n"
    )
    written(tmp_path, "mine.toml", PLANT)
    code, out, err = check(capsys, tmp_path)
    assert (code, err) == (0, "")
    assert out.splitlines()[1] == "morning.toml: readings for `evidence`; passed over."
    single = SOUND.replace("[[today]]", "[today]")
    assert "Write [[today]]" in check(capsys, written(tmp_path, "single.toml", single))[2]


def test_pieces_of_puzzles_are_no_files_of_their_own() -> None:
    """A folder that holds them can be checked all the same."""
    found = files([library.folder("cases").parent])
    assert library.path("plants", "rinse-transfer") in found
    assert not [path for path in found if path.parent.name == "compose"]
