"""The outlets behind the check valve, and whether any liquid could come back through them.

Air, not liquid, comes in at an end above the surface. So nothing flows back
there, and where the pumps are too weak the liquid stands below the end. Behind
a tight check valve a line cannot run empty: it stands full up to the lowest of
the ends that are open, and the check valve bears the column. That end lets the
head through, as nothing can flow back there anyway. A line behind its own shut
valve stands full too.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from loadfirst.plant.heights import far_gas_bar, far_height, pours_freely
from loadfirst.units import BAR, G

if TYPE_CHECKING:
    from loadfirst.plant.elements.section import Given
    from loadfirst.plant.plant import Plant


class Outlet(NamedTuple):
    """Where liquid leaves.

    Attributes
    ----------
    head : just outside. [m]
    pours : it is above any surface.
    open : its valve is.
    """

    head: float
    pours: bool
    open: bool


def main_head(given: Given) -> float:
    """Head at the far end of the discharge line. [m]"""
    return far_height(given.plant) + far_gas_bar(given.plant) * BAR / (given.liquid.density * G)


def branch_head(given: Given) -> float:
    """Head at the second user. [m]"""
    branch = given.plant.branch
    return branch.end_m + branch.gas_bar * BAR / (given.liquid.density * G)


def holds(given: Given, name: str) -> bool:
    """Whether nothing comes back at an outlet, because air would.

    Parameters
    ----------
    name : "delivery" or "branch"
    """
    plant = given.plant
    if not (plant.branch.pours if name == "branch" else pours_freely(plant)):
        return False
    if not _tight(plant):
        return True
    outlets = _outlets(given)
    lowest = min((each.head for each in outlets.values() if each.open), default=0.0)
    return outlets[name].open and outlets[name].head > lowest


def _tight(plant: Plant) -> bool:
    """Whether the lines cannot run empty through the pumps."""
    return plant.check.fitted


def _outlets(given: Given) -> dict[str, Outlet]:
    plant = given.plant
    found = {"delivery": Outlet(main_head(given), pours_freely(plant), plant.valve.opening > 0)}
    if plant.branch.fitted:
        branch = plant.branch
        found["branch"] = Outlet(branch_head(given), branch.pours, branch.opening > 0)
    return found
