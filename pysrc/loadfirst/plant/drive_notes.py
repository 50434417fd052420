"""Notes on a running machine's motor, relay and belt."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import UNSET

from loadfirst.plant.answer import Machine, Note
from loadfirst.plant.drive_state import at_full_voltage
from loadfirst.plant.solved import OnePlant

LOW = 0.95
"""Voltage over the one that belongs to the frequency, below which it is called low. [-]

Common practice: motors are made for 5 % less without any harm (IEC 60034-1, zone A, from memory).
"""


def drive_notes(one: OnePlant, machine: Machine, place: int) -> Iterator[Note]:
    """Trips, a slipping belt, a start that hangs, a phase lost, and low voltage that raises the current."""
    where, relay, start, belt = machine.name, machine.relay, machine.start, machine.belt
    if relay is UNSET:
        return
    if relay.trips:
        assert relay.after is not None and relay.reason is not None
        facts = {"current": machine.current, "setting": relay.setting, "after": relay.after}
        yield Note("trips", where, facts, relay.reason)
    if belt is not UNSET and belt.slips:
        yield Note("belt-slips", where, {"torque": belt.torque, "speed": machine.speed, "heat": belt.heat})
    hangs = start is not UNSET and start.hangs
    law, _, column = one.running(place)
    motor = law.motor.one(one.row, column)
    two_phases = bool(motor.two_phases[0, 0])
    if start is not UNSET and hangs and not two_phases:
        facts = {"speed": start.speed, "current": start.current}
        yield Note("start-hangs", where, facts, start.way)
    volts, usual = float(motor.relative_voltage[0, 0]), at_full_voltage(motor, machine)
    if two_phases:
        yield Note("phase-lost", where, {"current": machine.current, "usual_current": usual})
    elif volts < LOW and not hangs:
        if machine.current > usual:
            facts = {"voltage": volts, "current": machine.current, "usual_current": usual}
            yield Note("low-voltage", where, facts)
