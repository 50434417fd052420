"""Today as it stands while time runs: levels, stem and shafts where they have got to."""

from __future__ import annotations

from dataclasses import replace

from loadfirst.clock.look import look, now
from loadfirst.clock.moment import Moment
from loadfirst.clock.run import run
from loadfirst.days.two_days import Days
from loadfirst.instruments.panel import readings
from loadfirst.plant.edits import apply_edits

PEEK = 1e-4
"""Shortest span: shows a moment without going on from it. [s]"""
LEVELS = {"level-supply": "supply.surface_m", "level-delivery": "delivery.surface_m"}
"""Level gauges, and the keys that time moves of what they read."""


def at_moment(days: Days, moment: Moment) -> Days:
    """The same days, today at a moment of the clock in place of at rest.

    Its two curves are those of the plant with the levels, the stem and the shafts of that moment.
    """
    today = days.today
    ran = run(today.resolved, moment, PEEK)
    present, state = now(ran), look(ran)
    shown = readings(
        state, present.plant, look=1, before=days.yesterday.readings, pointers=ran.moment.pointers
    )
    vessels = present.plant.supply, present.plant.delivery
    levels = dict(zip(LEVELS.values(), (vessel.surface_m for vessel in vessels), strict=True))
    as_it_stands = replace(
        today, data=apply_edits(today.data, levels), resolved=present, settled=present, state=state,
        readings={reading.id: reading for reading in shown},
    )  # fmt: skip
    return Days(days.yesterday, as_it_stands)
