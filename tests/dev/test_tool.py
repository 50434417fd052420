"""The tool itself: its commands, its environment, its clear words when something is missing."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from loadfirst_dev import browsers, environment, node, steps, watch
from loadfirst_dev.dispatch import known, main
from loadfirst_dev.pins import Pins, read_pins
from loadfirst_dev.say import Problem

TOOL = Path(__file__).parents[2] / "pysrc" / "loadfirst_dev"


def run(*arguments: str, **options: object) -> subprocess.CompletedProcess[str]:
    """The tool as a person starts it."""
    command = [sys.executable, "-I", str(TOOL), *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False, **options)  # type: ignore[call-overload,no-any-return]


def test_the_tool_starts_with_the_standard_library_alone() -> None:
    """Every command can be looked at in a Python that sees no installed package."""
    commands = ", ".join(f"loadfirst_dev.commands.{name}" for name in known())
    code = f"import sys; sys.path.insert(0, {str(TOOL.parent)!r}); import loadfirst_dev.dispatch, {commands}"
    done = subprocess.run(
        [sys.executable, "-I", "-S", "-c", code], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr


def test_without_a_command_it_lists_what_it_can_do() -> None:
    """Each command with a line on what it does."""
    told = run()
    assert told.returncode == 0
    assert set(known()) >= {"build", "fetch", "serve", "test"}
    assert all(name in told.stdout for name in known())


def test_an_unknown_command_is_wrong_usage(capsys: pytest.CaptureFixture[str]) -> None:
    """Exit code 2, and the list."""
    assert main(["sevre"]) == 2
    assert "'sevre' is not a command" in capsys.readouterr().err


def test_an_old_python_is_told_what_it_needs(tmp_path: Path) -> None:
    """The entry file itself stays readable for an old Python: here a current one is given an old number."""
    code = (
        "import runpy, sys; sys.version_info = (3, 9, 2, 'final', 0); sys.argv = ['x', 'serve']; "
        f"runpy.run_path({str(TOOL)!r}, run_name='__main__')"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert told.returncode == 1
    assert "needs Python 3.11 or newer" in told.stderr and "3.9.2" in told.stderr
    assert "Traceback" not in told.stderr


def test_a_missing_venv_is_told_in_one_message(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As on a Debian without python3-venv, where the module fails."""
    fake = tmp_path / "python3"
    fake.write_text("#!/bin/sh\necho 'No module named venv' >&2\nexit 1\n")
    fake.chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(fake))
    with pytest.raises(Problem, match="apt-get install python3-venv python3-pip"):
        environment.bare(tmp_path / "environment")


def test_the_environment_is_made_again_when_the_pins_change(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And left alone when they have not."""
    installed: list[list[str]] = []
    monkeypatch.setattr(environment, "bare", lambda folder: folder / "python")
    monkeypatch.setattr(environment, "pip_install", lambda python, wanted: installed.append(wanted))
    for requirements in (("a==1",), ("a==1",), ("a==2",)):
        environment.whole(Pins({}, {}, (), {}, environment=requirements), tmp_path)
    assert installed == [["a==1"], ["a==2"]]


def test_a_missing_browser_is_an_error_that_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is skipped in silence; who is not root is told the command."""
    monkeypatch.setattr(browsers, "present", lambda package: package != "chromium")
    monkeypatch.setattr("os.geteuid", lambda: 1000)
    with pytest.raises(Problem, match="apt-get install --no-install-recommends chromium"):
        browsers.ensure(read_pins())


def test_root_on_debian_has_the_browsers_installed(monkeypatch: pytest.MonkeyPatch) -> None:
    """By apt-get alone, and only what is missing."""
    here: set[str] = {"firefox-esr", "webkit2gtk-driver", "xvfb", "xauth", "fonts-dejavu-core"}
    called: list[list[str]] = []

    def install(arguments: list[str]) -> None:
        called.append(arguments)
        here.add(arguments[-1])

    monkeypatch.setattr(browsers, "present", lambda package: package in here)
    monkeypatch.setattr(browsers, "apt_get", install)
    monkeypatch.setattr("shutil.which", lambda program: f"/usr/bin/{program}")
    monkeypatch.setattr("os.geteuid", lambda: 0)
    browsers.ensure(read_pins())
    assert called == [["update"], ["install", "-y", "--no-install-recommends", "chromium"]]


def test_an_old_node_is_not_used(tmp_path: Path) -> None:
    """What calls itself node may be too old, or no node at all."""
    fake = tmp_path / "node"
    fake.write_text("#!/bin/sh\necho v12.22.9\n")
    fake.chmod(0o755)
    assert node.major(fake) == 12
    assert node.major(tmp_path / "nothing") == 0


def test_the_summary_counts_tests_and_steps_without_tests() -> None:
    """The last line alone tells whether all is well."""
    good = steps.Outcome(steps.Step("a", []), True, steps.Count(5, 0, 0), 1.0)
    bad = steps.Outcome(steps.Step("b", []), False, steps.Count(3, 2, 1), 1.0)
    silent = steps.Outcome(steps.Step("c", []), False, steps.Count(), 1.0)
    assert steps.summary([good]).splitlines()[-1] == "5 passed, 0 failed"
    assert steps.summary([good, bad, silent]).splitlines()[-1] == "8 passed, 3 failed, 1 skipped"


def test_reports_of_both_runners_are_counted(tmp_path: Path) -> None:
    """pytest's XML and node's TAP."""
    junit = tmp_path / "a.xml"
    junit.write_text('<testsuites><testsuite tests="9" failures="1" errors="1" skipped="2"/></testsuites>')
    tap = tmp_path / "a.tap"
    tap.write_text("ok 1 - it works\n# tests 4\n# pass 3\n# fail 1\n# skipped 0\n")
    assert steps.from_junit(junit) == steps.Count(5, 2, 2)
    assert steps.from_tap(tap) == steps.Count(3, 1, 0)
    assert steps.from_junit(tmp_path / "none.xml") == steps.from_tap(tmp_path / "none.tap") == steps.Count()


def test_the_watch_sees_a_file_change_come_and_go(tmp_path: Path) -> None:
    """And nothing that editors or Python leave behind."""
    (tmp_path / "a.py").write_text("1")
    before = watch.look([tmp_path])
    (tmp_path / "a.py").write_text("12")
    (tmp_path / "b.py").write_text("")
    (tmp_path / ".b.py.swp").write_text("")
    (tmp_path / "__pycache__").mkdir()
    (tmp_path / "__pycache__" / "a.pyc").write_text("")
    changed = watch.changed(before, watch.look([tmp_path]))
    assert changed == {tmp_path / "a.py", tmp_path / "b.py"}
