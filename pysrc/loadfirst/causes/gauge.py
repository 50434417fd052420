"""Causes at the gauges: the plant is as it was, and one dial shows something else.

Every gauge can have every one of them; only its wrong tapping is another at each.
"""

from __future__ import annotations

from typing import NamedTuple

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.edit import value
from loadfirst.causes.group import Group
from loadfirst.causes.pairs import Way, additions
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.units import PERCENT

GROUP: Group = "instrument"


class WhichGauge(NamedTuple):
    """One gauge: the beginning of its causes' ids, its table, its name, where else it may be tapped."""

    prefix: str
    table: str
    name: str
    tapping: str
    tapped: str
    elsewhere: str


DISCHARGE = WhichGauge(
    "gauge", "gauges.discharge", "discharge gauge", "after-valve", "behind-valve", "behind the control valve",
)  # fmt: skip
SUCTION = WhichGauge(
    "suction-gauge", "gauges.suction", "suction gauge", "discharge", "at-discharge",
    "at the discharge flange",
)  # fmt: skip
AFTER_VALVE = WhichGauge(
    "far-gauge", "gauges.after_valve", "gauge behind the control valve", "discharge", "before-valve",
    "before that valve",
)  # fmt: skip


def of_gauge(which: WhichGauge) -> tuple[Cause, ...]:
    """What can be wrong between one gauge's tapping and its reader."""
    at, name, table = which.prefix, which.name, which.table
    height, fault = f"{table}.height_m", f"{table}.fault"
    leg, root, span = f"{fault}.leg_filled", f"{fault}.root_valve", f"{fault}.span_percent"
    zero_off, open_root = f"{at}-zero-off", e.needs(root, "open", "it is shut off already")
    moved = additions(
        height,
        Way(f"{at}-moved-up", f"The {name} was hung higher, its leg full.", 2, "how much higher"),
        Way(f"{at}-moved-down", f"The {name} was hung lower, its leg full.", 2, "how much lower"),
        unit="m", most=20, ends=(1000.0, -30.0), group=GROUP, unless=open_root,
        shown_by=("height-measured",), alike=zero_off, source="hydrostatics",
    )  # fmt: skip
    gassed = Cause(
        id=f"{at}-leg-gassed", group=GROUP, keys=(leg,), says=f"Gas has gathered in the {name}'s leg.",
        size=Size("-", "share that is full, over the one before", 0, 1, none=1, usual=0.5),
        edit=e.scaled(leg), unless=e.first(open_root, _level_leg(height)), shown_by=("leg-bled",),
        alike=zero_off,
    )  # fmt: skip
    shut = Cause(
        id=f"{at}-shut-off", group=GROUP, keys=(root,), edit=e.to(root, "shut"), unless=open_root,
        says=f"The {name}'s root valve is shut, or its line plugged: it keeps what it showed.",
        shown_by=("pointer-lively", "gauge-vented"),
    )  # fmt: skip
    zero = Cause(
        id=zero_off, group=GROUP, keys=(f"{fault}.zero_bar",), says=f"The {name}'s zero is off.",
        size=Size("%", "error of its zero, of its span", -30, 30, none=0, usual=-10),
        edit=_of_span(table), unless=open_root, shown_by=("gauge-vented", "gauge-compared"),
    )  # fmt: skip
    stretched = Cause(
        id=f"{at}-span-off", group=GROUP, keys=(span,), room=e.within(span), edit=e.plus(span),
        says=f"The {name}'s span is off: it is right at zero only.",
        size=Size("%", "part of the pressure that it adds", -40, 40, none=0, usual=-10),
        unless=open_root, shown_by=("gauge-compared",),
    )  # fmt: skip
    re_ranged = Cause(
        id=f"{at}-re-ranged", group=GROUP, keys=(span,), alike=f"{at}-span-off",
        shown_by=("range-read", "gauge-compared"),
        says=f"The transmitter of the {name} was set to another range, its display was not.",
        size=Size("-", "what it shows, over what it should", 0.5, 1.5, none=1, usual=0.8),
        edit=_re_ranged(span), room=_re_ranged_room(span), unless=open_root,
    )  # fmt: skip
    replaced = _replaced(which, open_root)
    trembles = Cause(
        id=f"{at}-trembles", group=GROUP, keys=(f"{fault}.noise_bar",), hunts=True,
        says=f"The pointer of the {name} trembles: its snubber is gone, or it hangs on what shakes.",
        size=Size("bar", "standard deviation of its trembling, added", 0, 5, none=0, usual=0.1),
        edit=e.plus(f"{fault}.noise_bar"), room=e.above(f"{fault}.noise_bar", 100.0), unless=open_root,
        shown_by=("snubber-seen",),
    )  # fmt: skip
    return (*moved, gassed, shut, zero, stretched, re_ranged, *replaced, trembles)


