"""``compose``: puzzles from a seed, as files."""

from __future__ import annotations

from pathlib import Path

import pytest

from loadfirst.__main__ import main

WISH = ["--plant", "rinse-transfer", "--group", "discharge-side", "--level", "first-steps"]


@pytest.mark.native
def test_files_are_written_that_hold(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """One for each seed, named on the standard output; the share, and why others did not, on the other."""
    folder = tmp_path / "made"
    code = main(["compose", "--seed", "6", "--count", "2", "--explain", "-o", str(folder), *WISH])
    out, err = capsys.readouterr()
    wished = "practice-rinse-transfer-discharge-side-first-steps"
    files = [folder / f"{wished}-{seed}.toml" for seed in (6, 7)]
    assert (code, out.split()) == (0, [str(file) for file in files])
    *refused, last = err.splitlines()
    assert last.startswith(f"2 of {2 + len(refused)} draws made a puzzle")
    assert all(": draw " in line and " refused: " in line for line in refused)
    assert main(["check", "--claims", *map(str, files)]) == 0


def test_a_wrong_wish_is_wrong_usage(capsys: pytest.CaptureFixture[str]) -> None:
    """An unknown plant is said as everywhere, a seed out of range by the command line itself."""
    assert main(["compose", "--seed", "5", "--plant", "no-such-plant"]) == 2
    assert "no-such-plant" in capsys.readouterr().err
    with pytest.raises(SystemExit):
        main(["compose", "--seed", "0"])
    assert "whole number from 1 to 999999" in capsys.readouterr().err
