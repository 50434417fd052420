"""`pip install .`: the same physics as an ordinary package, with the packaged plants beside it."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

REPO = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel that pip makes of this clone."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [
        sys.executable,
        "-m",
        "pip",
        "wheel",
        "--quiet",
        "--no-deps",
        "--no-build-isolation",
        "--no-index",
    ]
    done = subprocess.run([*command, "--wheel-dir", str(folder), str(REPO)], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return next(folder.glob("loadfirst-*.whl"))


def test_the_wheel_holds_the_package_its_types_and_its_scenarios(wheel: Path) -> None:
    """And neither the tool nor the tests."""
    names = zipfile.ZipFile(wheel).namelist()
    assert "loadfirst/py.typed" in names
    assert {"loadfirst/scenarios/plants/rinse-transfer.toml", "loadfirst/scenarios/pumps/medium.toml"} <= set(
        names
    )
    assert {name.split("/")[0].split("-")[0] for name in names} == {"loadfirst"}


def test_the_installed_package_reads_a_packaged_plant_from_anywhere(wheel: Path, tmp_path: Path) -> None:
    """Installed on its own, started in another folder, with nothing of the clone on its path."""
    target = tmp_path / "installed"
    command = [
        sys.executable,
        "-m",
        "pip",
        "install",
        "--quiet",
        "--no-deps",
        "--no-index",
        "--target",
        str(target),
    ]
    subprocess.run([*command, str(wheel)], check=True)
    own = tmp_path / "own.toml"
    own.write_text('format = 1\ntitle = "Mine"\n[pump]\nmodel = "medium"\n')
    told = subprocess.run(
        [sys.executable, "-m", "loadfirst", "read", str(own)],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(target)},
        capture_output=True,
        text=True,
    )
    assert told.returncode == 0, told.stderr
    assert "Mine" in told.stdout