def _replaced(which: WhichGauge, open_root: e.Unless) -> tuple[Cause, ...]:
    """Another gauge, or another place, in the stead of the right one."""
    fault, at, name = f"{which.table}.fault", which.prefix, which.name
    reads, unit, tapping = f"{fault}.reads", f"{fault}.unit", f"{fault}.tapping"
    absolute = Cause(
        id=f"{at}-from-vacuum", group=GROUP, keys=(reads,), edit=e.to(reads, "absolute"),
        says=f"The {name} was replaced by one that counts from vacuum.", alike=f"{at}-zero-off",
        unless=e.first(open_root, e.needs(reads, "gauge", "it counts from vacuum already")),
        shown_by=("dial-read", "gauge-vented", "gauge-compared"),
    )  # fmt: skip
    other_unit = Cause(
        id=f"{at}-other-unit", group=GROUP, keys=(unit,), edit=e.to(unit, "kgf-cm2"),
        says=f"The {name} was replaced by one marked in kgf/cm², whose numbers are taken for bar.",
        unless=e.first(open_root, e.needs(unit, "bar", "it is marked in another unit already")),
        shown_by=("dial-read",), source="1 kgf/cm² = 0.980665 bar (NIST SP 811)",
    )  # fmt: skip
    elsewhere = Cause(
        id=f"{at}-tapped-{which.tapped}", group=GROUP, keys=(tapping,), edit=e.to(tapping, which.tapping),
        says=f"The {name} was connected {which.elsewhere}.", shown_by=("tapping-traced",),
        unless=e.first(
            e.needs_line, open_root, e.needs(tapping, "own", "it is tapped elsewhere already")
        ),
    )  # fmt: skip
    return absolute, other_unit, elsewhere


def _of_span(gauge: str) -> e.Edit:
    """A zero that is off by a share of the gauge's span. [%]"""

    def edit(plant: ResolvedPlant, size: float) -> Edits:
        low, high = value(plant, f"{gauge}.range_bar")
        key = f"{gauge}.fault.zero_bar"
        return {key: value(plant, key) + size * PERCENT * (high - low)}

    return edit


def _re_ranged(key: str) -> e.Edit:
    """A span so many times the one before. [-] -> [%]"""
    return lambda plant, size: {key: ((1 + value(plant, key) * PERCENT) * size - 1) / PERCENT}


def _re_ranged_room(key: str) -> e.Room:
    def room(plant: ResolvedPlant) -> tuple[float, float]:
        now = 1 + value(plant, key) * PERCENT
        return 0.5 / now, 1.5 / now

    return room


def _level_leg(height: str) -> e.Unless:
    """A leg counts only where the gauge hangs higher or lower than its tapping."""
    reason = "the gauge hangs as high as its tapping, where its leg does not count"
    return lambda plant: reason if value(plant, height) == plant.plant.pump.centre_m else None


CAUSES = (*of_gauge(DISCHARGE), *of_gauge(SUCTION), *of_gauge(AFTER_VALVE))
