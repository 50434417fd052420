"""Whether an author's files hold: a plant comes to rest, a pump is one, a puzzle's proof is borne out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from loadfirst.cases.bit_by_bit import at_once
from loadfirst.cases.case import Case
from loadfirst.cases.collection import Played, faults
from loadfirst.cases.held import holding
from loadfirst.cases.order import order_faults
from loadfirst.cases.recognise import Kind, kind_of
from loadfirst.cli.check_case import (
    case_lines,
    claims,
    collection_lines,
    fairness_lines,
    held_lines,
    judged,
    last_line,
)
from loadfirst.cli.digits import fine
from loadfirst.errors import FileError, InputError
from loadfirst.evidence.readings_file import ReadingsFile
from loadfirst.plant import library, toml_text
from loadfirst.plant.pump_file import Displacement
from loadfirst.plant.pumps import read_pump
from loadfirst.plant.read import read_resolved
from loadfirst.plant.state import true_state
from loadfirst.units import HOUR


class Checked(NamedTuple):
    """One file that can be used.

    Attributes
    ----------
    text : what is printed of it.
    case : of a puzzle, itself.
    played : its play, where it was played and is fair.
    faults : of a puzzle, claims that hold for too few seeds, and what is unfair.
    """

    text: str
    case: Case | None = None
    played: Played | None = None
    faults: tuple[FileError, ...] = ()


def files(paths: Sequence[Path]) -> list[Path]:
    """The files themselves; of a folder all in it that end in `.toml`, in order, but no pieces of puzzles.

    Raises
    ------
    FileError
        For a folder without any.
    """
    found: list[Path] = []
    for path in paths:
        inside = sorted(one for one in path.rglob("*.toml") if not _piece(one)) if path.is_dir() else [path]
        if not inside:
            raise FileError(path.name, InputError("the folder", "empty", "one with files that end in .toml"))
        found += inside
    return found


def _piece(path: Path) -> bool:
    """Whether a file is no puzzle, but what `compose` makes puzzles from."""
    return path.parent.resolve() == library.folder("compose").resolve()


def check_file(path: Path, play: bool = True) -> Checked:
    """What ``check`` says of a file that can be used.

    Parameters
    ----------
    path : of a plant, a pump or a puzzle; its keys tell which.
    play : whether a puzzle is played many times, too.

    Raises
    ------
    FileError
        For the first thing in it that cannot be used or does not hold with its own seed.
    """
    data = toml_text.read(path)
    if are_readings(data):
        hint = f"Weigh them with `evidence PLANT {path.name}`."
        what = InputError("the file", "of readings", "a plant, a pump or a puzzle", hint, rule="pump")
        raise FileError(path.name, what)
    kind: Kind = kind_of(data)
    if kind == "case":
        return _case(path, play)
    lines = {"plant": _plant, "pump": _pump}[kind](path)
    return Checked("\n".join([f"{path.name}: {next(lines)}", *lines]))


def are_readings(data: Mapping[str, Any]) -> bool:
    """Whether a file holds readings for `evidence`: a table of numbers where a puzzle has its causes."""
    known = set(ReadingsFile.__struct_fields__)
    return isinstance(data.get("today"), dict) and len(data.keys() & known) > len(data.keys() - known)


def passed_over(path: Path, asked: Sequence[Path]) -> str:
    """What is said of a file that a folder holds and `check` does not judge; empty for any other.

    Raises
    ------
    FileError
        Where it cannot be read.
    """
    if path in asked or not are_readings(toml_text.read(path)):
        return ""
    return f"{path.name}: readings for `evidence`; passed over."


def _case(path: Path, play: bool) -> Checked:
    proven = claims(path)
    held = at_once(holding(proven))
    lines, faults = [*case_lines(proven, not held.faults), *held_lines(held)], held.faults
    one = None
    if play:
        found, unfair = judged(proven)
        faults = [*faults, *unfair]
        one = None if faults else Played(proven.id, proven.case, proven.truth, found)
        lines += [*fairness_lines(found), f"  {last_line(faults)}"]
    told = tuple(FileError(path.name, fault) for fault in faults)
    return Checked("\n".join([f"{path.name}: {lines[0]}", *lines[1:]]), proven.case, one, told)


def order(every: Mapping[str, Case], beside: Sequence[Path]) -> list[FileError]:
    """What is wrong with the order that puzzles ask for, if several files were asked about together.

    Parameters
    ----------
    every : those that hold, by id.
    beside : all files that were asked about.
    """
    if len(beside) < 2:
        return []
    return list(order_faults(every, {*library.ids("cases"), *(path.stem for path in beside)}))


def collection_text(every: Sequence[Played]) -> str:
    """What ``check`` says of many puzzles together."""
    return "\n".join(collection_lines(every))


def collection_faults(every: Sequence[Played]) -> list[str]:
    """What is wrong with them as a collection."""
    return [fault.text for fault in faults(every)]


def _plant(path: Path) -> Iterator[str]:
    resolved = read_resolved(path)
    state = true_state(resolved)
    if not state.converged:
        steady = InputError("the plant", state.why, "one that comes to a steady state", rule="together")
        raise FileError(path.name, steady)
    duty = f"{fine(state.duty.flow * HOUR, 2)} m³/h at {state.duty.head:.2f} m"
    yield f"a plant, {resolved.plant.title}. Its duty point: {duty}."


def _pump(path: Path) -> Iterator[str]:
    pump = read_pump(path)
    kind = "of displacement" if isinstance(pump, Displacement) else f"of {len(pump.flow_m3h)} points"
    yield f"a pump, {pump.title or path.stem}, {kind}."
