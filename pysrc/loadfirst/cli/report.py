"""The same outputs as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from loadfirst.cli.convert import SHAPES
from loadfirst.cli.digits import fine, places
from loadfirst.cli.output import CurvesOutput, Machine, Possible, ReadOutput
from loadfirst.instruments.file_units import UNITS as FILE_UNITS

UNITS = {
    SHAPES[quantity][0].__struct_fields__[1]: (unit, decimals)
    for quantity, (unit, _, decimals) in FILE_UNITS.items()
}
"""By key: the unit and how many decimals an engineer would read off."""

SMALL = ("flow_m3h", "current_a")
"""Of these a small pump's have more decimals; a small pressure is about none."""

BLOCKS = {
    "lift": "lift",
    "vessel-pressure": "gas pressure",
    "suction-line": "suction line",
    "pipe": "pipe",
    "fittings": "fittings",
    "acceleration": "speeding up the liquid",
    "valve": "control valve",
    "filter": "filter",
    "summit": "over the summit",
    "check-valve": "check valve",
    "jet": "jet at the open end",
    "not-reached": "not reached",
}

WHY = {
    "stalled": "the network could not be balanced",
    "not-a-number": "the equations have no usable solution here",
}


def read_text(output: ReadOutput) -> str:
    """What ``read`` prints without ``--json``."""
    lines = [output.title]
    if not output.converged:
        reason = WHY.get(output.why or "", "the network could not be balanced")
        lines += ["", f"No steady state was found: {reason}. There are no readings."]
        return "\n".join(lines)
    lines += ["", "Instruments", *_instruments(output)]
    lines += ["", f"Duty point   {fine(output.duty.flow_m3h, 2)} m³/h at {output.duty.head_m:.2f} m"]
    lines += [_state(state) for state in output.states]
    lines += [f"  {name:<11} {flow:>z9.2f} m³/h" for name, flow in output.aside_m3h.items()]
    lines += ["", "Load and answer", *_breakdown(output), *_balance(output)]
    lines += ["", "Power", *(line for machine in output.machines for line in _power(machine))]
    if output.notes:
        lines += ["", "Notes", *(f"  {note.text}" for note in output.notes)]
    return "\n".join(lines)


def _state(state: Possible) -> str:
    each = " + ".join(fine(flow, 2) for flow in state.pump_flows_m3h)
    said = "is there" if state.there else "would last" if state.lasts else "would not last"
    return f"  {said:<15} {fine(state.flow_m3h, 2)} m³/h at {state.head_m:.2f} m, through the pumps {each}"


def curves_text(output: CurvesOutput) -> str:
    """What ``curves`` prints without ``--json``: a table."""
    heads = ("flow m³/h", "load m", "one pump m", "station m", "NPSHr m", "power kW")
    columns = (
        output.flow_m3h, output.load_head_m, output.machine_head_m, output.station_head_m,
        output.npsh_required_m, output.shaft_power_kw,
    )  # fmt: skip
    rows = ["".join(row) for row in zip(*(_column(column) for column in columns), strict=True)]
    duty = f"Duty point   {fine(output.duty.flow_m3h, 2)} m³/h at {output.duty.head_m:.2f} m"
    return "\n".join([output.title, "", "".join(f"{head:>12}" for head in heads), *rows, "", duty])


def _column(numbers: Sequence[float | None]) -> list[str]:
    """Cells of equal decimals: as many as the largest number asks for."""
    largest = max(abs(number or 0.0) for number in numbers)
    decimals = places(largest, 2, 3)
    return [f"{'–' if number is None else f'{number:z.{decimals}f}':>12}" for number in numbers]


def _instruments(output: ReadOutput) -> Iterator[str]:
    for instrument in output.instruments:
        key = instrument.__struct_fields__[1]
        unit, decimals = UNITS[key]
        value: Any = getattr(instrument, key)
        error: Any = getattr(instrument, instrument.__struct_fields__[4])
        if value is None:
            yield f"  {instrument.id:<18}{'–':>9}  nothing to read"
            continue
        off = {"low": "  off the scale, below its lower end", "high": "  off the scale, beyond its upper end"}
        yield (
            f"  {instrument.id:<18}{reading_text(key, value):>9} {unit:<6} ± {fine(error, decimals, 1)}"
            f"{off.get(instrument.off_scale or '', '')}"
        )


def reading_text(key: str, number: float) -> str:
    """A reading without its unit; `key` is one of `UNITS`."""
    decimals = UNITS[key][1]
    return fine(number, decimals) if key in SMALL else f"{number:z.{decimals}f}"


def _breakdown(output: ReadOutput) -> Iterator[str]:
    for block in output.head_breakdown:
        yield _head(BLOCKS[block.block], block.head_m)
    yield _head("the load asks", output.balance.answer_m)


def _balance(output: ReadOutput) -> Iterator[str]:
    balance = output.balance
    pumps = len(output.machines) > 1
    yield _head("the pumps answer" if pumps else "the pump answers", balance.answer_m)
    yield _head("= pressure head", balance.pressure_head_m)
    yield _head("+ height difference", balance.height_m)
    yield _head("+ velocity head", balance.velocity_head_m)
    if pumps:
        yield _head("+ check valves", balance.check_valve_m)


def _head(name: str, head: float | None) -> str:
    number = "undefined" if head is None else f"{head:>z9.2f} m"
    return f"  {name:<28}{number:>9}"


def _power(machine: Machine) -> Iterator[str]:
    available = "undefined" if machine.npsh_available_m is None else f"{machine.npsh_available_m:.1f} m"
    shaft, taken = fine(machine.shaft_power_kw, 2), fine(machine.motor_input_kw, 2)
    flow, current = fine(machine.flow_m3h, 2), fine(machine.current_a, 1)
    yield (
        f"  {machine.name}   shaft {shaft} kW, {machine.load_percent:.0f} % of the "
        f"motor's rated power; motor takes {taken} kW, {current} A"
    )
    yield (
        f"           {flow} m³/h at {machine.head_m:.2f} m, {machine.speed_rpm:.0f} 1/min, "
        f"efficiency {machine.efficiency_percent:.0f} %"
    )
    yield f"           NPSH {available} available, {machine.npsh_required_m:.1f} m required"
