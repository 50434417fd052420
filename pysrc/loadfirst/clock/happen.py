"""What an event changes.

Where the supply runs empty the pumps draw air and lose their prime: they give nothing until
liquid runs into them again, and what was on its way is taken to stop at once (a column that
draws air after it is not followed). So it is with a delivery that runs empty by a line that takes
liquid back from it.
"""

from __future__ import annotations

from typing import Any, cast

from msgspec.structs import replace

from loadfirst.clock.account import Account, add
from loadfirst.clock.advance import Step
from loadfirst.clock.events import CROSSED, Kind, both_ways, once
from loadfirst.clock.moment import Moment, Stock
from loadfirst.clock.vessel import is_empty, room
from loadfirst.plant.plant import Plant
from loadfirst.plant.pumps import ResolvedPlant

WORDS: dict[str, tuple[Kind, Kind]] = {
    "check": ("check-opens", "check-shuts"),
    "relief": ("relief-lifts", "relief-shuts"),
    "outlet": ("outlet-covered", "outlet-free"),
    "peak": ("flow-recovers", "flow-falls-back"),
}
SHAFTS: dict[str, dict[str, Any]] = {
    "trips": {"tripped": True},
    "running": {"regime": "running"},
    "stopped": {"regime": "standing"},
}
"""What happens to a shaft, and what it is from then on."""


def happened(resolved: ResolvedPlant, before: Moment, step: Step, names: tuple[str, ...]) -> Moment:
    """The moment at a step's end, once what happened there has had its effect."""
    moment = _marked(before, resolved, step)
    for name in names:
        moment = _with_effect(resolved.plant, moment, name)
    return moment


def by_hand(resolved: ResolvedPlant, moment: Moment) -> tuple[Moment, tuple[str, ...]]:
    """The moment once what hands have brought about between two runs has had its effect, and what that is.

    A vessel that a hand has emptied or filled again: no number crosses nought on the way.
    """
    values = once(resolved, moment)
    names = [name for name in ("prime-regained", "delivery-refilled") if values.get(name, 1.0) <= 0]
    if moment.primed and is_empty(moment.supply.volume):
        names.append("supply-empty")
    if not moment.drained and is_empty(moment.delivery.volume):
        names.append("delivery-empty")
    for name in names:
        moment = _with_effect(resolved.plant, moment, name)
    return moment, tuple(names)


def _with_effect(plant: Plant, moment: Moment, name: str) -> Moment:
    word, _, number = name.rpartition("-")
    if name == "supply-empty":
        stock, other = _snapped(moment.supply, 0.0, moment.elsewhere)
        return replace(moment, supply=stock, elsewhere=other, primed=False, flows={})
    if name == "supply-full":
        stock, other = _snapped(moment.supply, room(plant.supply), moment.overflowed)
        return replace(moment, supply=stock, overflowed=other)
    if name == "delivery-empty":
        stock, other = _snapped(moment.delivery, 0.0, moment.drawn)
        return replace(moment, delivery=stock, drawn=other, drained=True, flows={})
    if name == "delivery-refilled":
        return replace(moment, drained=False)
    if name == "delivery-full":
        stock, other = _snapped(moment.delivery, room(plant.delivery), moment.overflowed)
        return replace(moment, delivery=stock, overflowed=other)
    if name == "prime-regained":
        return replace(moment, primed=True, flows={})
    if word in SHAFTS:
        shafts, at = list(moment.shafts), int(number) - 1
        shafts[at] = replace(shafts[at], **SHAFTS[word])
        return replace(moment, shafts=tuple(shafts))
    return moment


def kind_of(name: str, moment: Moment) -> tuple[Kind, str]:
    """What happened in a word, and where."""
    word, _, number = name.rpartition("-")
    if name in moment.marks:
        opened, shut = WORDS[word or name]
        return (opened if moment.marks[name] else shut), name.replace("peak", "pump")
    if word == "running":
        return "running", f"pump-{number}"
    if word == "stopped":
        return "stopped", f"pump-{number}"
    if word == "trips":
        return "trips", f"pump-{number}"
    where = {"line-full": "discharge", "prime-regained": "supply"}.get(name, name.partition("-")[0])
    return cast("Kind", name), where


def _marked(before: Moment, resolved: ResolvedPlant, step: Step) -> Moment:
    """With what is open or lifted now; what is neither stays as it was."""
    marks = {}
    for name, value in both_ways(resolved, step).items():
        old = before.marks.get(name)
        marks[name] = value > 0 if old is None or abs(value) > CROSSED else old
    return replace(step.moment, marks=marks)


def _snapped(stock: Stock, exactly: float, other: Account) -> tuple[Stock, Account]:
    """The vessel at its wall, to the last digit; what that takes goes into another account."""
    value, rest = stock.volume
    return replace(stock, volume=(exactly, 0.0)), add(add(other, value - exactly), rest)
