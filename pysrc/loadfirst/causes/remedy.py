"""What people can do about a cause, which of it helps, and what it costs in vain.

Minutes are our own statement of what is usual on a small plant; the trade has no table of them.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal, NamedTuple

from loadfirst.causes.catalogue import cause
from loadfirst.causes.group import Group

Action = Literal[
    "leave", "restore", "clean", "see-to-instrument", "see-to-drive", "change-over", "overhaul", "stop"
]  # fmt: skip
"""Leave it and watch; put line-up or settings back; clean what is clogged; test an instrument and put it
right; let an electrician see to motor, belt or drive; go over to the standby; plan an overhaul; stop now."""

MINUTES: dict[Action, float] = {
    "leave": 0, "restore": 20, "clean": 90, "see-to-instrument": 30, "see-to-drive": 60,
    "change-over": 30, "overhaul": 480, "stop": 240,
}  # fmt: skip
"""What each costs, a stop with what is not pumped meanwhile. [min]"""

HARM = 480.0
"""What it costs to leave alone what does harm. Own choice. [min]"""

GROUPS: dict[Group, tuple[Action, ...]] = {
    "discharge-side": ("restore", "leave"),
    "suction-side": ("restore", "stop"),
    "liquid": ("leave", "restore"),
    "drive": ("see-to-drive",),
    "machine": ("overhaul", "change-over"),
    "instrument": ("see-to-instrument",),
    "nothing": ("leave",),
}
"""What helps against the causes of a group, the best first."""

OTHERS: dict[str, tuple[Action, ...]] = {
    "filter-fouled": ("clean",),
    "filter-changed": ("leave",),
    "line-scaled": ("clean",),
    "line-filling": ("leave",),
    "burst": ("stop",),
    "strainer-blocked": ("clean", "change-over"),
    "supply-level-higher": ("leave",),
    "supply-pressure-higher": ("leave",),
    "thinner-air": ("leave",),
    "air-leak": ("stop", "change-over"),
    "air-bound": ("stop", "change-over"),
    "phases-swapped": ("stop", "see-to-drive"),
    "drive-set-back": ("restore", "see-to-drive"),
    "drive-set-up": ("restore", "see-to-drive"),
    "drive-set-point-moved": ("restore",),
    "drive-in-manual": ("restore",),
    "supply-slow": ("leave", "see-to-drive"),
    "standby-passing": ("restore", "overhaul"),
    "standby-stuck-open": ("restore", "overhaul"),
    "relief-passing": ("overhaul", "change-over"),
    "impeller-larger": ("leave", "overhaul"),
}
"""What helps against causes that differ from their group."""

LARGE: frozenset[Action] = frozenset({"change-over", "overhaul", "stop"})
"""What is done in vain with a sound machine."""

Outcome = Literal["fits", "idle", "needless", "careless"]


class Judged(NamedTuple):
    """What comes of an action.

    Attributes
    ----------
    outcome : it helps; it costs a little and helps nothing; much was done in vain; harm goes on.
    minutes : what it costs, harm that goes on among it. [min]
    """

    outcome: Outcome
    minutes: float


def fitting(id: str) -> tuple[Action, ...]:
    """What helps against a cause, the best first."""
    return OTHERS.get(id, GROUPS[cause(id).group])


def judge(action: Action, happened: Iterable[str], harmful: bool) -> Judged:
    """What comes of an action.

    Parameters
    ----------
    action : that is taken.
    happened : ids of the causes that are there.
    harmful : whether the plant as it is comes to harm if nothing is done.
    """
    cost, ids = MINUTES[action], tuple(happened)
    if any(action in fitting(id) for id in ids) and not (harmful and action == "leave"):
        return Judged("fits", cost)
    if harmful or any(cause(id).group == "machine" for id in ids):
        return Judged("careless", cost + HARM)
    return Judged("needless" if action in LARGE else "idle", cost)
