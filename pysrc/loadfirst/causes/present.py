"""What an observation looks at and a plant may not have."""

from __future__ import annotations

from loadfirst.causes import edit as e
from loadfirst.plant.pumps import ResolvedPlant

_RELIEF = e.needs("relief.fitted", True, "there is no relief valve")
_RETURN = e.needs("return_line.fitted", True, "there is no return line")
_ORIFICE = e.needs("meters.flow_kind", "orifice", "the flow meter is no orifice")

NEEDS: dict[str, e.Unless] = {
    "other-user": e.needs("branch.fitted", True, "there is no second user"),
    "filter-drop": e.needs("filter.fitted", True, "there is no filter"),
    "return-felt": _RETURN,
    "meter-place": _RETURN,
    "relief-felt": _RELIEF,
    "relief-tested": _RELIEF,
    "standby-shaft": e.needs_two,
    "check-lever": e.needs("check.fitted", True, "there is no check valve"),
    "summit-vented": e.needs("summit.fitted", True, "the line has no summit"),
    "strainer-basket": e.bars_with("suction.strainer_k", 0.0, "there is no strainer"),
    "drive-display": e.needs_drive,
    "belt-seen": e.bars_with("drive.belt", "none", "there is no belt"),
    "controller-face": e.needs("control.fitted", True, "there is no controller"),
    "impeller-seen": e.needs_impeller,
    "plate-tag": _ORIFICE,
    "plate-seen": _ORIFICE,
    "density-set": _ORIFICE,
}
"""By the id of an observation: why a plant has nothing of the kind. Every other can be made anywhere."""


def missing_for(observation: str, plant: ResolvedPlant) -> str | None:
    """Why there is nothing to look at; None where there is."""
    needs = NEEDS.get(observation)
    return None if needs is None else needs(plant)
