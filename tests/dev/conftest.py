"""A small pinned world: a carrier and a package in a folder that pip reads instead of a registry."""

from __future__ import annotations

import zipfile
from pathlib import Path
from typing import Any

import pytest

from loadfirst_dev.pins import Pins, decode, digest

INSIDE = "carrier/held/"


def wheel(folder: Path, name: str, files: dict[str, bytes]) -> Path:
    """A wheel that pip accepts, with these files in it."""
    path = folder / f"{name}-1.0-py3-none-any.whl"
    info = f"{name}-1.0.dist-info/"
    described = {
        f"{info}METADATA": f"Metadata-Version: 2.1\nName: {name}\nVersion: 1.0\n".encode(),
        f"{info}WHEEL": b"Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
    }
    with zipfile.ZipFile(path, "w") as archive:
        for inside, data in {**files, **described}.items():
            archive.writestr(inside, data)
        archive.writestr(f"{info}RECORD", "")
    return path


@pytest.fixture
def shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder that stands in for the registry; pip looks nowhere else."""
    folder = tmp_path / "shelf"
    folder.mkdir()
    monkeypatch.setenv("PIP_NO_INDEX", "1")
    monkeypatch.setenv("PIP_FIND_LINKS", str(folder))
    monkeypatch.setenv("PIP_CONFIG_FILE", "/dev/null")
    return folder


@pytest.fixture
def pinned(shelf: Path) -> Pins:
    """Pins of one file inside a carrier and one package of its own, both on the shelf."""
    inside = {INSIDE + "held.bin": b"what is needed", INSIDE + "other.bin": b"what is needed later"}
    carrier = wheel(shelf, "carrier", {**inside, "carrier/other.py": b"1 / 0"})
    alone = wheel(shelf, "alone", {"alone.py": b"x = 1"})
    return decode(table(carrier, alone))


def table(carrier: Path, alone: Path) -> dict[str, Any]:
    """A pins file's content for the two."""
    held = b"what is needed"
    return {
        "pyodide": {"python": "3.14", "abi": "2026_0"},
        "carriers": {
            "carrier": {
                "requirement": "carrier==1.0",
                "file": carrier.name,
                "inside": INSIDE,
                "size": carrier.stat().st_size,
                "sha256": digest(carrier.read_bytes()),
            }
        },
        "files": [
            {
                "name": "held.bin",
                "part": "a",
                "carrier": "carrier",
                "size": len(held),
                "sha256": digest(held),
            },
            {
                "name": alone.name,
                "part": "b",
                "requirement": "alone==1.0",
                "size": alone.stat().st_size,
                "sha256": digest(alone.read_bytes()),
            },
        ],
    }
