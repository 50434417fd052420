"""Causes in the pump itself: what the rule out of everything else leaves for last."""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Size
from loadfirst.causes.group import Group

GROUP: Group = "machine"
STOPPED = 90.0  # [%] of the passages; beyond it the model takes all for blocked

WORN = Cause(
    id="worn", group=GROUP, keys=("pump.wear_percent",),
    says="Wear has widened the gaps inside, and liquid leaks back.",
    size=Size("%", "leakage over the flow at best efficiency, added", 0, 50, none=0, usual=10),
    edit=e.plus("pump.wear_percent"), room=e.above("pump.wear_percent", 50.0), shown_by=("gaps-measured",),
)  # fmt: skip
SMALLER = Cause(
    id="impeller-smaller", group=GROUP, keys=("pump.trim_percent",),
    says="A smaller impeller was fitted at the overhaul.",
    size=Size("-", "diameter, over the one before", 0.7, 1, none=1, usual=0.93),
    edit=e.scaled("pump.trim_percent"), room=e.factors("pump.trim_percent", 70.0, 120.0),
    unless=e.needs_impeller, shown_by=("job-card", "impeller-seen"),
)  # fmt: skip
LARGER = Cause(
    id="impeller-larger", group=GROUP, keys=("pump.trim_percent",),
    says="A larger impeller was fitted at the overhaul.",
    size=Size("-", "diameter, over the one before", 1, 1.2, none=1, usual=1.06),
    edit=e.scaled("pump.trim_percent"), room=e.factors("pump.trim_percent", 70.0, 120.0),
    unless=e.needs_impeller, shown_by=("job-card", "impeller-seen"),
)  # fmt: skip
PARTLY_BLOCKED = Cause(
    id="impeller-partly-blocked", group=GROUP, keys=("pump.blocked_percent",),
    says="Some passages of the impeller are blocked.",
    size=Size("%", "share of the passages, added", 0, 90, none=0, usual=30),
    edit=e.plus("pump.blocked_percent"), room=e.above("pump.blocked_percent", STOPPED),
    unless=e.needs_impeller, shown_by=("shaking", "impeller-seen"),
)  # fmt: skip
PLUGGED = Cause(
    id="impeller-plugged", group=GROUP, keys=("pump.blocked_percent",),
    says="The impeller is plugged altogether.",
    edit=e.put(pump__blocked_percent=100.0),
    unless=e.first(e.needs_impeller, e.bars_with("pump.blocked_percent", 100.0, "it is already")),
    shown_by=("impeller-seen",),
)  # fmt: skip
BACKWARDS = Cause(
    id="impeller-backwards", group=GROUP, keys=("pump.rotation",),
    says="The impeller was put in the wrong way round, so that its vanes meet the liquid backward.",
    edit=e.put(pump__rotation="wrong"),
    unless=e.first(e.needs_impeller, e.needs("pump.rotation", "right", "it turns the wrong way already")),
    shown_by=("impeller-seen", "job-card"),
    source="common practice (impellers with two inlets); taken for the same as a pump that turns backward",
)  # fmt: skip

CAUSES = (WORN, SMALLER, LARGER, PARTLY_BLOCKED, PLUGGED, BACKWARDS)
