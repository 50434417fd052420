"""The catalogue of causes and what each does to a plant, as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from loadfirst.causes.catalogue import CAUSES
from loadfirst.causes.cause import Cause, Size
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.causes.signature import QUANTITIES, Move, Signature, signatures
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import read_resolved

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
        yield f"    size    {_size(cause.size)}"
    if cause.keys:
        yield f"    edits   {', '.join(cause.keys)}"
    for id in cause.shown_by:
        seen = OBSERVATIONS[id]
        yield f"    seen    {seen.says} (hit {seen.hit:.0%}, false alarm {seen.false_alarm:.0%})"
    if cause.alike:
        yield f"    alike   no reading tells it from {cause.alike}"
    yield f"    source  {cause.source}"


def _size(size: Size) -> str:
    unit = "" if size.unit == "-" else f" {size.unit}"
    return (
        f"{size.low:g} to {size.high:g}{unit}, usually {size.usual:g}; at {size.none:g} nothing: {size.says}"
    )


def table_text(path: Path) -> str:
    """What each cause at its usual size does to the readings of a plant file.

    Raises
    ------
    FileError
        For the first thing in the file that cannot be used.
    """
    plant = read_resolved(path)
    can = [cause for cause in CAUSES if cause.applies(plant) is None]
    changed = [(cause, read_resolved(path, cause.edits(plant))) for cause in can]
    found = dict(zip((cause.id for cause in can), signatures(plant, changed), strict=True))
    wide = max(len(cause.id) for cause in CAUSES)
    head = f"  {'cause':<{wide}} {'size':>10}" + "".join(f"{name:>11}" for name in QUANTITIES)
    lines = [plant.plant.title, "", head]
    for cause in CAUSES:
        if cause.id in found:
            lines.append(f"  {cause.id:<{wide}} {_usual(cause, plant):>10}{_row(found[cause.id])}")
        else:
            lines.append(f"  {cause.id:<{wide}}  cannot happen here: {cause.applies(plant)}")
    return "\n".join([*lines, "", CAUTION])


def _usual(cause: Cause, plant: ResolvedPlant) -> str:
    if cause.size is None:
        return ""
    unit = "" if cause.size.unit == "-" else f" {cause.size.unit}"
    return f"{cause.usual(plant):.3g}{unit}"


def _row(found: Signature) -> str:
    if not found.converged:
        return "  no steady state"
    return "".join(f"{_cell(getattr(found, name)):>11}" for name in QUANTITIES) + ("  hunting" * found.hunts)


def _cell(move: Move) -> str:
    if move.sign in "?0":
        return move.sign
    stop = ">" if move.off_scale else ""
    return f"{stop}{move.sign}" if move.percent is None else f"{stop}{move.percent:+.1f} %"
