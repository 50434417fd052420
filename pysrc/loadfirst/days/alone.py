"""What each of several changes does to the flow by itself, and as the last of them.

The parts of a change that has several causes depend on the order in which these are
taken. Where each does the same first and last, the order does not matter; where
not, no single number is its part, and both are told.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from msgspec import Struct

from loadfirst.days.two_days import Days
from loadfirst.errors import InputError
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import true_states

MOST = 6
"""Changes at once that are told apart. Own choice."""
AGREES = 0.05
"""First and last agree where they differ by less than this part of the greatest change. [-]"""


class Alone(Struct, frozen=True):
    """What one change does to the flow through the station. [m³/s]

    Attributes
    ----------
    key : dotted plant key.
    first : yesterday's plant with this change alone, less yesterday.
    last : today, less today's plant with all changes but this.
    """

    key: str
    first: float
    last: float


class Parts(Struct, frozen=True):
    """All changes, and whether each does the same first and last."""

    each: tuple[Alone, ...]
    order_matters: bool


def alone(days: Days, keys: Sequence[str]) -> Parts | None:
    """Take the changes one by one; None for a single one, for too many, and where a plant cannot be."""
    if not 2 <= len(keys) <= MOST:
        return None
    old, new = days.yesterday.data, days.today.data
    values = {key: days.differences[key] for key in keys}
    try:
        first = [_plant(old, key, after) for key, (_, after) in values.items()]
        last = [_plant(new, key, before) for key, (before, _) in values.items()]
        states = true_states([*first, *last])
    except InputError:
        return None
    if not all(state.converged for state in states):
        return None
    flows = [state.duty.flow for state in states]
    before, after = days.yesterday.state.duty.flow, days.today.state.duty.flow
    each = tuple(
        Alone(key, flows[at] - before, after - flows[len(keys) + at]) for at, key in enumerate(keys)
    )  # fmt: skip
    greatest = max(abs(after - before), *(max(abs(one.first), abs(one.last)) for one in each))
    return Parts(each, any(abs(one.first - one.last) > AGREES * greatest for one in each))


def _plant(data: dict[str, Any], key: str, value: Any) -> Any:
    return resolve_data(apply_edits(data, {key: value}))
