"""What can be thought of at a plant: nobody blames thin oil where water runs, nor wear of one night."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal, get_args

from loadfirst.cases.compose.pieces import pieces
from loadfirst.cases.compose.place import parted
from loadfirst.causes.cause import Cause

Span = Literal["night", "work", "long"]
"""What lies between the two days: a night, a visit of the fitters, months."""
SPANS: tuple[Span, ...] = get_args(Span)
Ends = tuple[float, float]


def plausible(plant: str, cause: Cause) -> bool:
    """Whether it can be thought of at a plant, by the plant's id."""
    return not {cause.id, parted(cause.id)[1]} & _never(plant)


@lru_cache(maxsize=32)
def _never(plant: str) -> frozenset[str]:
    data = pieces("plausible")
    named = [*data["any"]["never"], *data["plant"].get(plant, {}).get("never", ())]
    return frozenset(id for name in named for id in data["sets"].get(name, [name]))


def beside(cause: Cause) -> bool:
    """Whether it leaves anything over for a second thing."""
    return not {cause.id, parted(cause.id)[1]} & {*pieces("plausible")["two"]["never"]}


def sizes(plant: str, cause: Cause) -> Ends | None:
    """The faintest and the strongest size that is plausible there; None where nothing says."""
    data = pieces("plausible")
    own: dict[str, Ends] = data["any"]["sizes"] | data["plant"].get(plant, {}).get("sizes", {})
    return own.get(cause.id)


def unread(plant: str) -> frozenset[str]:
    """Instruments that nobody would look for there."""
    return frozenset(pieces("plausible")["plant"].get(plant, {}).get("unread", ()))


def thinkable(plant: str, cause: Cause, span: Span) -> bool:
    """Whether somebody there would blame it: what needs hands only where there were any; wear at any time."""
    return plausible(plant, cause) and (span != "night" or spans(cause) != SPANS[1:])


def spans(*causes: Cause) -> tuple[Span, ...]:
    """Within what time all of it may have come, the shortest first; what comes in a night comes in more."""
    slow = pieces("plausible")["span"]
    kinds = {parted(cause.id)[1] for cause in causes} | {cause.id for cause in causes}
    if kinds & set(slow["long"]):
        return ("long",)
    return SPANS[1:] if kinds & set(slow["work"]) else SPANS
