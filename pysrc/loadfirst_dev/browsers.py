"""The browsers that the tests drive: looked for, and on Debian installed where root may do so."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

from loadfirst_dev.pins import Pins
from loadfirst_dev.say import Problem, say

FOUND_BY = {
    "chromium": ("chromium", "chromium-browser"),
    "firefox-esr": ("firefox-esr", "firefox"),
    "webkit2gtk-driver": ("WebKitWebDriver",),
    "xvfb": ("xvfb-run",),
    "xauth": ("xauth",),
}
FONTS = Path("/usr/share/fonts")


def present(package: str) -> bool:
    """Whether what a Debian package brings is on this machine, from wherever it came."""
    if package.startswith("fonts-"):
        return FONTS.is_dir() and any(FONTS.rglob("*.ttf"))
    return any(shutil.which(program) for program in FOUND_BY[package])


def missing(pins: Pins) -> list[str]:
    """Debian's names of what is not here."""
    return [package for package in pins.debian if not present(package)]


def ensure(pins: Pins) -> None:
    """See that all browsers are here.

    Raises
    ------
    Problem
        Where one is missing and cannot be installed.
    """
    absent = missing(pins)
    if not absent:
        return
    if not shutil.which("apt-get") or os.name != "posix" or os.geteuid() != 0:
        raise Problem(
            f"The browser tests need what is not here: {', '.join(absent)}.\n"
            f"On Debian or Ubuntu, as root: apt-get install --no-install-recommends {' '.join(absent)}\n"
            "Without browsers: python3 pysrc/loadfirst_dev test --quick (which is not the whole test)."
        )
    say(f"Installing with apt-get, as root, for the browser tests: {' '.join(absent)} …")
    for command in (["update"], ["install", "-y", "--no-install-recommends", *absent]):
        apt_get(command)
    absent = missing(pins)
    if absent:
        raise Problem(f"apt-get went through, but these are still missing: {', '.join(absent)}.")


def apt_get(arguments: list[str]) -> None:
    """One call of apt-get that asks nothing."""
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    done = subprocess.run(
        ["apt-get", "-q", *arguments], env=quiet, capture_output=True, text=True, stdin=subprocess.DEVNULL
    )
    if done.returncode:
        raise Problem(f"apt-get {' '.join(arguments)} failed:\n{done.stderr.strip()[-2000:]}")
