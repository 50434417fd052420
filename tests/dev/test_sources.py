"""What must not stand in any tracked file, and what must stand in one place only."""

from __future__ import annotations

import re
import subprocess
import tomllib
from pathlib import Path

from loadfirst_dev.pins import read_pins

REPO = Path(__file__).parents[2]
# Put together here, so that this file does not hold what it looks for.
HOSTS = [
    f"{name}.{end}"
    for name, end in (("pypi", "org"), ("pythonhosted", "org"), ("npmjs", "org"), ("jsdelivr", "net"))
]
MACHINE_PATHS = re.compile(r"(?<![\w.])/(?:" + "|".join(("work", "root", "home", "Users")) + r")/\w")
ALLOWED_TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "site", "pysrc", "tests", "scenarios"}


def tracked() -> list[Path]:
    """Files that git knows, as far as they are text."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=REPO, capture_output=True, check=True).stdout
    return [REPO / name for name in listed.decode().split("\0") if name and (REPO / name).is_file()]


def text(path: Path) -> str:
    """A file's text; nothing where it is none."""
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return ""


def test_no_file_names_a_package_registry() -> None:
    """Only the registries' own clients talk to them."""
    for path in tracked():
        assert [host for host in HOSTS if host in text(path)] == [], path


def test_no_file_names_a_place_on_somebodys_machine() -> None:
    """A clone works wherever it lies."""
    for path in tracked():
        assert MACHINE_PATHS.findall(text(path)) == [], path


def test_nothing_stands_outside_the_known_top_level() -> None:
    """One look at the root shows the whole project; hidden files are for tools."""
    tops = {path.relative_to(REPO).parts[0] for path in tracked()}
    assert {top for top in tops if not top.startswith(".")} <= ALLOWED_TOP


def test_nothing_that_a_command_makes_is_tracked() -> None:
    """Built files, environments and caches are made anew."""
    made = (".venv/", ".built/", ".shots/", ".cache/", "__pycache__/", "node_modules/")
    for path in tracked():
        name = path.relative_to(REPO).as_posix()
        assert not any(part in name for part in made), name


def test_versions_of_the_runtime_stand_in_the_pins_alone() -> None:
    """No other file repeats the version of Pyodide or a wheel's hash."""
    pins = read_pins()
    secrets = [pins.pyodide["version"], *(file.sha256 for file in pins.files)]
    for path in tracked():
        if path.name != "pins.toml":
            assert [secret for secret in secrets if secret in text(path)] == [], path


def test_the_tests_use_the_numpy_that_the_browser_uses() -> None:
    """Native and browser answers are only comparable with equal versions."""
    pins = read_pins()
    for part in ("numpy", "msgspec"):
        assert f"{part}=={pins.parts[part].version}" in pins.environment
        assert f"-{pins.parts[part].version}-" in pins.of_part(part).name
    for file in pins.group("tests"):
        assert file.requirement in pins.environment


def test_the_test_command_of_ci_is_the_documented_one() -> None:
    """`.ci/run` does what the README says, and nothing else."""
    lines = [line for line in text(REPO / ".ci" / "run").splitlines() if not line.startswith("#")]
    assert [line.split("exec ")[-1] for line in lines] == ["python3 pysrc/loadfirst_dev test"]


def test_the_package_needs_no_more_than_the_live_path() -> None:
    """scipy and matplotlib are extras."""
    project = tomllib.loads(text(REPO / "pyproject.toml"))["project"]
    assert {re.split(r"[<>=]", need)[0] for need in project["dependencies"]} == {"numpy", "msgspec"}
    assert set(project["optional-dependencies"]) == {"evidence", "sheets"}
