"""Causes that are each other's opposite: one key moved one way or the other, written out once.

Each maker gives two causes. What else a cause has (`unless`, `shown_by`, `alike` …) both of them share.
"""

from __future__ import annotations

from typing import Any, Literal, NamedTuple

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Size

Pair = tuple[Cause, Cause]


class Way(NamedTuple):
    """One of the two: its id, what happened, a size worth showing, what its number is if not as usual."""

    id: str
    says: str
    usual: float
    size_says: str = ""


def additions(
    key: str, up: Way, down: Way, *, unit: str, most: float, ends: tuple[e.End, e.End], **both: Any
) -> Pair:
    """The key's value raised, or lowered, by the size; `ends` are the most and the least it may become."""
    higher = Cause(
        id=up.id, says=up.says, keys=(key,), edit=e.plus(key), room=e.above(key, ends[0]),
        size=Size(unit, up.size_says or "rise", 0, most, none=0, usual=up.usual), **both,
    )  # fmt: skip
    lower = Cause(
        id=down.id, says=down.says, keys=(key,), edit=e.plus(key, -1), room=e.below(key, ends[1]),
        size=Size(unit, down.size_says or "fall", 0, most, none=0, usual=down.usual), **both,
    )  # fmt: skip
    return higher, lower


def factors(
    keys: tuple[str, ...], larger: Way, smaller: Way, *, says: str, low: float, high: float,
    edit: e.Edit, room: e.Room, scale: Literal["linear", "log"] = "linear", **both: Any,
) -> Pair:  # fmt: skip
    """Something multiplied by the size: above 1 for the first of the two, below 1 for the other."""
    more = Size("-", says, 1, high, none=1, usual=larger.usual, scale=scale)
    less = Size("-", says, low, 1, none=1, usual=smaller.usual, scale=scale)
    return (
        Cause(id=larger.id, says=larger.says, keys=keys, size=more, edit=edit, room=room, **both),
        Cause(id=smaller.id, says=smaller.says, keys=keys, size=less, edit=edit, room=room, **both),
    )


def travel(key: str, opens: Way, closes: Way, *, unless: e.Unless, **both: Any) -> Pair:
    """A valve opened by a share of what was left of its travel, or closed to a share of its opening."""
    return (
        Cause(
            id=opens.id, says=opens.says, keys=(key,), edit=e.towards(key, 1.0),
            size=Size("-", "share of the travel that was left", 0, 1, none=0, usual=opens.usual),
            unless=e.first(unless, e.bars_with(key, 1.0, "it is fully open already")), **both,
        ),
        Cause(
            id=closes.id, says=closes.says, keys=(key,), edit=e.scaled(key),
            size=Size("-", "opening, over the one before", 0, 1, none=1, usual=closes.usual),
            unless=e.first(unless, e.bars_with(key, 0.0, "it is shut already")), **both,
        ),
    )  # fmt: skip


def zero_and_span(
    table: str, name: str, instrument: str, *, span: str, says: str, shown_by: tuple[str, ...]
) -> Pair:
    """The two errors of a meter whose keys are per cent of its range and of what it senses.

    Parameters
    ----------
    table : of its keys: ``meters.flow_fault``.
    name, instrument : of its ids, and in a sentence.
    span : what else the error of its span may come from; says : of what it is a part.
    """
    zero_key, span_key = f"{table}.zero_percent", f"{table}.span_percent"
    return (
        Cause(
            id=f"{name}-zero-off", group="instrument", keys=(zero_key,),
            says=f"The {instrument}'s zero is off.",
            size=Size("%", "error of its zero, of its range", -20, 20, none=0, usual=-5),
            edit=e.plus(zero_key), room=e.within(zero_key), shown_by=shown_by,
        ),
        Cause(
            id=f"{name}-span-off", group="instrument", keys=(span_key,),
            says=f"The {instrument}'s span is off, {span}.",
            size=Size("%", f"part of {says} that it adds", -40, 40, none=0, usual=-10),
            edit=e.plus(span_key), room=e.within(span_key), shown_by=shown_by,
        ),
    )  # fmt: skip
