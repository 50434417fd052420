"""What tests of the clock share."""

from __future__ import annotations

from loadfirst.clock.account import total
from loadfirst.clock.moment import Moment
from loadfirst.clock.run import Run, run
from loadfirst.plant.pumps import ResolvedPlant

ACCOUNTS = ("came", "drawn", "overflowed", "elsewhere", "line", "by_hand")


def everything(moment: Moment) -> float:
    """All liquid that there is, wherever it has gone: it never changes. [m³]"""
    vessels = moment.supply.volume, moment.delivery.volume
    return total([*vessels, *(getattr(moment, name) for name in ACCOUNTS)])


def happenings(ran: Run) -> list[tuple[str, str]]:
    """Every event's kind and place."""
    return [(event.kind, event.where) for event in ran.events]


def in_steps(resolved: ResolvedPlant, moment: Moment, span: float, count: int) -> Moment:
    """The moment after `count` runs of `span`."""
    for _ in range(count):
        moment = run(resolved, moment, span).moment
    return moment
