"""What a cause does to the readings of a plant: which way each moves, how far, and whether it tells."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import hypot
from typing import Literal, NamedTuple

from loadfirst.causes.cause import Cause
from loadfirst.instruments.faults.own_error import repeatable
from loadfirst.instruments.panel import Reading, readings
from loadfirst.instruments.piece import same_piece
from loadfirst.instruments.uncertainty import of_difference
from loadfirst.plant.answer import State
from loadfirst.plant.automatic import settled
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import true_states
from loadfirst.units import PERCENT

Sign = Literal["+", "-", "0", "?"]

UNNOTICED = 0.002
"""Least move that is one, over the value before (or a hundredth of the scale, if that is more). [-]"""

TWICE = 2.0
"""Of its standard deviation, noise makes hardly more: 95 of 100 looks (GUM, 6.3.3, from memory). [-]"""


class Move(NamedTuple):
    """How one quantity has moved.

    Attributes
    ----------
    before, after : SI; None where there is nothing to read.
    scale : a value of usual size, with which moves of a reading near nought are compared.
    off_scale : the pointer rests on a stop afterwards: it moved at least so far.
    error : the most by which two looks at the instrument may differ by themselves; 0 for the truth.
    """

    before: float | None
    after: float | None
    scale: float
    off_scale: bool = False
    error: float = 0.0

    @property
    def sign(self) -> Sign:
        """Which way, by the model; ``?`` where there is nothing to read."""
        if self.before is None or self.after is None:
            return "?"
        change = self.after - self.before
        if abs(change) <= UNNOTICED * max(abs(self.before), PERCENT * self.scale):
            return "0"
        return "+" if change > 0 else "-"

    @property
    def told(self) -> bool:
        """Whether a person can tell it: it is more than the instrument makes by itself."""
        if self.before is None or self.after is None or self.sign == "0":
            return False
        return abs(self.after - self.before) > self.error

    @property
    def percent(self) -> float | None:
        """How far, of the reading before; None where that is next to nought. [%]"""
        if self.before is None or self.after is None or abs(self.before) < PERCENT * self.scale:
            return None
        return (self.after - self.before) / abs(self.before) / PERCENT


@dataclass(frozen=True, slots=True)
class Signature:
    """What a cause does.

    Attributes
    ----------
    moves : by quantity: those of `READ` that the plant has, and ``head``, the true head of the station.
    converged : whether a steady state was found.
    hunts : the readings are unsteady, which a state at rest cannot show.
    """

    moves: Mapping[str, Move]
    converged: bool
    hunts: bool

    def __getitem__(self, quantity: str) -> Move:
        """The move of one quantity."""
        return self.moves[quantity]


READ = {
    "suction": "gauge-suction",
    "discharge": "gauge-discharge",
    "after-valve": "gauge-after-valve",
    "flow": "flow-meter",
    "current": "ammeter-1",
    "current-2": "ammeter-2",
    "speed": "tachometer-1",
    "speed-2": "tachometer-2",
    "level-supply": "level-supply",
    "level-delivery": "level-delivery",
    "output": "controller-output",
}
"""Quantities that are read, and the instrument of each."""
HEAD = "head"
CHIEF = ("suction", "discharge", "flow", "current", HEAD)
"""What every plant has, and lists of causes speak of."""


def signatures(plant: ResolvedPlant, changed: Sequence[tuple[Cause, ResolvedPlant]]) -> tuple[Signature, ...]:
    """Compare a plant with what causes have made of it.

    Parameters
    ----------
    plant : as it was, not settled.
    changed : causes, each with the plant that it leads to.
    """
    at_rest = settled([plant, *(after for _, after in changed)])
    first, *others = true_states(at_rest)
    before = at_rest[0].plant, first
    return tuple(
        _compared(before, cause, after.plant, state)
        for (cause, _), after, state in zip(changed, at_rest[1:], others, strict=True)
    )


def _by_id(shown: Iterable[Reading]) -> dict[str, Reading]:
    return {reading.id: reading for reading in shown}


def _compared(then: tuple[Plant, State], cause: Cause, plant: Plant, state: State) -> Signature:
    was, first = then
    before = _by_id(readings(first, was))
    after = _by_id(readings(state, plant, look=1, before=before))
    moves = {
        name: _move(before[id], after[id], same_piece(id, was, plant))
        for name, id in READ.items()
        if id in before and id in after
    }
    head = Move(first.station.head, state.station.head, abs(first.station.head))
    return Signature({**moves, HEAD: head}, state.converged, cause.hunts)


def _move(before: Reading, after: Reading, same: bool) -> Move:
    scale = max(abs(before.low), abs(before.high))
    errors = before.accuracy or 0.0, after.accuracy or 0.0
    error = of_difference(*errors, same=same, changes=repeatable(before.quantity))
    trembling = TWICE * hypot(before.repeatability or 0.0, after.repeatability or 0.0)
    return Move(before.value, after.value, scale, after.off_scale is not None, max(error, trembling))
