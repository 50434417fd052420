"""The steps of the test command: each a process whose outcome and number of tests are told."""

from __future__ import annotations

import os
import re
import subprocess
import time
import xml.etree.ElementTree as ElementTree
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from loadfirst_dev import places
from loadfirst_dev.say import say


@dataclass(frozen=True)
class Count:
    """Tests that passed, failed (errors among them) and were skipped."""

    passed: int = 0
    failed: int = 0
    skipped: int = 0

    def __add__(self, other: Count) -> Count:
        return Count(self.passed + other.passed, self.failed + other.failed, self.skipped + other.skipped)


@dataclass(frozen=True)
class Step:
    """One process.

    Attributes
    ----------
    count : callable
        Counts its tests, from the report that it left.
    """

    name: str
    command: list[str]
    count: Callable[[], Count] = Count
    env: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Outcome:
    """How a step ended."""

    step: Step
    good: bool
    count: Count
    seconds: float


def run(step: Step) -> Outcome:
    """Run a step in the clone, its output shown as it comes."""
    say(f"\n── {step.name} ──")
    started = time.monotonic()
    done = subprocess.run(step.command, cwd=places.REPO, env={**os.environ, **step.env}, check=False)
    return Outcome(step, done.returncode == 0, step.count(), time.monotonic() - started)


def from_junit(report: Path) -> Count:
    """Counts of a report that pytest wrote; none where it wrote none."""
    if not report.exists():
        return Count()
    suites = ElementTree.parse(report).getroot().iter("testsuite")
    total = Count()
    for suite in suites:
        tests, skipped = int(suite.get("tests", 0)), int(suite.get("skipped", 0))
        failed = int(suite.get("failures", 0)) + int(suite.get("errors", 0))
        total += Count(max(tests - failed - skipped, 0), failed, skipped)
    return total


def from_tap(report: Path) -> Count:
    """Counts of a report that node's test runner wrote; none where it wrote none."""
    if not report.exists():
        return Count()
    text = report.read_text(encoding="utf-8")
    found = {name: int(number) for name, number in re.findall(r"^# (pass|fail|skipped) (\d+)$", text, re.M)}
    return Count(found.get("pass", 0), found.get("fail", 0), found.get("skipped", 0))


def summary(outcomes: list[Outcome]) -> str:
    """A line for each step, and one with all tests counted together."""
    lines = [""]
    for outcome in outcomes:
        tests = (
            f"{outcome.count.passed} passed, {outcome.count.failed} failed"
            if outcome.count != Count()
            else ""
        )
        good = "good  " if outcome.good else "FAILED"
        lines.append(f"{good}  {outcome.step.name:28} {outcome.seconds:6.1f} s  {tests}".rstrip())
    total = sum((outcome.count for outcome in outcomes), Count())
    # A step that fails without a failing test (ruff, mypy, a crash) counts as one.
    silent = sum(not outcome.good and outcome.count.failed == 0 for outcome in outcomes)
    skipped = f", {total.skipped} skipped" if total.skipped else ""
    return "\n".join([*lines, "", f"{total.passed} passed, {total.failed + silent} failed{skipped}"])
