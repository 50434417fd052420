"""Causes beside the way to the delivery: what goes back to the supply, and the other pump.

The relief valve stands here and not with the machine: it is fitted outside the
flanges, and what it lets by is flow that the load takes. To any one pump the
other is part of the load too.
"""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Size
from loadfirst.causes.group import Group
from loadfirst.causes.pairs import Way, travel
from loadfirst.causes.which_pump import FIRST, SECOND, WhichPump
from loadfirst.plant.pumps import ResolvedPlant

GROUP: Group = "discharge-side"


def _standing(plant: ResolvedPlant) -> str | None:
    both = (plant.plant.pump.running, plant.plant.pump.second.running)
    return None if sum(both) == 1 else "not one of the two pumps stands by while the other runs"


def _side_by_side(plant: ResolvedPlant) -> str | None:
    return None if plant.plant.pump.arrangement == "side-by-side" else "no pump stands by beside another"


def _one_check(plant: ResolvedPlant) -> str | None:
    return None if plant.plant.pump.arrangement == "single" else "two pumps have check valves alike"


_SOUND_RELIEF = e.first(
    e.needs("relief.fitted", True, "there is no relief valve"),
    e.needs("relief.state", "sound", "it is not sound already"),
)
_STANDBY = e.first(_side_by_side, _standing, e.needs("check.fitted", True, "there are no check valves"))

RETURN = travel(
    "return_line.opening",
    Way("return-passing", "The valve of the return line passes, or was left open.", 0.3),
    Way("return-closed", "The valve of the return line was closed further.", 0),
    group=GROUP, unless=e.needs("return_line.fitted", True, "there is no return line"),
    shown_by=("return-felt", "shift-log"),
)  # fmt: skip
RELIEF_PASSING = Cause(
    id="relief-passing", group=GROUP, keys=("relief.state", "relief.passing_percent"),
    says="The relief valve's seat passes below its setting.",
    size=Size("%", "share of its capacity that passes at the set pressure", 0.5, 90, 0, 20, "log"),
    edit=lambda plant, size: {"relief.state": "passing", "relief.passing_percent": size},
    unless=_SOUND_RELIEF, shown_by=("relief-felt",),
)  # fmt: skip
RELIEF_LOW = Cause(
    id="relief-set-too-low", group=GROUP, keys=("relief.set_bar",),
    says="The relief valve is set too low, or its spring has weakened, and it lifts in service.",
    size=Size("-", "pressure at which it lifts, over the one before", 0.2, 1, none=1, usual=0.6),
    edit=e.scaled("relief.set_bar"), room=e.factors("relief.set_bar", 0.05, 1000.0),
    unless=_SOUND_RELIEF, shown_by=("relief-felt", "relief-tested"),
)  # fmt: skip
RELIEF_GAGGED = Cause(
    id="relief-gagged", group=GROUP, keys=("relief.state",),
    says="The relief valve is gagged or seized, and will not lift.",
    edit=e.to("relief.state", "blocked"), unless=_SOUND_RELIEF, shown_by=("relief-tested",),
)  # fmt: skip
CHECK_STICKS = Cause(
    id="check-valve-sticks", group=GROUP, keys=("check.k",),
    says="The pump's check valve sticks, and does not open fully.",
    size=Size("-", "loss coefficient that it adds", 0.1, 900, none=0, usual=20, scale="log"),
    edit=e.plus("check.k"), room=e.above("check.k", 1000.0),
    unless=e.first(
        e.needs("check.fitted", True, "there is no check valve"), _one_check,
        e.bars_with("check.stuck_open", True, "it is stuck open already"),
    ),
    shown_by=("check-lever",),
)  # fmt: skip
STANDBY_PASSING = Cause(
    id="standby-passing", group=GROUP, keys=("check.leak_kv_m3h",),
    says="The check valve of the pump that stands by passes backward.",
    size=Size("m³/h", "flow coefficient Kv that its seat leaves", 0.3, 300, none=0, usual=10, scale="log"),
    edit=e.plus("check.leak_kv_m3h"),
    unless=e.first(_STANDBY, e.bars_with("check.stuck_open", True, "it is stuck open already")),
    shown_by=("standby-shaft",),
)  # fmt: skip
STANDBY_STUCK = Cause(
    id="standby-stuck-open", group=GROUP, keys=("check.stuck_open",),
    says="The check valve of the pump that stands by is stuck open.",
    edit=e.to("check.stuck_open", True),
    unless=e.first(_STANDBY, e.bars_with("check.stuck_open", True, "it is stuck open already")),
    shown_by=("standby-shaft",),
)  # fmt: skip


def _started_and_stopped(which: WhichPump) -> tuple[Cause, Cause]:
    key, word = f"{which.table}.running", which.ordinal
    shown_by = ("pumps-counted", "shift-log")
    starts = Cause(
        id=f"{word}-pump-starts", group=GROUP, keys=(key,), edit=e.to(key, True), shown_by=shown_by,
        says=f"The {word} pump was started too, or left running.",
        unless=e.first(e.needs_two, e.bars_with(key, True, "it runs already")),
    )  # fmt: skip
    stops = Cause(
        id=f"{word}-pump-stops", group=GROUP, keys=(key,), edit=e.to(key, False), shown_by=shown_by,
        says=f"The {word} pump stopped.",
        unless=e.first(e.needs_two, e.bars_with(key, False, "it stands already")),
    )  # fmt: skip
    return starts, stops


CAUSES = (
    *RETURN, RELIEF_PASSING, RELIEF_LOW, RELIEF_GAGGED, CHECK_STICKS, STANDBY_PASSING, STANDBY_STUCK,
    *_started_and_stopped(FIRST), *_started_and_stopped(SECOND),
)  # fmt: skip
