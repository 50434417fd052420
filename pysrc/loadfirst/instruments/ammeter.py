"""The ammeters of a plant: from the true current to what a person reads."""

from __future__ import annotations

from collections.abc import Iterator

from loadfirst.instruments.faults.current_place import before_drive
from loadfirst.instruments.faults.zero_and_span import sensed
from loadfirst.instruments.instrument import Chance, Instrument, Reading
from loadfirst.instruments.scales import ammeter_scale
from loadfirst.physics.drive import VOLTAGE
from loadfirst.plant.answer import Machine, State
from loadfirst.plant.drives import has_drive
from loadfirst.plant.plant import Plant
from loadfirst.units import PERCENT


def read_ammeters(state: State, plant: Plant, chance: Chance) -> Iterator[Reading]:
    """What the ammeter of each pump shows; arguments as of `panel.readings`."""
    meters = plant.meters
    fault = meters.current_fault
    for number, machine in enumerate(state.machines, start=1):
        high = meters.current_range_a or ammeter_scale(machine.rated_current)
        dial = Instrument(f"ammeter-{number}", "current", 0.0, high, meters.current_percent)
        if not state.converged:
            yield dial.show(None)
            continue
        zero = fault.zero_percent * PERCENT * high
        yield dial.show(sensed(_current(machine, plant), zero, fault.span_percent), chance=chance)


def _current(machine: Machine, plant: Plant) -> float:
    """Where the ammeter stands; without a drive there is but one such place. [A]"""
    drive = plant.drive
    if plant.meters.current_place == "motor" or not has_drive(drive):
        return machine.current
    return before_drive(machine.motor_input, VOLTAGE[drive.supply_hz] * drive.voltage_percent * PERCENT)
