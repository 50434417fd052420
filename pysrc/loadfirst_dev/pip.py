"""Downloads one package with pip's own client; nothing else here talks to a registry."""

from __future__ import annotations

import os
import subprocess
import time
from pathlib import Path

from loadfirst_dev.environment import last_words
from loadfirst_dev.pins import Pins
from loadfirst_dev.say import Problem, Progress

RETRIES = 3


def options_of(pins: Pins, file: str) -> list[str]:
    """What pip must be told so that it takes a wheel for the browser's Python, not for ours."""
    if "pyemscripten" not in file:
        return ["--python-version", pins.pyodide["python"]]
    short = pins.pyodide["python"].replace(".", "")
    return [
        *("--platform", f"pyemscripten_{pins.pyodide['abi']}_wasm32"),
        *("--python-version", pins.pyodide["python"], "--implementation", "cp", "--abi", f"cp{short}"),
    ]


def download(python: Path, requirement: str, options: list[str], folder: Path, size: int) -> None:
    """Have pip put the wheel of exactly one package into `folder`.

    Parameters
    ----------
    size : int
        How much will come, for the progress shown. [bytes]

    Raises
    ------
    Problem
        When pip could not get it: the message says what to do.
    """
    command = [
        *(str(python), "-m", "pip", "download", "--quiet", "--no-input", "--no-cache-dir", "--no-deps"),
        *("--only-binary=:all:", "--retries", str(RETRIES), *options, "--dest", str(folder), requirement),
    ]
    scratch = folder / "pip"
    scratch.mkdir(parents=True, exist_ok=True)
    told = folder / "pip.log"
    progress = Progress(requirement, size)
    with told.open("w") as log:
        process = subprocess.Popen(
            command,
            stdout=log,
            stderr=log,
            env={**os.environ, "TMPDIR": str(scratch)},
            stdin=subprocess.DEVNULL,
        )
        try:
            while process.poll() is None:
                time.sleep(0.1)
                progress.show(weight(folder))
        finally:
            progress.close()
            if process.poll() is None:
                process.terminate()
                process.wait()
    if process.returncode:
        raise Problem(
            f"{requirement} could not be fetched, and it is not in the cache. A network that reaches the\n"
            "package registry is needed for this, once; or give `--runtime DIR` with the files of an\n"
            f"unpacked Pyodide release. pip said:\n{last_words(told.read_text(errors='replace'))}"
        )


def weight(folder: Path) -> int:
    """Bytes in a folder that is being filled."""
    total = 0
    for path, _, names in os.walk(folder):  # passes over a folder that is gone by now
        for name in names:
            try:
                total += os.stat(os.path.join(path, name)).st_size
            except FileNotFoundError:  # it was renamed between the two looks
                pass
    return total
