"""Both days of a drawn case: yesterday's plant, and what its causes make of it overnight."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from loadfirst.cases.case import Case, Change, Check
from loadfirst.cases.draw import instrument_seed
from loadfirst.causes.catalogue import cause
from loadfirst.causes.cause import Cause, Edits
from loadfirst.days.shift import Shift, shift
from loadfirst.days.two_days import DayName, Days, flat, two_days
from loadfirst.errors import InputError
from loadfirst.instruments.piece import same_piece
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.places import inside
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import plant_data, resolve_data

TEST_LOOKS = 10
"""Number of the first look of the first test; each has looks of its own, and so its own scatter."""


@dataclass(frozen=True)
class Happened:
    """What happened in a drawn case.

    Attributes
    ----------
    case : drawn.
    days : both of them, as they stand.
    sizes : of today's causes, in their order; None where one has none.
    """

    case: Case
    days: Days
    sizes: tuple[float | None, ...]

    def shift(self, id: str) -> Shift:
        """One instrument on both days; `shut-in:gauge-discharge` while the test of that check is on."""
        check, _, reading = id.rpartition(":")
        return _shift(self.tests[check] if check else self.days, reading)

    def shift_in(self, check: Check, id: str) -> Shift:
        """One instrument that a check reads, on both days, while its test is on."""
        return _shift(self.tests.get(check.id, self.days), id)

    def quantity(self, day: DayName, source: str) -> tuple[str, float] | None:
        """As of `Days`, and what a test reads, as `shift` names it."""
        if ":" not in source:
            return self.days.quantity(day, source)
        check, _, reading = source.rpartition(":")
        return self.tests[check].quantity(day, reading) if source in self.tested_readings else None

    @property
    def tested_readings(self) -> list[str]:
        """What the tests read, as `shift` names it."""
        tests = (check for check in self.case.checks if check.does)
        return [f"{check.id}:{id}" for check in tests for id in check.reads]

    @cached_property
    def tests(self) -> dict[str, Days]:
        """By the check's id: both days while a hand does what the check does.

        Raises
        ------
        InputError
            Where a test cannot be made on this plant.
        """
        found = {}
        for number, check in enumerate(self.case.checks):
            if check.does:
                with inside(f"checks[{number}].does"):
                    found[check.id] = self.tested(check, number)
        return found

    def tested(self, check: Check, number: int) -> Days:
        """Both days while the test of one check is on."""
        plants = (self.days.yesterday.data, self.days.today.data)
        yesterday, today = (_edited(plant, check.does) for plant in plants)
        return two_days(yesterday, today, TEST_LOOKS + 2 * number, shown=self.days)


def happened(case: Case) -> Happened:
    """Compute both days of a drawn case.

    Raises
    ------
    InputError
        For a plant, an edit or a cause that cannot be used, or a day on which no
        steady state is found; `where` starts with the key of the case.
    """
    yesterday = yesterday_of(case.plant, case.seed, case.yesterday.plant)
    today, sizes = overnight(yesterday, case.today)
    return Happened(case, two_days(yesterday, today), sizes)


def yesterday_of(
    plant: str | dict[str, Any], seed: int, edits: Mapping[str, Any] | None = None
) -> dict[str, Any]:
    """Yesterday's plant as plain data: edited, with instruments as a seed draws them. Raises InputError."""
    given = plant_data(plant)
    with inside("plant"):
        resolve_data(given)
    base = apply_edits(given, {"meters.seed": instrument_seed(seed)})
    with inside("yesterday.plant"):
        return _edited(base, edits or {})


def overnight(
    yesterday: dict[str, Any], changes: Sequence[Change]
) -> tuple[dict[str, Any], tuple[float | None, ...]]:
    """Today's plant as plain data, and the sizes; None where a change has none. Raises InputError."""
    today, sizes = yesterday, []
    for number, change in enumerate(changes):
        with inside(f"today[{number}]"):
            today, size = _changed(today, change)
        sizes.append(size)
    return today, tuple(sizes)


def _edited(plant: dict[str, Any], edits: Mapping[str, Any]) -> dict[str, Any]:
    edited = apply_edits(plant, flat(edits))
    resolve_data(edited)
    return edited


def _changed(plant: dict[str, Any], change: Change) -> tuple[dict[str, Any], float | None]:
    one, resolved = cause(change.cause), resolve_data(plant)
    reason = one.applies(resolved)
    if reason is not None:
        raise InputError(
            "cause", one.id, "a cause that can happen to this plant", f"Here {reason}.", rule="together"
        )
    if one.size is None and change.size is not None:
        raise InputError("size", change.size, "left out: this cause happens or does not", rule="together")
    for end in change.between or ():
        _edits(one, resolved, end, "between")
    size = one.usual(resolved) if change.size is None else change.size
    return apply_edits(plant, _edits(one, resolved, size, "size")), None if one.size is None else size


def _edits(one: Cause, plant: ResolvedPlant, size: float, key: str) -> Edits:
    """The edits of a cause that does happen; `key` gave its size."""
    if one.size is not None and size == one.size.none:
        raise InputError(key, size, "a size at which something happens", rule="range")
    try:
        return one.edits(plant, size)
    except InputError as error:
        raise InputError(key, size, error.allowed, error.hint, rule=error.rule, **error.facts) from error


def _shift(days: Days, id: str) -> Shift:
    before, after = days.yesterday, days.today
    plants = before.settled.plant, after.settled.plant
    return shift(before.readings.get(id), after.readings.get(id), same_piece(id, *plants))
