"""What is true of a plant at a moment: its state as `plant.state` says it, with what only time knows."""

from __future__ import annotations

from dataclasses import replace as with_fields

from msgspec import UNSET
from msgspec.structs import replace

from loadfirst.clock.present import present
from loadfirst.clock.run import Run
from loadfirst.clock.stage import idle
from loadfirst.plant.answer import Machine, Note, State
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import state_of


def now(ran: Run) -> ResolvedPlant:
    """The plant as it stands at the end of a run, before what happened there has had its effect."""
    moment, stage = ran.step.moment, ran.step.stage
    volumes = moment.supply.volume[0], moment.delivery.volume[0]
    return present(ran.resolved, moment, volumes, moment.stem, stage.shafts)


def look(ran: Run) -> State:
    """The true state at the end of a run.

    The stack has a block "acceleration": head that speeds the liquid up, or slows it. An ammeter
    shows what a motor draws that runs up.
    """
    solved = ran.step.stage.solved
    built = with_fields(solved.built, plants=(now(ran),))
    state = state_of(solved._replace(built=built), 0)
    machines = tuple(_machine(machine, ran, number) for number, machine in enumerate(state.machines))
    notes = tuple(_note(note, ran) for note in state.notes)
    return replace(state, machines=machines, notes=notes)


def _note(note: Note, ran: Run) -> Note:
    """In place of a note that says that a motor is off, one that its pump runs dry, where that is so."""
    number = {"pump-1": 0, "pump-2": 1}.get(note.where)
    if number is None or note.kind not in ("standing", "turning-backward") or not _runs_dry(ran, number):
        return note
    return Note("runs-dry", note.where, {"speed": idle(ran.step.stage.solved.of(0), number)[0]})


def _runs_dry(ran: Run, number: int) -> bool:
    """Whether a motor turns a pump that has lost its prime."""
    return ran.step.stage.shafts[number].regime == "running" and not ran.step.moment.primed


def _machine(machine: Machine, ran: Run, number: int) -> Machine:
    """With the current of a motor that runs up or is off, and the speed of a pump that has lost its prime."""
    shaft, current = ran.step.stage.shafts[number], ran.step.stage.currents[number]
    if shaft.regime == "turning":
        power = machine.motor_input if current else 0.0
        return replace(machine, speed=shaft.speed, current=current, motor_input=power, standing=UNSET)
    if _runs_dry(ran, number):
        speed, current, power = idle(ran.step.stage.solved.of(0), number)
        return replace(machine, speed=speed, motor_input=power, current=current, standing=UNSET)
    return machine
