"""The ignored .venv: made here, made anew when the pins or Python change.

Two levels: bare (its pip fetches files) and whole (what the tests need).
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from loadfirst_dev import places
from loadfirst_dev.pins import Pins, digest
from loadfirst_dev.say import Problem, say

NO_VENV = (
    "Python's `venv` or `pip` is missing here, and this tool makes its own environment with them.\n"
    "On Debian or Ubuntu: apt-get install python3-venv python3-pip. Elsewhere: install Python anew."
)


def python(folder: Path | None = None) -> Path:
    """The environment's own Python."""
    folder = folder or places.VENV
    return folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def stamp_of(requirements: tuple[str, ...]) -> str:
    """What the whole environment was made from."""
    return digest("\n".join([sys.version, *requirements]).encode())


def bare(folder: Path | None = None) -> Path:
    """An environment with a working pip, made if there is none. Returns its Python."""
    folder = folder or places.VENV
    if not works(folder):
        say(f"Making an environment in {folder.name} …")
        made = subprocess.run(
            [sys.executable, "-m", "venv", "--clear", str(folder)],
            capture_output=True,
            text=True,
            check=False,
        )
        if made.returncode or not works(folder):
            raise Problem(f"{NO_VENV}\n\n{(made.stderr or made.stdout).strip()}".strip())
    return python(folder)


def works(folder: Path) -> bool:
    """Whether the environment's Python starts, is the one that started us, and has pip."""
    if not python(folder).exists():
        return False
    asked = "import sys, pip; print(sys.version)"
    told = subprocess.run([str(python(folder)), "-c", asked], capture_output=True, text=True, check=False)
    return told.returncode == 0 and told.stdout.strip() == sys.version.strip()


def whole(pins: Pins, folder: Path | None = None) -> Path:
    """The environment with all pinned packages. Returns its Python.

    Raises
    ------
    Problem
        When the packages cannot be installed.
    """
    folder = folder or places.VENV
    executable = bare(folder)
    stamp = folder / "loadfirst-pins"
    wanted = stamp_of(pins.environment)
    if stamp.exists() and stamp.read_text() == wanted:
        return executable
    say(f"Installing {len(pins.environment)} pinned packages into {folder.name} (some minutes, once) …")
    stamp.unlink(missing_ok=True)
    pip_install(executable, list(pins.environment))
    stamp.write_text(wanted)
    return executable


def pip_install(executable: Path, requirements: list[str]) -> None:
    """Install with the environment's pip, or say in one message why not."""
    done = subprocess.run(
        [
            str(executable),
            "-m",
            "pip",
            "install",
            "--quiet",
            "--only-binary=:all:",
            "--no-input",
            *requirements,
        ],
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise Problem(
            "The packages for the tests could not be installed. A network that reaches the package registry\n"
            f"is needed for this, once. pip said:\n{last_words(done.stderr or done.stdout)}"
        )


def last_words(text: str, lines: int = 4) -> str:
    """The end of a long output, where the reason stands."""
    told = [line for line in text.strip().splitlines() if line.strip() and not line.startswith("WARNING")]
    return "\n".join(told[-lines:])
