"""The true state of plants: solve them, and say everything that is true of each."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import UNSET
from msgspec.structs import replace

from loadfirst.physics.backward import Backward
from loadfirst.physics.breakdown import breakdown_torque
from loadfirst.physics.displacement import DisplacementMachines
from loadfirst.physics.drive import synchronous_speed
from loadfirst.physics.machine import Running
from loadfirst.physics.network import LOST, STALLED
from loadfirst.physics.standing import StandingPumps
from loadfirst.plant import backward
from loadfirst.plant.air import air_pressure
from loadfirst.plant.answer import Duty, LiquidState, Machine, State, Station, Why
from loadfirst.plant.automatic import settled
from loadfirst.plant.build import Built, ResolvedPlant, build
from loadfirst.plant.control_state import control_of
from loadfirst.plant.drive_state import with_drive
from loadfirst.plant.drives import frequency
from loadfirst.plant.layout import Shape, shape_of
from loadfirst.plant.notes import notes
from loadfirst.plant.path import nodes, path
from loadfirst.plant.possible import possible_states
from loadfirst.plant.pump_kind import pump_kind
from loadfirst.plant.solved import OnePlant, Solved, solve_plants
from loadfirst.plant.stack import balance, own_head, stack
from loadfirst.plant.told import Told

__all__ = ["State", "state_of", "true_state", "true_states"]

HUNTING = ("npsh-short", "suction-boils", "vortex", "control-hunts")
"""Notes on what makes gauges and ammeters swing; bubbles alone do not, by common practice."""

WHY: dict[str, Why] = {STALLED: "stalled", LOST: "not-a-number"}


def true_state(plant: ResolvedPlant | Built) -> State:
    """The state of one plant.

    Parameters
    ----------
    plant : with its pump's points, or already built (then the first of those built).
    """
    built = plant if isinstance(plant, Built) else build(settled([plant]))
    return state_of(solve_plants(built), 0)


def true_states(plants: Sequence[ResolvedPlant]) -> list[State]:
    """The states of many plants, in their order; those of one shape are solved together."""
    plants = settled(plants)
    shapes: dict[Shape, list[int]] = {}
    for at, one in enumerate(plants):
        shapes.setdefault(shape_of(one), []).append(at)
    states: dict[int, State] = {}
    for places in shapes.values():
        solved = solve_plants(build([plants[at] for at in places]))
        states |= {at: state_of(solved, row) for row, at in enumerate(places)}
    return [states[at] for at in range(len(plants))]


def state_of(solved: Solved, row: int) -> State:
    """The state of one of the plants of a batch."""
    one = solved.of(row)
    reason = solved.solution.reason[row]
    machines, way = _machines(one), path(one)
    station, taps = _station(one, machines), nodes(one)
    control = control_of(one, taps) if one.plant.control.fitted else None
    found = solved.built.plants[row].found
    possible = possible_states(one)
    noted = notes(one, Told(machines, way, possible, control))
    return State(
        converged=bool(solved.solution.converged[row]),
        why=None if reason is None else WHY[reason],
        flow=one.flow("end"),
        station=station,
        machines=machines,
        nodes=taps,
        path=way,
        balance=balance(one, station),
        liquid=LiquidState(one.liquid.density, one.liquid.viscosity, one.liquid.vapour_pressure),
        synchronous_speed=_synchronous_speed(one),
        flow_scale=one.flow_scale,
        stack=stack(one, station.head),
        duty=Duty(station.flow, station.head),
        notes=noted,
        hunting=any(note.kind in HUNTING for note in noted),
        aside={name: one.flow(name) for name in one.layout.aside},
        control=UNSET if control is None else control,
        moved=UNSET if found is None else found.moved,
        possible=possible if len(possible) > 1 else UNSET,
    )


def _synchronous_speed(one: OnePlant) -> float:
    """Of the motors' field, behind whatever gearbox or belt. [rad/s]"""
    drive = one.plant.drive
    return float(synchronous_speed(frequency(drive), drive.poles))


def _station(one: OnePlant, machines: tuple[Machine, ...]) -> Station:
    head = own_head(one, machines)
    return Station(one.flow("suction-line"), head, one.head("suction"), one.head("discharge"))


def _machines(one: OnePlant) -> tuple[Machine, ...]:
    inlets = {element.name: element.inlet for element in one.layout.elements} | backward.inlets(one.built)
    return tuple(_machine(one, name, number, inlets[name]) for number, name in enumerate(one.layout.pumps))


def _machine(one: OnePlant, name: str, place: int, inlet: str) -> Machine:
    law, running, column = one.running(place)
    head = one.head(inlet)

    def number(values: np.ndarray) -> float:
        return float(values[one.row, column])

    machine = Machine(
        name=name,
        kind=pump_kind(one.built.plants[one.row].pumps[place]),
        flow=one.flow(name),
        head=number(running.head),
        speed=number(running.speed),
        torque=number(running.torque),
        shaft_power=number(running.shaft_power),
        efficiency=number(running.efficiency),
        npsh_required=number(running.npsh_required),
        npsh_available=None if head is None else _npsh_available(one, head),
        motor_input=number(running.motor_input),
        current=number(running.current),
        load=number(running.load),
        best_efficiency_flow=float(one.per_machine(law.best_efficiency_flow)[column]),
        rated_power=float(one.per_machine(law.motor.rated_power)[column]),
        rated_current=float(one.per_machine(law.motor.rated_current)[column]),
    )
    if isinstance(law, StandingPumps):
        return replace(machine, standing=True, speed=machine.speed if machine.flow else 0.0)
    if isinstance(law, Backward):
        machine, law = replace(machine, backward=True), law.turned
    if isinstance(running, Running) or not isinstance(law, DisplacementMachines):
        return with_drive(one, machine, place)
    held_by_belt = law.motor.grip < breakdown_torque(law.motor)
    machine = replace(
        machine,
        pressure=number(running.pressure),
        pressure_limit=float(one.per_machine(law.pumps.pressure_limit)[column]),
        volumetric_efficiency=number(running.volumetric_efficiency),
        mechanical_efficiency=number(running.mechanical_efficiency),
        stalled=bool(running.stalled[one.row, column] and not one.per_machine(held_by_belt)[column]),
    )
    return with_drive(one, machine, place)


def _npsh_available(one: OnePlant, head: float) -> float:
    """Energy head at the pump's inlet above its centre, absolute, less the vapour pressure's. [m]

    Source: ISO 9906, NPSH = p/(ρg) + v²/2g above the reference plane, absolute, less p_v/(ρg).
    """
    air = air_pressure(one.plant) - one.liquid.vapour_pressure
    return head - one.plant.pump.centre_m + air / one.weight
