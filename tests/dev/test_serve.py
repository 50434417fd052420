"""`serve`, as a person runs it, in a copy of the clone: an address, and a new page after a change."""

from __future__ import annotations

import json
import os
import re
import shutil
import signal
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

REPO = Path(__file__).parents[2]
WAIT = 90.0  # [s] on a busy machine


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A clone's sources elsewhere: changing them changes nothing here."""
    for name in ("site", "pysrc", "scenarios"):
        shutil.copytree(REPO / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    return tmp_path


@pytest.fixture
def served(copy: Path, store: Any) -> Iterator[tuple[str, subprocess.Popen[str]]]:
    """Address that `serve` printed, and its process."""
    command = [sys.executable, str(copy / "pysrc" / "loadfirst_dev"), "serve", "--port", "0"]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, text=True, env=dict(os.environ), preexec_fn=_hears_ctrl_c
    ) as process:
        assert process.stdout is not None
        said = ""
        for line in process.stdout:
            said += line
            address = re.search(r"Loadfirst is at (http://\S+)", line)
            if address:
                yield address[1], process
                break
        else:
            raise AssertionError(said)
        process.kill()


def _hears_ctrl_c() -> None:
    """What a shell starts in the background ignores Ctrl-C, and so would all that it starts."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def get(address: str) -> str:
    """Text of one address."""
    with urllib.request.urlopen(address) as reply:
        return str(reply.read().decode())


def wait(condition: Callable[[], bool]) -> None:
    """Until it holds, or fail."""
    end = time.monotonic() + WAIT
    while not condition():
        assert time.monotonic() < end
        time.sleep(0.2)


def test_a_change_of_a_source_shows_in_the_served_site(
    copy: Path, served: tuple[str, subprocess.Popen[str]]
) -> None:
    """A word of the page at once; a plant file with the next build of the engine's pack and its answers."""
    address, process = served
    assert "<html" in get(address)
    index = copy / "site" / "index.html"
    index.write_text(index.read_text().replace("</body>", "<!-- changed --></body>"))
    wait(lambda: "<!-- changed -->" in get(address))

    before = get(address + "runtime/manifest.json")
    plant = copy / "scenarios" / "plants" / "rinse-transfer.toml"
    plant.write_text(re.sub(r'title = ".*"', 'title = "Another title"', plant.read_text(), count=1))
    wait(lambda: get(address + "runtime/manifest.json") != before)
    assert json.loads(get(address + "first-answer.json"))["answer"]["title"] == "Another title"

    process.send_signal(signal.SIGINT)
    assert process.wait(WAIT) == 130
