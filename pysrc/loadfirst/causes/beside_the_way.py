"""Causes beside the way to the delivery: what goes back to the supply, and the other pump.

The relief valve stands here and not with the machine: it is fitted outside the
flanges, and what it lets by is flow that the load takes. To any one pump the
other is part of the load too.
"""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Size
from loadfirst.causes.group import Group
from loadfirst.plant.pumps import ResolvedPlant

GROUP: Group = "discharge-side"


def _standing(plant: ResolvedPlant) -> str | None:
    both = (plant.plant.pump.running, plant.plant.pump.second.running)
    return None if sum(both) == 1 else "not one of the two pumps stands by while the other runs"


def _side_by_side(plant: ResolvedPlant) -> str | None:
    return None if plant.plant.pump.arrangement == "side-by-side" else "no pump stands by beside another"


_RETURN = e.needs("return_line.fitted", True, "there is no return line")
_STANDBY = e.first(_side_by_side, _standing, e.needs("check.fitted", True, "there are no check valves"))

RETURN_PASSING = Cause(
    id="return-passing", group=GROUP, keys=("return_line.opening",),
    says="The valve of the return line passes, or was left open.",
    size=Size("-", "share of the travel that was left", 0, 1, none=0, usual=0.3),
    edit=e.towards("return_line.opening", 1.0),
    unless=e.first(_RETURN, e.bars_with("return_line.opening", 1.0, "it is fully open already")),
    shown_by=("return-felt", "shift-log"),
)  # fmt: skip
RELIEF_PASSING = Cause(
    id="relief-passing", group=GROUP, keys=("relief.state", "relief.passing_percent"),
    says="The relief valve's seat passes below its setting.",
    size=Size("%", "share of its capacity that passes at the set pressure", 0.5, 90, 0, 20, "log"),
    edit=lambda plant, size: {"relief.state": "passing", "relief.passing_percent": size},
    unless=e.first(
        e.needs("relief.fitted", True, "there is no relief valve"),
        e.needs("relief.state", "sound", "it is not sound already"),
    ),
    shown_by=("relief-felt",),
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
    edit=e.put(check__stuck_open=True),
    unless=e.first(_STANDBY, e.bars_with("check.stuck_open", True, "it is stuck open already")),
    shown_by=("standby-shaft",),
)  # fmt: skip
SECOND_STARTS = Cause(
    id="second-pump-starts", group=GROUP, keys=("pump.second.running",),
    says="The second pump was started too.",
    edit=e.put(pump__second__running=True),
    unless=e.first(e.needs_two, e.bars_with("pump.second.running", True, "it runs already")),
    shown_by=("pumps-counted", "shift-log"),
)  # fmt: skip
SECOND_STOPS = Cause(
    id="second-pump-stops", group=GROUP, keys=("pump.second.running",),
    says="The second pump stopped.",
    edit=e.put(pump__second__running=False),
    unless=e.first(e.needs_two, e.bars_with("pump.second.running", False, "it stands already")),
    shown_by=("pumps-counted", "shift-log"),
)  # fmt: skip

CAUSES = (
    RETURN_PASSING, RELIEF_PASSING, STANDBY_PASSING, STANDBY_STUCK, SECOND_STARTS,
    SECOND_STOPS,
)  # fmt: skip
