"""The tests of the physics, run by pytest inside the browser's Python."""

from __future__ import annotations

import json
from typing import Any

from tests.in_browser import FOLDERS, TESTS, browser_files

START = """
import contextlib, io, json, os, sys
import pytest

os.chdir("/clone")
os.environ["LOADFIRST_IN_BROWSER"] = "1"
options = ["-q", "--capture=sys", "--color=no", "-W", "default"]
options += ["-p", "no:cacheprovider", "-p", "no:faulthandler"]

class Count:
    def __init__(self):
        self.passed, self.files = 0, set()
    def pytest_runtest_logreport(self, report):
        if report.when == "call" and report.passed:
            self.passed += 1
            self.files.add(report.nodeid.partition("::")[0])

def run(*arguments):
    for name in [name for name in sys.modules if name.partition(".")[0] in ("tests", "conftest")]:
        del sys.modules[name]  # in each run conftest says anew which helpers' asserts count
    count, said = Count(), io.StringIO()
    with contextlib.redirect_stdout(said):
        code = int(pytest.main([*options, *arguments], plugins=[count]))
    told = {"code": code, "passed": count.passed, "files": sorted(count.files), "said": said.getvalue()}
    return json.dumps(told)
"""


def test_a_failing_test_is_seen_to_fail(run: Any) -> None:
    """The Python of the page drops plain asserts (-OO); those of test files and helpers must count."""
    run(START)
    run("""
import pathlib
pathlib.Path("/clone/tests/test_seen.py").write_text('''
from tests.cases.samples import changed
def test_it(): assert 1 == 2
def test_helper(): changed(("not there", ""))
''')
""")
    for _ in range(2):
        told = json.loads(run('run("tests/test_seen.py")'))
        assert told["code"] == 1 and told["passed"] == 0
        assert "assert 1 == 2" in told["said"] and "assert 'not there' in" in told["said"]


def test_the_tests_of_the_physics_pass_in_the_browser(run: Any) -> None:
    """Every test file that needs no package or process which the browser has not."""
    run(START)
    folders = ", ".join(repr(f"tests/{name}") for name in FOLDERS)
    told = json.loads(run(f"run('-m', 'not native and not browser', {folders})"))
    assert told["code"] == 0, told["said"][-6000:]
    unrun = {
        path for path in browser_files() if f"tests/{path.relative_to(TESTS).as_posix()}" not in told["files"]
    }
    assert all("mark.native" in path.read_text(encoding="utf-8") for path in unrun), unrun
    print(told["said"][-200:])
