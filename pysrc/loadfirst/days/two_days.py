"""Two days, computed: plants, true states, what the instruments show, what differs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal

import msgspec

from loadfirst.days.load_then import LoadThen
from loadfirst.errors import InputError
from loadfirst.instruments.panel import Reading, readings
from loadfirst.plant.automatic import settled
from loadfirst.plant.keys import keys_of
from loadfirst.plant.places import inside
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import State, true_state
from loadfirst.units import TO_SI, ZERO_CELSIUS

QUANTITIES = {
    "m": ("height", TO_SI["m"], 0.0),
    "mm": ("length", TO_SI["mm"], 0.0),
    "bar": ("pressure", TO_SI["bar"], 0.0),
    "m³/h": ("flow", TO_SI["m3h"], 0.0),
    "°C": ("temperature", 1.0, ZERO_CELSIUS),
    "Hz": ("frequency", TO_SI["hz"], 0.0),
    "kW": ("power", TO_SI["kw"], 0.0),
    "kg/m³": ("density", TO_SI["kgm3"], 0.0),
}
"""Unit of a plant key: the quantity that the page formats, factor and offset to SI."""


OPENINGS = ("valve.opening", "branch.opening", "return_line.opening")
WHOLE = ("pump.curve", "pump.displacement")
"""A table that is given or taken away as one."""


DayName = Literal["yesterday", "today"]

Shown = dict[str, Reading]
"""What instruments show, by their ids."""


@dataclass(frozen=True)
class OneDay:
    """One day: the plant as data with every edit applied, its true state and its readings by id.

    `resolved` is the plant as it was given, `settled` as it stands once it has set itself.
    """

    data: dict[str, Any]
    resolved: ResolvedPlant
    settled: ResolvedPlant
    state: State
    readings: dict[str, Reading]


@dataclass(frozen=True)
class Days:
    """Both days of a case."""

    yesterday: OneDay
    today: OneDay

    def reading(self, id: str) -> tuple[Reading, Reading]:
        """One instrument, yesterday and today; without a reading on a day on which it is not there."""
        days = self.yesterday.readings.get(id), self.today.readings.get(id)
        known = next(reading for reading in days if reading is not None)
        blank = msgspec.structs.replace(known, value=None, accuracy=None, off_scale=None)
        return days[0] or blank, days[1] or blank

    @cached_property
    def differences(self) -> dict[str, tuple[Any, Any]]:
        """Plant keys whose values differ, with yesterday's and today's value in file units."""
        before, after = (
            flat(msgspec.to_builtins(day.resolved.plant)) for day in (self.yesterday, self.today)
        )
        keys = list(dict.fromkeys([*before, *after]))
        return {key: (before.get(key), after.get(key)) for key in keys if before.get(key) != after.get(key)}

    @cached_property
    def load_at_yesterdays_flow(self) -> tuple[float | None, float | None]:
        """What the load asks at yesterday's flow, yesterday and today, as of `LoadThen`. [m]"""
        then = LoadThen.of(self.yesterday.settled, self.yesterday.state.duty.flow)
        return then.asked, then.asked_by(self.today.data, self.today.settled)

    @property
    def head_scale(self) -> float:
        """A head to compare changes with: what the station gave yesterday. [m]"""
        return head_scale(self.yesterday.state.duty.head)

    def quantity(self, day: DayName, source: str) -> tuple[str, float] | None:
        """What a day's reading or numeric plant key is: kind and SI value.

        None for an unknown source, a reading that is off its scale, and what is no number.
        """
        of = self.today if day == "today" else self.yesterday
        reading = of.readings.get(source)
        if reading is not None:
            usable = reading.value is not None and reading.off_scale is None
            return (reading.quantity, float(reading.value or 0.0)) if usable else None
        kind, si = key_quantity(source, flat(msgspec.to_builtins(of.settled.plant)).get(source))
        return None if kind is None else (kind, si)


def key_quantity(key: str, value: Any) -> tuple[str | None, Any]:
    """A plant key's value as a quantity in SI units; quantity None and the value itself for any other."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None, value
    if key in OPENINGS:
        return "opening", float(value)
    known = keys_of(Plant).get(key)
    if known is None or known.unit not in QUANTITIES:
        return None, value
    quantity, factor, offset = QUANTITIES[known.unit]
    return quantity, value * factor + offset


def head_scale(head: float) -> float:
    """A head to compare changes of a station with that gives so much. [m]"""
    return max(abs(head), 0.1)


def two_days(
    yesterday: dict[str, Any], today: dict[str, Any], first_look: int = 0, shown: Days | None = None
) -> Days:
    """Compute two days from plants as plain data, all edits applied.

    Parameters
    ----------
    first_look : number of yesterday's look at the instruments; today's is the next.
    shown : what the instruments showed on these days before; a gauge that is shut off keeps it. Left out,
        today's keeps what it showed yesterday.

    Raises
    ------
    InputError
        For a plant that cannot be used (`where` starts with the day), or a day on
        which no steady state is found.
    """
    resolved = [_resolved(yesterday, "yesterday.plant"), _resolved(today, "today.plant")]
    at_rest = [settled([plant])[0] for plant in resolved]  # each alone, exactly as the rig answers it
    states = [true_state(plant) for plant in at_rest]
    for name, state in zip(("yesterday", "today"), states, strict=True):
        if not state.converged:
            raise InputError(name, state.why, "a plant that comes to a steady state", rule="days")
    kept = None if shown is None else (shown.yesterday.readings, shown.today.readings)
    plants = [plant.plant for plant in at_rest]
    read = read_both(plants, states, first_look, kept)
    return Days(*map(OneDay, (yesterday, today), resolved, at_rest, states, read))


def read_both(
    plants: Sequence[Plant],
    states: Sequence[State],
    first_look: int = 0,
    shown: Sequence[Shown] | None = None,
) -> tuple[Shown, Shown]:
    """What the instruments show of yesterday and of today.

    Parameters
    ----------
    plants, states : settled, and solved, of both days.
    first_look, shown : as of `two_days`.
    """
    kept = shown or (None, None)
    yesterday = _by_id(readings(states[0], plants[0], look=first_look, before=kept[0]))
    today = readings(states[1], plants[1], look=first_look + 1, before=kept[1] or yesterday)
    return yesterday, _by_id(today)


def _by_id(read: Iterable[Reading]) -> Shown:
    return {reading.id: reading for reading in read}


def _resolved(data: dict[str, Any], where: str) -> ResolvedPlant:
    with inside(where):
        return resolve_data(data)


def flat(table: Mapping[str, Any], above: str = "") -> dict[str, Any]:
    """Nested tables as dotted keys; lists and the table of a pump's points stay whole."""
    found: dict[str, Any] = {}
    for key, value in table.items():
        path = f"{above}.{key}" if above else key
        found |= flat(value, path) if isinstance(value, Mapping) and path not in WHOLE else {path: value}
    return found
