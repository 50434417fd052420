"""The one script that comes through npm: kept when it is the pinned one, refused when it is not."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from loadfirst_dev import npm
from loadfirst_dev.pins import Pins, digest, read_pins
from loadfirst_dev.say import Problem

SCRIPT = b"looks at pages"


@pytest.fixture
def pins() -> Pins:
    """Pins that want a script of our own."""
    pins = read_pins()
    return dataclasses.replace(pins, axe={**pins.axe, "sha256": digest(SCRIPT)})


def test_the_pinned_script_is_fetched_once(
    pins: Pins, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The second time it comes from the cache, and a damaged one is fetched again."""
    fetched = []
    monkeypatch.setattr(npm, "packed", lambda *asked: fetched.append(asked) or SCRIPT)
    assert npm.axe(pins, tmp_path) == npm.axe(pins, tmp_path) == SCRIPT.decode()
    assert len(fetched) == 1
    (kept,) = (tmp_path / "files").iterdir()
    kept.write_bytes(b"torn")
    assert npm.axe(pins, tmp_path) == SCRIPT.decode()
    assert len(fetched) == 2


def test_another_script_than_the_pinned_one_is_not_used(
    pins: Pins, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nor kept."""
    monkeypatch.setattr(npm, "packed", lambda *_: b"something else")
    with pytest.raises(Problem, match="not the pinned one"):
        npm.axe(pins, tmp_path)
    assert list(tmp_path.rglob("*")) == []
