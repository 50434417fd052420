"""From the state and the readings, in SI, to what the command line prints, in the units of its keys."""

from __future__ import annotations

from typing import Any

from msgspec import UNSET

from loadfirst.cli.notes import sentence
from loadfirst.cli.output import (
    Balance,
    Block,
    Current,
    CurvesOutput,
    Flow,
    Level,
    Machine,
    Note,
    Output,
    Point,
    Possible,
    Pressure,
    ReadOutput,
    Speed,
)
from loadfirst.instruments.file_units import UNITS
from loadfirst.instruments.instrument import Quantity, Reading, Shown
from loadfirst.plant.answer import Machine as TrueMachine
from loadfirst.plant.answer import Note as TrueNote
from loadfirst.plant.answer import Possible as TruePossible
from loadfirst.plant.answer import State
from loadfirst.plant.curves import Curves
from loadfirst.plant.plant import Plant
from loadfirst.units import BAR, HOUR, PERCENT, RPM, TO_SI

KW = TO_SI["kw"]

Printed = Pressure | Flow | Current | Speed | Level | Output
_TYPES: dict[Quantity, Any] = {
    "pressure": Pressure, "flow": Flow, "current": Current, "speed": Speed, "height": Level, "output": Output,
}  # fmt: skip
SHAPES: dict[Quantity, tuple[Any, float]] = {
    quantity: (shape, UNITS[quantity][1]) for quantity, shape in _TYPES.items()
}
"""By quantity: the printed type and its unit. [SI]"""


FACTS = {
    "flow": ("flow_m3h", 1 / HOUR),
    "last_flow": ("last_flow_m3h", 1 / HOUR),
    "head": ("head_m", 1.0),
    "missing": ("missing_m", 1.0),
    "drop": ("drop_bar", BAR),
    "most": ("most_bar", BAR),
    "rise": ("rise_m", 1.0),
    "height": ("height_m", 1.0),
    "filled": ("filled_percent", PERCENT),
    "shaft_power": ("shaft_power_kw", KW),
    "rated_power": ("rated_power_kw", KW),
    "load": ("load_percent", PERCENT),
    "speed": ("speed_rpm", RPM),
    "measured_speed": ("measured_speed_rpm", RPM),
    "available": ("npsh_available_m", 1.0),
    "enough": ("enough_at_m3h", 1 / HOUR),
    "lost": ("lost_m", 1.0),
    "above": ("submergence_m", 1.0),
    "needed": ("required_submergence_m", 1.0),
    "required": ("npsh_required_m", 1.0),
    "pressure": ("pressure_bar", BAR),
    "limit": ("limit_bar", BAR),
    "got": ("got", 1.0),
    "low": ("low", 1.0),
    "high": ("high", 1.0),
    "held": ("held", 1.0),
    "set": ("set_bar", BAR),
    "torque": ("torque_nm", 1.0),
    "heat": ("heat_kw", KW),
    "current": ("current_a", 1.0),
    "usual_current": ("usual_current_a", 1.0),
    "setting": ("setting_a", 1.0),
    "after": ("after_s", 1.0),
    "voltage": ("voltage_percent", PERCENT),
    "output": ("output_percent", PERCENT),
    "wanted_flow": ("wanted_flow_m3h", 1 / HOUR),
    "wanted_pressure": ("wanted_pressure_bar", BAR),
    "wanted_height": ("wanted_height_m", 1.0),
    "draw": ("draw_m3h", 1 / HOUR),
    "frequency": ("frequency_hz", 1.0),
    "asked": ("asked_hz", 1.0),
    "against": ("against_m", 1.0),
    "states": ("states", 1.0),
    "lasting": ("lasting", 1.0),
    "least_flow": ("least_flow_m3h", 1 / HOUR),
    "most_flow": ("most_flow_m3h", 1 / HOUR),
    "vapour_pressure": ("vapour_pressure_bar", BAR),
}
"""By fact of a note: the printed key and its unit. [SI]"""


def read_output(file: str, plant: Plant, state: State, shown: Shown) -> ReadOutput:
    """All that ``read`` prints."""
    return ReadOutput(
        file=file,
        title=plant.title,
        converged=state.converged,
        why=state.why,
        instruments=[printed(reading) for reading in shown],
        duty=Point(state.duty.flow * HOUR, state.duty.head),
        states=[] if state.possible is UNSET else [_possible(each) for each in state.possible],
        aside_m3h={name: flow * HOUR for name, flow in state.aside.items()},
        head_breakdown=[Block(block.block, block.head) for block in state.stack],
        balance=_balance(state),
        machines=[_machine(machine) for machine in state.machines],
        notes=[_note(note, state) for note in state.notes],
    )


def curves_output(file: str, plant: Plant, state: State, curves: Curves) -> CurvesOutput:
    """All that ``curves`` prints."""
    return CurvesOutput(
        file=file,
        title=plant.title,
        flow_m3h=[flow * HOUR for flow in curves.flow],
        load_head_m=list(curves.load),
        machine_head_m=list(curves.machine),
        station_head_m=list(curves.station),
        npsh_required_m=list(curves.npsh_required),
        shaft_power_kw=[_in(power, KW) for power in curves.power],
        duty=Point(state.duty.flow * HOUR, state.duty.head),
    )


def printed(reading: Reading) -> Printed:
    """A reading in the unit of its printed type."""
    shape, unit = SHAPES[reading.quantity]
    told = (reading.value, reading.low, reading.high, reading.accuracy, reading.uncertainty)
    numbers = [_in(number, unit) for number in told]
    made: Printed = shape(reading.id, *numbers, reading.off_scale)
    return made


def _possible(one: TruePossible) -> Possible:
    return Possible(one.flow * HOUR, one.head, [flow * HOUR for flow in one.flows], one.lasts, one.there)


def _note(note: TrueNote, state: State) -> Note:
    return Note(note.kind, note.where, _facts(note), sentence(note, state.station.flow != 0))


def _facts(note: TrueNote) -> dict[str, float]:
    return {FACTS[name][0]: value / FACTS[name][1] for name, value in note.facts.items()}


def _balance(state: State) -> Balance:
    true = state.balance
    return Balance(true.pressure_head, true.height, true.velocity_head, true.check_valve, true.answer)


def _machine(machine: TrueMachine) -> Machine:
    return Machine(
        name=machine.name,
        kind=machine.kind,
        flow_m3h=machine.flow * HOUR,
        head_m=machine.head,
        speed_rpm=machine.speed / RPM,
        shaft_power_kw=machine.shaft_power / KW,
        efficiency_percent=machine.efficiency / PERCENT,
        npsh_required_m=machine.npsh_required,
        npsh_available_m=machine.npsh_available,
        motor_input_kw=machine.motor_input / KW,
        current_a=machine.current,
        load_percent=machine.load / PERCENT,
        motor_speed_rpm=None if machine.motor_speed is UNSET else machine.motor_speed / RPM,
        start_current_a=None if machine.start is UNSET else machine.start.current,
        trips_after_s=None if machine.relay is UNSET else machine.relay.after,
    )


def _in(number: float | None, unit: float) -> float | None:
    return None if number is None else number / unit
