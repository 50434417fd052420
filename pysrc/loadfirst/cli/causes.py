"""The catalogue of causes and what each does to a plant, as text for a terminal."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from io import StringIO
from pathlib import Path
from typing import Any, NamedTuple

from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.cause import Cause, Size
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.causes.signature import HEAD, Move, Signature, signatures
from loadfirst.cli.plant_file import plant_of
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import changed

BRACKETS = "In brackets: less than two looks at the same instrument may differ by themselves."
CAUTION = (
    "Directions hold for this plant at these sizes; another one may answer otherwise.\n"
    "Isolate, lock, drain and verify before anything is opened; local rules and licensed practice decide."
)


def catalogue_text() -> str:
    """Every cause: its size, the plant keys it edits, what shows it, what it looks like, its source."""
    lines: list[str] = []
    group = ""
    for cause in CAUSES:
        if cause.group != group:
            group = cause.group
            lines += ["", group]
        lines += _described(cause)
    return "\n".join(lines[1:])


def _described(cause: Cause) -> Iterator[str]:
    yield f"  {cause.id}: {cause.says}"
    if cause.size is not None:
        yield f"    size    {size_text(cause.size)}"
    if cause.keys:
        yield f"    edits   {', '.join(cause.keys)}"
    for id in cause.shown_by:
        seen = OBSERVATIONS[id]
        yield f"    seen    {id}: {seen.says} (hit {seen.hit:.0%}, false alarm {seen.false_alarm:.0%})"
    if cause.alike:
        yield f"    alike   no reading tells it from {cause.alike}"
    yield f"    source  {cause.source}"


def size_text(size: Size) -> str:
    """Range, usual size, the size at which nothing happens, and what the number is."""
    unit = "" if size.unit == "-" else f" {size.unit}"
    return (
        f"{size.low:g} to {size.high:g}{unit}, usually {size.usual:g}; at {size.none:g} nothing: {size.says}"
    )


class Table(NamedTuple):
    """A plant, and what each cause that can happen to it does at its usual size, by its id."""

    plant: ResolvedPlant
    found: dict[str, Signature]


def table(path: Path) -> Table:
    """Compute it for a plant file.

    Raises
    ------
    FileError
        For the first thing in the file that cannot be used.
    """
    plant = plant_of(path)
    can = [(cause, changed(plant, cause.edits(plant))) for cause in CAUSES if cause.applies(plant) is None]
    found = signatures(plant, can)
    return Table(plant, {cause.id: one for (cause, _), one in zip(can, found, strict=True)})


def table_text(of: Table) -> str:
    """The table for a terminal, without second pump, levels and output."""
    plant, found = of
    wide = max(len(cause.id) for cause in CAUSES)
    head = f"  {'cause':<{wide}} {'size':>10}" + "".join(f"{name:>12}" for name in SHOWN)
    lines = [plant.plant.title, "", head]
    for cause in CAUSES:
        if cause.id in found:
            lines.append(f"  {cause.id:<{wide}} {_usual(cause, plant):>10}{_row(found[cause.id])}")
        else:
            lines.append(f"  {cause.id:<{wide}}  cannot happen here: {cause.applies(plant)}")
    return "\n".join([*lines, "", BRACKETS, CAUTION])


SHOWN = ("suction", "discharge", "after-valve", "flow", "current", "speed", HEAD)
"""Quantities of the table."""
COLUMNS = (
    "cause", "group", "size", "size_unit", "quantity", "unit", "before", "after", "change", "percent",
    "direction", "told", "off_scale", "hunts",
)  # fmt: skip
UNITS = {
    "flow": "m³/s", "current": "A", "current-2": "A", "speed": "rad/s", "speed-2": "rad/s", "output": "-",
    "level-supply": "m", "level-delivery": "m", HEAD: "m",
}  # fmt: skip
"""SI unit of each quantity; the others are pressures in Pa, above that of the air."""


def table_csv(of: Table) -> str:
    """Every quantity of every cause, a row each, SI units; RFC 4180."""
    text = StringIO()
    writer = csv.writer(text)
    writer.writerow(COLUMNS)
    for cause in CAUSES:
        if cause.id in of.found:
            writer.writerows(_csv_rows(cause, of.plant, of.found[cause.id]))
    return text.getvalue()


def _csv_rows(cause: Cause, plant: ResolvedPlant, found: Signature) -> Iterator[tuple[Any, ...]]:
    size, unit = ("", "") if cause.size is None else (f"{cause.usual(plant):.6g}", cause.size.unit)
    for name, move in found.moves.items():
        change = None
        if move.before is not None and move.after is not None:
            change = move.after - move.before
        numbers = (_digits(value) for value in (move.before, move.after, change, move.percent))
        flags = (_yes(flag) for flag in (move.told, move.off_scale, found.hunts))
        yield (cause.id, cause.group, size, unit, name, UNITS.get(name, "Pa"), *numbers, move.sign, *flags)


def _digits(value: float | None) -> str:
    return "" if value is None else f"{value:.6g}"


def _yes(flag: bool) -> str:
    return "yes" if flag else "no"


def _usual(cause: Cause, plant: ResolvedPlant) -> str:
    if cause.size is None:
        return ""
    unit = "" if cause.size.unit == "-" else f" {cause.size.unit}"
    return f"{cause.usual(plant):.3g}{unit}"


def _row(found: Signature) -> str:
    if not found.converged:
        return "  no steady state"
    return "".join(f"{_cell(found[name]):>12}" for name in SHOWN) + ("  hunting" * found.hunts)


def _cell(move: Move) -> str:
    if move.sign in "?0":
        return move.sign
    stop = ">" if move.off_scale else ""
    text = f"{stop}{move.sign}" if move.percent is None else f"{stop}{move.percent:+.1f} %"
    return text if move.told else f"({text})"
