"""Whether an author's files hold: a plant comes to rest, a pump is one, a puzzle's proof is borne out."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from loadfirst.cases.load import load_case
from loadfirst.cases.proof import Proven
from loadfirst.cases.recognise import Kind, kind_of
from loadfirst.cases.truth import rightness
from loadfirst.cli.convert import printed
from loadfirst.cli.digits import fine
from loadfirst.cli.report import UNITS, reading_text
from loadfirst.days.shift import Shift
from loadfirst.errors import FileError, InputError
from loadfirst.instruments.panel import Reading
from loadfirst.plant import toml_text
from loadfirst.plant.pump_file import Displacement
from loadfirst.plant.pumps import read_pump
from loadfirst.plant.read import read_resolved
from loadfirst.plant.state import true_state
from loadfirst.units import HOUR

VERDICTS = {"right": "right", "group": "right group", "wrong": "wrong"}


def check_text(path: Path) -> str:
    """What ``check`` prints of a file that holds.

    Raises
    ------
    FileError
        For the first thing in it that cannot be used or does not hold.
    """
    kind: Kind = kind_of(toml_text.read(path))
    lines = {"plant": _plant, "pump": _pump, "case": _case}[kind](path)
    return "\n".join([f"{path.name}: {next(lines)}", *lines])


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


def _case(path: Path) -> Iterator[str]:
    """Read as the page reads it: on its own, whatever lies beside it."""
    proven = load_case((path.name, path.read_text(encoding="utf-8-sig")))
    yield f"a puzzle, {proven.case.title}. It holds."
    yield f"  happened       {derived(proven)}"
    yield f"  what differs   {', '.join(proven.days.differences) or 'nothing'}"
    for choice in proven.case.choices:
        blames = " and ".join(choice.blames) + ("" if choice.load is None else f", load {choice.load}")
        yield f"  {VERDICTS[rightness(choice, proven.truth)]:<15}{choice.id} ({blames})"
    for id, claim in proven.case.proof.items():
        yield f"  {claim:<15}{id}, {_days(proven.happened.shift(id))}"


def derived(proven: Proven) -> str:
    """The truth as it follows from the two days."""
    load = "" if proven.truth.load is None else f", load {proven.truth.load}"
    sizes = ["" if size is None else f" {size:.3g}" for size in proven.happened.sizes]
    causes = [f"{id}{size}" for id, size in zip(proven.truth.causes, sizes, strict=True)]
    return f"{' and '.join(causes)} ({' and '.join(proven.truth.groups)}{load})"


def _days(shift: Shift) -> str:
    """Both readings as an engineer would write them down."""
    return f"{_value(shift.yesterday)} yesterday, {_value(shift.today)} today"


def _value(reading: Reading | None) -> str:
    if reading is None:
        return "not there"
    shown = printed(reading)
    key = shown.__struct_fields__[1]
    unit, _ = UNITS[key]
    if reading.off_scale is not None:
        return "below the scale" if reading.off_scale == "low" else "above the scale"
    return "no reading" if reading.value is None else f"{reading_text(key, getattr(shown, key))} {unit}"
