"""Runs every check and every test, and says in one line how many passed."""

from __future__ import annotations

import argparse
import shutil
from pathlib import Path

from loadfirst_dev import browsers, environment, npm, places, steps
from loadfirst_dev.fetch import Store
from loadfirst_dev.node import node
from loadfirst_dev.pins import read_pins
from loadfirst_dev.say import say
from loadfirst_dev.steps import Count, Step

REPORTS = places.BUILT / "reports"


def main(arguments: list[str]) -> int:
    """Make what the tests need, run them all, and sum up."""
    parser = argparse.ArgumentParser(prog="loadfirst_dev test", description=__doc__)
    parser.add_argument("--quick", action="store_true", help="leave out what needs a browser")
    parser.add_argument(
        "--runtime", type=Path, metavar="DIR", help="runtime files from an unpacked Pyodide release"
    )
    options = parser.parse_args(arguments)
    pins = read_pins()
    python = environment.whole(pins)
    store = Store(pins, runtime=options.runtime)
    store.fetch([*pins.group("site"), *pins.group("tests")])
    if not options.quick:
        browsers.ensure(pins)
        npm.axe(pins)
    shutil.rmtree(REPORTS, ignore_errors=True)
    REPORTS.mkdir(parents=True)
    outcomes = [steps.run(step) for step in all_steps(python, node(pins), options.quick)]
    say(steps.summary(outcomes))
    return 0 if all(outcome.good for outcome in outcomes) else 1


def all_steps(python: Path, node_program: Path, quick: bool) -> list[Step]:
    """The quick checks first, the browsers last."""
    tools = str(python)
    found = [
        Step("ruff", [tools, "-m", "ruff", "check", "."]),
        Step("mypy", [tools, "-m", "mypy"]),
        javascript(node_program),
        pytest("Python tests", python, "not browser"),
    ]
    return found if quick else [*found, pytest("browser tests", python, "browser")]


def pytest(name: str, python: Path, which: str) -> Step:
    """The tests with, or without, a marker."""
    report = REPORTS / f"{name.replace(' ', '-')}.xml"
    command = [str(python), "-m", "pytest", "-q", "-m", which, f"--junit-xml={report}"]
    return Step(name, command, lambda: steps.from_junit(report))


def javascript(node_program: Path) -> Step:
    """The tests of the page's own code that need no browser."""
    report = REPORTS / "javascript.tap"
    files = sorted(str(path) for path in (places.REPO / "tests" / "js").rglob("*.test.*js"))
    reporters = [
        *("--test-reporter=dot", "--test-reporter-destination=stdout"),
        *("--test-reporter=tap", f"--test-reporter-destination={report}"),
    ]
    return Step("JavaScript tests", [str(node_program), "--test", *reporters, *files], lambda: told(report))


def told(report: Path) -> Count:
    """Counts of the run; what failed is shown, since dots alone do not tell it."""
    count = steps.from_tap(report)
    if count.failed:
        say(report.read_text(encoding="utf-8"))
    return count
