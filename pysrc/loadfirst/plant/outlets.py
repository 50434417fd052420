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

from loadfirst.plant.heights import far_gas_bar, far_height, filling, pours_freely
from loadfirst.units import BAR, G

if TYPE_CHECKING:
    from loadfirst.plant.elements.section import Given


class Outlet(NamedTuple):
    """Where liquid leaves.

    Attributes
    ----------
    head : up to which a line that cannot run empty stands full. [m]
    pours : air comes in there, not liquid.
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


def burst_head(given: Given) -> float:
    """Head in front of a hole near the pumps. [m]"""
    return given.plant.pump.centre_m


def summit_rise(given: Given) -> float:
    """How far the summit stands above the far end, less what a primed one can pull. [m]"""
    from loadfirst.physics.siphon import summit_floor
    from loadfirst.plant.air import air_pressure

    plant, liquid = given
    air, vapour = air_pressure(plant), liquid.vapour_pressure
    floor = summit_floor(plant.summit.height_m, plant.summit.primed, liquid.density, vapour, air)
    return float(floor) - main_head(given)


def over_summit(given: Given) -> bool:
    """Whether nothing can come back because a summit stands in between."""
    plant = given.plant
    return plant.summit.fitted and not filling(plant) and summit_rise(given) > 0


def holds(given: Given, name: str) -> bool:
    """Whether nothing comes back at an outlet, because air would.

    Parameters
    ----------
    name : "delivery", "branch" or "burst"
    """
    plant = given.plant
    if name == "delivery" and not (pours_freely(plant) or over_summit(given)):
        return False  # the usual case, and no more is asked
    outlets = _outlets(given)
    if not outlets[name].pours:
        return False
    lowest = min((each.head for each in outlets.values() if each.open), default=outlets["delivery"].head)
    if not _tight(given, lowest):
        return True
    return outlets[name].open and outlets[name].head > lowest


def _tight(given: Given, column: float) -> bool:
    """Whether the lines cannot run empty through the pumps, nor to the supply from behind two of them."""
    check = given.plant.check
    if not check.fitted or check.stuck_open or check.leak_kv_m3h:
        return False
    return given.plant.pump.arrangement == "single" or not _drains(given, column)


def _drains(given: Given, column: float) -> bool:
    """Whether return line or relief valve lets a column of that head back to the supply."""
    plant, weight = given.plant, given.liquid.density * G
    back, relief = plant.return_line, plant.relief
    if back.fitted and back.opening > 0:
        return True
    if not relief.fitted or relief.state == "blocked":
        return False
    assert relief.set_bar is not None  # plant.pumps has seen to it
    supply = plant.supply.surface_m + plant.supply.gas_bar * BAR / weight
    return relief.state == "passing" or column - supply > relief.set_bar * BAR / weight


def _outlets(given: Given) -> dict[str, Outlet]:
    plant = given.plant
    main, over = main_head(given), over_summit(given)
    spill = main + summit_rise(given) if over else main
    found = {"delivery": Outlet(spill, pours_freely(plant) or over, plant.valve.opening > 0)}
    if plant.branch.fitted:
        branch = plant.branch
        found["branch"] = Outlet(branch_head(given), branch.pours, branch.opening > 0)
    if plant.burst.fitted:
        found["burst"] = Outlet(burst_head(given), True, True)
    return found
