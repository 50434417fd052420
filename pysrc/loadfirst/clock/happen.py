"""What an event changes.

Where the supply runs empty the pumps draw air and lose their prime: they give nothing until
liquid runs into them again, and what was on its way is taken to stop at once (a column that
draws air after it is not followed). So it is with a delivery that runs empty by a line that takes
liquid back from it.
"""

from __future__ import annotations

from msgspec.structs import replace

from loadfirst.clock.account import Account, add
from loadfirst.clock.advance import Step
from loadfirst.clock.events import CROSSED, Kind, both_ways
from loadfirst.clock.moment import Moment, Stock
from loadfirst.clock.vessel import room
from loadfirst.plant.pumps import ResolvedPlant

WORDS: dict[str, tuple[Kind, Kind]] = {
    "check": ("check-opens", "check-shuts"),
    "relief": ("relief-lifts", "relief-shuts"),
    "outlet": ("outlet-covered", "outlet-free"),
    "peak": ("flow-recovers", "flow-falls-back"),
}


def happened(resolved: ResolvedPlant, before: Moment, step: Step, names: tuple[str, ...]) -> Moment:
    """The moment at a step's end, once what happened there has had its effect."""
    moment = _marked(before, resolved, step)
    plant = resolved.plant
    for name in names:
        word, _, number = name.rpartition("-")
        if name == "supply-empty":
            stock, other = _snapped(moment.supply, 0.0, moment.elsewhere)
            moment = replace(moment, supply=stock, elsewhere=other, primed=False, flows={})
        elif name == "supply-full":
            stock, other = _snapped(moment.supply, room(plant.supply), moment.overflowed)
            moment = replace(moment, supply=stock, overflowed=other)
        elif name == "delivery-empty":
            stock, other = _snapped(moment.delivery, 0.0, moment.drawn)
            moment = replace(moment, delivery=stock, drawn=other, drained=True, flows={})
        elif name == "delivery-refilled":
            moment = replace(moment, drained=False)
        elif name == "delivery-full":
            stock, other = _snapped(moment.delivery, room(plant.delivery), moment.overflowed)
            moment = replace(moment, delivery=stock, overflowed=other)
        elif name == "prime-regained":
            moment = replace(moment, primed=True, flows={})
        elif word == "trips":
            shafts = list(moment.shafts)
            shafts[int(number) - 1] = replace(shafts[int(number) - 1], tripped=True)
            moment = replace(moment, shafts=tuple(shafts))
        elif word in ("running", "stopped"):
            shafts = list(moment.shafts)
            at = int(number) - 1
            shafts[at] = replace(shafts[at], regime="running" if word == "running" else "standing")
            moment = replace(moment, shafts=tuple(shafts))
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
    kinds: dict[str, Kind] = {
        "supply-empty": "supply-empty",
        "supply-full": "supply-full",
        "delivery-empty": "delivery-empty",
        "delivery-full": "delivery-full",
        "delivery-refilled": "delivery-refilled",
        "line-full": "line-full",
        "prime-regained": "prime-regained",
    }
    return kinds[name], {"line-full": "discharge"}.get(name, name.partition("-")[0])


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
