"""Finds what plants set by themselves: whole plants are solved until each stands where it wants to.

From outside in: a controller's output, within it the frequency that the current
limit leaves. Each is a search for the root of something that never falls
(`physics.control`, `physics.current_limit`), all plants of one shape together.
A drive at its limit gives no more at a higher output, so a controller on a drive
searches below the limit only.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np
from msgspec.structs import replace

from loadfirst.physics.control import Held, hold
from loadfirst.physics.current_limit import cut_back
from loadfirst.physics.root import Remembered, rising_root
from loadfirst.plant.automatic import LOWEST_HZ, acts, frequency_of, full_hz, output_hz
from loadfirst.plant.build import build
from loadfirst.plant.found import Found, Status
from loadfirst.plant.layout import Shape, shape_of
from loadfirst.plant.measured import exactness, readings, set_point
from loadfirst.plant.solved import Solved, solve_plants
from loadfirst.units import PERCENT

if TYPE_CHECKING:
    from loadfirst.physics.law import Array, Index
    from loadfirst.plant.pumps import ResolvedPlant

WITHIN = 1e-8
"""How near the set point is near enough, of what the reading changes between the limits. [-]"""

VALVE, DRIVE = "valve.opening", "drive.frequency_hz"
Plants = list["ResolvedPlant"]


def settle(plants: Sequence[ResolvedPlant]) -> Plants:
    """Plants with a controller in automatic, a current limit or both, as they come to rest."""
    groups: dict[tuple[Shape, bool], list[int]] = {}
    for row, one in enumerate(plants):
        groups.setdefault((shape_of(one), acts(one.plant)), []).append(row)
    result = list(plants)
    for (_, controlled), rows in groups.items():
        some = [plants[row] for row in rows]
        for row, one in zip(rows, _held(some) if controlled else _limited(some)[0], strict=True):
            result[row] = one
    return result


def _held(plants: Plants) -> Plants:
    """Each with its controller's output, at its current limit if need be."""
    low = np.array([_share(one, one.plant.control.low_percent) for one in plants])
    high = np.array([_share(one, one.plant.control.high_percent) for one in plants])
    at_level = [_with_level(one, one.plant.control.set_m) for one in plants]
    top, solved = _limited(_moved(at_level, high))
    wanted = np.array([set_point(one.plant) for one in plants])

    def answered(rows: Index, output: Array) -> Array:
        return readings(_limited(_moved([at_level[row] for row in rows], output))[1])

    reach = _reach(top, low, high)
    remembered = Remembered(answered, len(plants))
    remembered.keep(reach, readings(solved))  # a drive at its limit stands there
    held = hold(wanted, remembered, low, reach, WITHIN, exactness(solved))
    output = np.where(held.at_high, high, held.output)
    placed = _with_top(top, _balanced(at_level, output, held), held)
    return [_told(*each) for each in zip(plants, placed, output, _statuses(held), strict=True)]


def _with_top(top: Plants, placed: Plants, held: Held) -> Plants:
    """All with the frequency that their limits leave; those at full output are known, but no levels."""
    levels = np.array([one.plant.control.of.endswith("level") for one in placed])
    result, rows = list(top), np.flatnonzero(~held.at_high | levels).tolist()
    if rows:
        for row, one in zip(rows, _limited([placed[row] for row in rows])[0], strict=True):
            result[row] = one
    return result


def _share(one: ResolvedPlant, percent: float) -> float:
    """A limit of the output; a drive does not go below its lowest frequency. [-]"""
    share = percent * PERCENT
    return share if one.plant.control.on == "valve" else max(share, LOWEST_HZ / full_hz(one.plant))


def _reach(top: Plants, low: Array, high: Array) -> Array:
    """Up to which output something changes: a drive at its current limit gives no more. (B,) [-]"""
    cut = [
        frequency_of(one.plant) / full_hz(one.plant)
        if _cut(one) and one.plant.control.on == "drive"
        else np.inf
        for one in top
    ]
    return np.maximum(np.minimum(high, cut), low)


def _cut(one: ResolvedPlant) -> bool:
    return one.found is not None and one.found.asked is not None


def _moved(plants: Plants, output: Array) -> Plants:
    """Each with the valve or the drive that its controller moves at that output."""
    return [_with_output(one, float(share)) for one, share in zip(plants, output, strict=True)]


