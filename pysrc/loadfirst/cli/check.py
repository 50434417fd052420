"""Whether an author's files hold: a plant comes to rest, a pump is one, a puzzle's proof is borne out."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from loadfirst.cases.derive import is_right
from loadfirst.cases.load import load_case
from loadfirst.cases.proof import Proven
from loadfirst.cases.recognise import Kind, kind_of
from loadfirst.cli.convert import printed
from loadfirst.cli.digits import fine
from loadfirst.cli.report import UNITS, reading_text
from loadfirst.errors import FileError, InputError
from loadfirst.instruments.panel import Reading
from loadfirst.plant import toml_text
from loadfirst.plant.pump_file import Displacement
from loadfirst.plant.pumps import read_pump
from loadfirst.plant.read import read_resolved
from loadfirst.plant.state import true_state
from loadfirst.units import HOUR


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
    yield f"  what differs   {', '.join(proven.days.differences) or 'nothing'} ({derived(proven)})"
    for choice in proven.case.choices:
        holds = is_right(choice, proven.truth, proven.load)
        blames = choice.blames if choice.load is None else f"{choice.blames}, load {choice.load}"
        yield f"  {'right' if holds else 'wrong':<15}{choice.id} ({blames})"
    for id, claim in proven.case.proof.items():
        yield f"  {claim:<15}{id}, {_days(*proven.days.reading(id))}"


def derived(proven: Proven) -> str:
    """The truth as it follows from the two days."""
    return proven.truth if proven.load is None else f"{proven.truth}, load {proven.load}"


def _days(yesterday: Reading, today: Reading) -> str:
    """Both readings as an engineer would write them down."""
    return f"{_value(yesterday)} yesterday, {_value(today)} today"


def _value(reading: Reading) -> str:
    shown = printed(reading)
    key = shown.__struct_fields__[1]
    unit, _ = UNITS[key]
    if reading.off_scale is not None:
        return "below the scale" if reading.off_scale == "low" else "above the scale"
    return "no reading" if reading.value is None else f"{reading_text(key, getattr(shown, key))} {unit}"
