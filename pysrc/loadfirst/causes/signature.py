"""What a cause does to the readings of a plant: which way each moves, and how far."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal, NamedTuple

from loadfirst.causes.cause import Cause
from loadfirst.instruments.panel import Reading, readings
from loadfirst.plant.answer import State
from loadfirst.plant.automatic import settled
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import true_states
from loadfirst.units import PERCENT

Sign = Literal["+", "-", "0", "?"]

UNNOTICED = 0.002
"""Least move that counts, over the reading before (or a hundredth of the scale, if that is more). [-]"""


class Move(NamedTuple):
    """How one quantity has moved.

    Attributes
    ----------
    before, after : SI; None where there is nothing to read.
    scale : a value of usual size, with which moves of a reading near nought are compared.
    off_scale : the pointer rests on a stop afterwards: it moved at least so far.
    """

    before: float | None
    after: float | None
    scale: float
    off_scale: bool = False

    @property
    def sign(self) -> Sign:
        """Which way; ``?`` where there is nothing to read."""
        if self.before is None or self.after is None:
            return "?"
        change = self.after - self.before
        if abs(change) <= UNNOTICED * max(abs(self.before), PERCENT * self.scale):
            return "0"
        return "+" if change > 0 else "-"

    @property
    def percent(self) -> float | None:
        """How far, of the reading before; None where that is next to nought. [%]"""
        if self.before is None or self.after is None or abs(self.before) < PERCENT * self.scale:
            return None
        return (self.after - self.before) / abs(self.before) / PERCENT


class Signature(NamedTuple):
    """What a cause does to five quantities: four readings, and the true head of the station."""

    suction: Move
    discharge: Move
    flow: Move
    current: Move
    head: Move
    converged: bool
    hunts: bool


QUANTITIES = ("suction", "discharge", "flow", "current", "head")
READ = {
    "suction": "gauge-suction",
    "discharge": "gauge-discharge",
    "flow": "flow-meter",
    "current": "ammeter-1",
}


def signatures(plant: ResolvedPlant, changed: Sequence[tuple[Cause, ResolvedPlant]]) -> tuple[Signature, ...]:
    """Compare a plant with what causes have made of it.

    Parameters
    ----------
    plant : as it was, not settled.
    changed : causes, each with the plant that it leads to.
    """
    at_rest = settled([plant, *(after for _, after in changed)])
    first, *others = true_states(at_rest)
    before = _by_id(readings(first, at_rest[0].plant))
    return tuple(
        _compared(before, first, cause, after, state)
        for (cause, _), after, state in zip(changed, at_rest[1:], others, strict=True)
    )


def _by_id(shown: Iterable[Reading]) -> dict[str, Reading]:
    return {reading.id: reading for reading in shown}


def _compared(
    before: dict[str, Reading], first: State, cause: Cause, plant: ResolvedPlant, state: State
) -> Signature:
    after = _by_id(readings(state, plant.plant, look=1, before=before))
    moves = {name: _move(before[id], after[id]) for name, id in READ.items()}
    head = Move(first.station.head, state.station.head, abs(first.station.head))
    return Signature(**moves, head=head, converged=state.converged, hunts=cause.hunts)


def _move(before: Reading, after: Reading) -> Move:
    scale = max(abs(before.low), abs(before.high))
    return Move(before.value, after.value, scale, after.off_scale is not None)
