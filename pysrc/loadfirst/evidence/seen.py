"""What the instruments of many plants would show before their own errors, and how far those may go."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

import numpy as np
from msgspec.structs import replace

from loadfirst.instruments.faults.own_error import repeatable
from loadfirst.instruments.instrument import Quantity, Reading
from loadfirst.instruments.panel import readings
from loadfirst.physics.law import Array, Flags
from loadfirst.plant.answer import State
from loadfirst.plant.automatic import acts
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import changed
from loadfirst.plant.state import true_states
from loadfirst.units import PERCENT

SWING = 1.0 * PERCENT
"""Standard deviation with which a person reads a pointer that swings, of its scale. Own choice. [-]"""
SWINGING = ("pressure", "flow", "current")
"""What swings where the flow hunts; shafts, levels and outputs hardly do. Common practice."""
LEAST = 1e-9
"""Least standard deviation, of a scale: a sound instrument that errs by nothing. [-]"""


class Scale(NamedTuple):
    """An instrument as its reader knows it; ends in SI."""

    id: str
    quantity: Quantity
    low: float
    high: float


class Seen(NamedTuple):
    """What is sensed by I instruments of many plants.

    Attributes
    ----------
    value : ndarray (..., I)
        Beyond the ends of the scale too; nan where the plant gives nothing that is known. [SI]
    lasting, passing : ndarray (..., I)
        Standard deviations of the error that stays and of that which changes from look to look. [SI]
    keeps : ndarray (..., I) of bool
        Shut off: it shows what it showed before.
    solved : ndarray (...) of bool
        Whether a steady state was found.
    """

    value: Array
    lasting: Array
    passing: Array
    keeps: Flags
    solved: Flags

    def rows(self, index: Any) -> Seen:
        """Some of the plants, as arrays are indexed."""
        return self.each(lambda part: part[index])

    def each(self, how: Callable[[Any], Any]) -> Seen:
        """The same done to every array."""
        return Seen(*map(how, self))

    def flat(self) -> Seen:
        """Plants that stand in rows and columns (A, B, ...) in one row."""
        return self.each(lambda part: part.reshape(-1, *part.shape[2:]))


def joined(parts: Sequence[Seen], how: Callable[[Sequence[Any]], Any]) -> Seen:
    """Several made one: concatenated or stacked."""
    return Seen(*(how(same) for same in zip(*parts, strict=True)))


class Test(NamedTuple):
    """What a hand does for a test, and what is read meanwhile.

    Attributes
    ----------
    name : of the test; its instruments are called ``name:gauge-discharge``.
    edits : plant keys and values while it is on.
    reads : ids of instruments.
    """

    name: str
    edits: Mapping[str, Any]
    reads: tuple[str, ...]


class Eye:
    """Looks at one plant, and at what became of it.

    Parameters
    ----------
    plant : as it was, not settled.
    tests : made on each of the plants besides; what is read then counts as instruments of their own.
    """

    def __init__(self, plant: ResolvedPlant, tests: Sequence[Test] = ()) -> None:
        self.plant = plant
        self._states: dict[ResolvedPlant, State] = {}
        self.state = self._solved([plant])[0]
        shown = readings(self.state, plant.plant, bare=True)
        self.before = {reading.id: reading for reading in shown}
        self.scales = tuple(Scale(one.id, one.quantity, one.low, one.high) for one in shown)
        self.tests = [(one, Eye(changed(plant, one.edits))) for one in tests]
        for test, eye in self.tests:
            eye.before = self.before  # a gauge that is shut off keeps what it showed before the test
            self.scales += tuple(
                scale._replace(id=f"{test.name}:{scale.id}") for scale in eye.scales if scale.id in test.reads
            )

    def look(self, plants: Sequence[ResolvedPlant], hunts: Sequence[bool]) -> Seen:
        """What is sensed at each of the plants.

        Parameters
        ----------
        plants : not settled, each the first one changed.
        hunts : whether the readings of each swing for another reason than its state tells.
        """
        found = [
            _row(readings(state, one.plant, bare=True, before=self.before), one.plant, state, swings)
            for one, state, swings in zip(plants, self._solved(plants), hunts, strict=True)
        ]
        columns = [np.array(column) for column in zip(*found, strict=True)]
        return _beside(Seen(*columns), [self._tested(plants, hunts, *each) for each in self.tests])

    def forget(self) -> None:
        """Let go of the states that were solved: they take much room, and can be solved again."""
        self._states.clear()
        for _, eye in self.tests:
            eye.forget()

    def _tested(self, plants: Sequence[ResolvedPlant], hunts: Sequence[bool], test: Test, eye: Eye) -> Seen:
        seen = eye.look([changed(one, test.edits) for one in plants], hunts)
        read = np.array([scale.id in test.reads for scale in eye.scales])
        value, lasting, passing = (part[:, read] for part in (seen.value, seen.lasting, seen.passing))
        return Seen(value, lasting, passing, np.zeros_like(value, dtype=bool), seen.solved)

    def _solved(self, plants: Sequence[ResolvedPlant]) -> list[State]:
        """Their states; plants that differ in nothing that moves the liquid are solved once."""
        works = [self._works(one) for one in plants]
        new = [one for one in dict.fromkeys(works) if one not in self._states]
        self._states |= zip(new, true_states(new), strict=True)
        return [self._states[one] for one in works]

    def _works(self, one: ResolvedPlant) -> ResolvedPlant:
        """The plant with the instruments of before, unless a controller goes by them."""
        own = self.plant.plant
        if acts(one.plant):
            return one
        return one._replace(plant=replace(one.plant, gauges=own.gauges, meters=own.meters))


def instruments_of(plant: ResolvedPlant) -> tuple[Scale, ...]:
    """What can be read at a plant."""
    return Eye(plant).scales


def _beside(seen: Seen, tests: Sequence[Seen]) -> Seen:
    """The instruments of tests beside the others; a test without a steady state tells nothing."""
    if not tests:
        return seen
    every = [seen, *(one._replace(value=np.where(one.solved[:, None], one.value, np.nan)) for one in tests)]
    wide = joined(
        [one._replace(solved=one.keeps) for one in every], lambda same: np.concatenate(same, axis=1)
    )
    return wide._replace(solved=seen.solved)


def _row(shown: Sequence[Reading], plant: Plant, state: State, hunts: bool) -> tuple[object, ...]:
    swings = hunts or state.hunting
    values = [math.nan if one.value is None else one.value for one in shown]
    lasting, passing = zip(*(_errors(one, swings) for one in shown), strict=True)
    return values, lasting, passing, [_keeps(one.id, plant) for one in shown], state.converged


def _errors(one: Reading, swings: bool) -> tuple[float, float]:
    """Both parts of a sound instrument's error, of rectangular distributions; noise and swinging besides.

    Sources: JCGM 100:2008 (GUM), 4.3.7 and 5.1.2 (from memory): a/√3, added in squares.
    """
    span = one.high - one.low
    if one.accuracy is None or one.uncertainty is None:
        return LEAST * span, LEAST * span
    limit = one.accuracy / math.sqrt(3)
    noise = math.sqrt(max(one.uncertainty**2 - limit**2, 0.0))
    swing = SWING * span if swings and one.quantity in SWINGING else 0.0
    changes = repeatable(one.quantity)
    return (1 - changes) * limit, math.hypot(changes * limit, noise, swing, LEAST * span)


def _keeps(id: str, plant: Plant) -> bool:
    dials = {
        "gauge-suction": plant.gauges.suction,
        "gauge-discharge": plant.gauges.discharge,
        "gauge-after-valve": plant.gauges.after_valve,
    }
    if id not in dials:
        return False
    fault = dials[id].fault
    return fault.root_valve == "shut" and fault.frozen_bar is None
