"""Readings of two days as people write them down: a TOML file, the unit of each in its key."""

# No annotations as strings here, as in the tables of a plant.

import math
from collections.abc import Collection, Mapping, Sequence
from pathlib import Path
from typing import Annotated, Literal, NamedTuple

from msgspec import Meta

from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.errors import InputError
from loadfirst.evidence.seen import Scale
from loadfirst.instruments.faults.misread_unit import SIZES
from loadfirst.plant import toml_text
from loadfirst.plant.decode import decode, in_file
from loadfirst.plant.meta import Part, choice
from loadfirst.plant.near import meant
from loadfirst.units import BAR, HOUR, PERCENT, RPM

UNITS: dict[str, dict[str, float]] = {
    "pressure": {"bar": BAR, "kpa": SIZES["kpa"], "mpa": SIZES["mpa"], "psi": SIZES["psi"]},
    "flow": {"m3h": 1 / HOUR, "m3s": 1.0, "ls": 1e-3, "lmin": 1e-3 / 60},
    "current": {"a": 1.0},
    "speed": {"rpm": RPM},
    "height": {"m": 1.0, "mm": 1e-3},
    "output": {"percent": PERCENT},
}
"""By quantity: what a key may end with, and its size. [SI]"""

Values = dict[str, float]


class ReadingsFile(Part, frozen=True, kw_only=True):
    """What was read and seen at a plant."""

    format: Annotated[Literal[1], choice("Number of this file format.")]
    today: Annotated[Values, Meta(description="Readings of today.")]
    yesterday: Annotated[Values, Meta(description="Readings of the day from which the plant is known.")] = {}
    seen: Annotated[dict[str, bool], Meta(description="What was looked at, and whether it showed.")] = {}
    replaced: Annotated[tuple[str, ...], Meta(description="Instruments that are others than yesterday.")] = ()


class Taken(NamedTuple):
    """A file's readings by instrument [SI], and the rest as `weigh` takes it."""

    today: dict[str, float]
    yesterday: dict[str, float]
    seen: dict[str, bool]
    replaced: tuple[str, ...]


def read_readings(path: Path, scales: Sequence[Scale]) -> Taken:
    """Read a file of readings.

    Parameters
    ----------
    scales : the instruments of the plant.

    Raises
    ------
    FileError
        For the first thing in it that cannot be used.
    """
    file = decode(ReadingsFile, toml_text.read(path), path.name)
    try:
        today, yesterday = (in_si(getattr(file, day), scales, day) for day in ("today", "yesterday"))
        _known("replaced", file.replaced, [scale.id for scale in scales])
        _known("seen", file.seen, OBSERVATIONS)
    except InputError as cause:
        raise in_file(cause, path.name) from None
    return Taken(today, yesterday, file.seen, file.replaced)


def in_si(values: Mapping[str, float], scales: Sequence[Scale], day: str) -> dict[str, float]:
    """Readings by instrument, from keys that end with a unit. [SI]

    Raises
    ------
    InputError
        For a key that is none, or a value that is no number.
    """
    keys = {
        f"{scale.id}_{unit}": (scale.id, size)
        for scale in scales
        for unit, size in UNITS[scale.quantity].items()
    }
    found: dict[str, float] = {}
    for key, value in values.items():
        where = f"{day}.{key}"
        if key not in keys:
            usual = meant(key, keys, f"For example {next(iter(keys))}.")
            raise InputError(where, None, "an instrument of the plant and a unit", usual, rule="unknown")
        id, size = keys[key]
        if id in found:
            raise InputError(
                where, value, "left out: that instrument has been given already", rule="together"
            )
        if not math.isfinite(value):
            raise InputError(where, value, "a number")
        found[id] = value * size
    return found


def _known(where: str, ids: Collection[str], known: Collection[str]) -> None:
    for id in ids:
        if id not in known:
            hint = meant(id, known, f"Known: {', '.join(known)}.")
            raise InputError(where, id, "known here", hint, rule="choice", choices=list(known))
