"""Causes in the pumps themselves: what the rule out of everything else leaves for last."""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.causes.cause import Cause, Edits, Size
from loadfirst.causes.group import Group
from loadfirst.causes.pairs import Way, factors
from loadfirst.causes.which_pump import FIRST, SECOND, WhichPump
from loadfirst.plant import library
from loadfirst.plant.plant import Curve
from loadfirst.plant.pumps import ResolvedPlant, find_pump

GROUP: Group = "machine"
LIKE = 2.5
"""Shut-off heads less than so many times apart are of pumps that may replace each other. Our choice. [-]"""
STOPPED = 90.0  # [%] of the passages; beyond it the model takes all for blocked


def of_pump(which: WhichPump) -> tuple[Cause, ...]:
    """What can happen inside one of the pumps."""
    at, wear, blocked = which.prefix, f"{which.table}.wear_percent", f"{which.table}.blocked_percent"
    trim, rotation = f"{which.table}.trim_percent", f"{which.table}.rotation"
    worn = Cause(
        id=f"{at}worn", group=GROUP, keys=(wear,), unless=which.there, shown_by=("gaps-measured",),
        says=f"Wear has widened the gaps inside {which.name}, and liquid leaks back.",
        size=Size("%", "leakage over the flow at best efficiency, added", 0, 50, none=0, usual=10),
        edit=e.plus(wear), room=e.above(wear, 50.0),
    )  # fmt: skip
    larger, smaller = factors(
        (trim,),
        Way(f"{at}impeller-larger", f"A larger impeller was fitted to {which.name} at the overhaul.", 1.06),
        Way(f"{at}impeller-smaller", f"A smaller impeller was fitted to {which.name} at the overhaul.", 0.93),
        says="diameter, over the one before", low=0.7, high=1.2, edit=e.scaled(trim),
        room=e.factors(trim, 70.0, 120.0), group=GROUP, unless=which.impeller,
        shown_by=("job-card", "impeller-seen"),
    )  # fmt: skip
    partly = Cause(
        id=f"{at}impeller-partly-blocked", group=GROUP, keys=(blocked,), unless=which.impeller,
        says=f"Some passages of the impeller of {which.name} are blocked.",
        size=Size("%", "share of the passages, added", 0, 90, none=0, usual=30),
        edit=e.plus(blocked), room=e.above(blocked, STOPPED), shown_by=("shaking", "impeller-seen"),
    )  # fmt: skip
    plugged = Cause(
        id=f"{at}impeller-plugged", group=GROUP, keys=(blocked,), edit=e.to(blocked, 100.0),
        says=f"The impeller of {which.name} is plugged altogether.",
        unless=e.first(which.impeller, e.bars_with(blocked, 100.0, "it is already")),
        shown_by=("impeller-seen",),
    )  # fmt: skip
    backwards = Cause(
        id=f"{at}impeller-backwards", group=GROUP, keys=(rotation,), edit=e.to(rotation, "wrong"),
        says=f"The impeller of {which.name} was put in the wrong way round.",
        unless=e.first(which.impeller, e.needs(rotation, "right", "it turns the wrong way already")),
        shown_by=("impeller-seen", "job-card"),
        source="common practice (impellers with two inlets); taken for a pump that turns backward",
    )  # fmt: skip
    return worn, smaller, larger, partly, plugged, backwards


def _next_model(plant: ResolvedPlant, step: int) -> str | None:
    """The packaged pump of a like head that reaches the next more (1) or less (-1) flow."""
    now = plant.curve
    assert isinstance(now, Curve)
    past: dict[str, float] = {}
    for id in library.ids("pumps"):
        pump = find_pump(id)
        if isinstance(pump, Curve) and 1 / LIKE < pump.head_m[0] / now.head_m[0] < LIKE:
            past[id] = step * (pump.flow_m3h[-1] - now.flow_m3h[-1])
    return min((id for id in past if past[id] > 0), key=lambda id: (past[id], _strays(id)), default=None)


def _strays(id: str) -> bool:
    """Whether its head rises anywhere with the flow: of two that give as much, nobody would fit that one."""
    pump = find_pump(id)
    return isinstance(pump, Curve) and max(pump.head_m) > pump.head_m[0]


def _replaced(id: str, says: str, step: int) -> Cause:
    def unless(plant: ResolvedPlant) -> str | None:
        if plant.plant.pump.arrangement != "single":
            return "there are two pumps"
        if not (isinstance(plant.plant.pump.model, str) and isinstance(plant.curve, Curve)):
            return "which pump would take its place is not known"
        return None if _next_model(plant, step) else "no such pump is known"

    def edit(plant: ResolvedPlant, size: float) -> Edits:
        return {"pump.model": _next_model(plant, step)}

    return Cause(
        id=id, group=GROUP, keys=("pump.model",), says=says, edit=edit, unless=unless,
        shown_by=("pump-plate", "job-card"),
    )  # fmt: skip


REPLACED = (
    _replaced("pump-replaced-smaller", "The pump was replaced by the next smaller model.", -1),
    _replaced("pump-replaced-larger", "The pump was replaced by the next larger model.", 1),
)

CAUSES = (*of_pump(FIRST), *of_pump(SECOND), *REPLACED)