def _with_output(one: ResolvedPlant, output: float) -> ResolvedPlant:
    plant = one.plant
    if plant.control.on == "valve":
        return one._replace(plant=replace(plant, valve=replace(plant.valve, opening=min(output, 1.0))))
    return _with_frequency(one, output_hz(plant, output))


def _with_frequency(one: ResolvedPlant, frequency: float) -> ResolvedPlant:
    return one._replace(plant=replace(one.plant, drive=replace(one.plant.drive, frequency_hz=frequency)))


def _with_level(one: ResolvedPlant, surface: float) -> ResolvedPlant:
    """With the surface of the vessel whose level is controlled there; any other plant as it is."""
    vessel, _, what = one.plant.control.of.partition("-")
    if what != "level":
        return one
    moved = replace(getattr(one.plant, vessel), surface_m=surface)
    return one._replace(plant=replace(one.plant, **{vessel: moved}))


def _balanced(plants: Plants, output: Array, held: Held) -> Plants:
    """With that output; a level out of control is where the plant balances, or at rim or bottom."""
    placed = _moved(plants, output)
    rows = [row for row in np.flatnonzero(held.lost) if plants[row].plant.control.of.endswith("level")]
    if not rows:
        return placed
    some = [placed[row] for row in rows]
    supplies = np.array([one.plant.control.of == "supply-level" for one in some])
    vessels = [
        one.plant.supply if below else one.plant.delivery for one, below in zip(some, supplies, strict=True)
    ]
    draw = np.array([set_point(one.plant) for one in some])

    def lacking(of: Index, surface: Array) -> Array:
        """More goes out of the vessel than comes in, as it does the more the higher it is filled."""
        there = [_with_level(some[row], level) for row, level in zip(of, surface.tolist(), strict=True)]
        return np.asarray(np.where(supplies[of], 1.0, -1.0) * (readings(_limited(there)[1]) - draw[of]))

    bottom, top = ([getattr(one, end) for one in vessels] for end in ("bottom_m", "top_m"))
    level, _ = rising_root(Remembered(lacking, len(some)), bottom, top, within=WITHIN * draw)
    for row, one, surface in zip(rows, some, level, strict=True):
        placed[row] = _with_level(one, float(surface))
    return placed


def _limited(plants: Plants) -> tuple[Plants, Solved]:
    """Each with the frequency that its current limit leaves, and all of them solved."""
    solved = solve_plants(build(plants))
    limits = np.array([one.plant.drive.current_limit_percent or np.inf for one in plants]) * PERCENT
    rows = np.flatnonzero(_loads(solved) > limits)
    if not len(rows):
        return plants, solved
    some, most = [plants[row] for row in rows], limits[rows]
    asked = np.array([frequency_of(one.plant) for one in some])

    def loads(of: Index, frequency: Array) -> Array:
        there = [_with_frequency(some[row], hertz) for row, hertz in zip(of, frequency.tolist(), strict=True)]
        return _loads(solve_plants(build(there)))

    left = cut_back(asked, most, Remembered(loads, len(some)), LOWEST_HZ)
    result = list(plants)
    for row, one, hertz, before, over in zip(rows, some, left.frequency, asked, left.overloaded, strict=True):
        found = Found({DRIVE: float(hertz)}, asked=float(before), overloaded=bool(over))
        result[row] = _with_frequency(one, float(hertz))._replace(found=found)
    return result, solve_plants(build(result))


def _loads(solved: Solved) -> Array:
    """Current of the motor that is loaded most, over its rated one. (B,) [-]"""
    shares = [
        solved.running[name].current / law.motor.rated_current for name, law in solved.built.machines.items()
    ]
    return np.asarray(np.concatenate(shares, axis=1).max(axis=1))


def _statuses(held: Held) -> list[Status]:
    kinds = zip(held.reached, held.at_low, held.at_high, strict=True)
    return [
        "reached" if reached else "lost-low" if low else "lost-high" if high else "hunting"
        for reached, low, high in kinds
    ]


def _told(given: ResolvedPlant, placed: ResolvedPlant, output: float, status: Status) -> ResolvedPlant:
    """A settled plant with what was found."""
    plant, limit = placed.plant, placed.found or Found({})
    moved = {VALVE: plant.valve.opening} if plant.control.on == "valve" else {DRIVE: frequency_of(plant)}
    vessel, _, what = plant.control.of.partition("-")
    if what == "level":
        moved[f"{vessel}.surface_m"] = getattr(plant, vessel).surface_m
    return placed._replace(
        found=limit._replace(moved=limit.moved | moved, output=float(output), status=status)
    )
