"""Random plants that set themselves: balanced, at the set point or at the limit that is nearer to it."""

from __future__ import annotations

import os
from collections import Counter, defaultdict

import numpy as np
import pytest
from msgspec.structs import replace
from tests.checker import Fluid, check
from tests.control import controlled_plants, reading, rises, wanted
from tests.strategies import ResolvedPlant

from loadfirst.plant.automatic import acts, settled
from loadfirst.plant.build import build
from loadfirst.plant.layout import Shape, shape_of
from loadfirst.plant.solved import Solved, solve_plants

COUNT = int(os.environ.get("LOADFIRST_PLANTS", "3000")) // 15
NEAR = 1e-6  # [-] of the plant's scales


@pytest.fixture(scope="module")
def plants() -> list[ResolvedPlant]:
    """As they have set themselves."""
    return list(settled(controlled_plants(11, COUNT)))


@pytest.fixture(scope="module")
def solved(plants: list[ResolvedPlant]) -> list[Solved]:
    """The same, those of one shape together."""
    shapes: dict[Shape, list[ResolvedPlant]] = defaultdict(list)
    for one in plants:
        shapes[shape_of(one)].append(one)
    return [solve_plants(build(some)) for some in shapes.values()]


def test_every_kind_of_outcome_is_among_them(plants: list[ResolvedPlant]) -> None:
    """Otherwise the tests below would look at nothing."""
    found = [one.found for one in plants if one.found is not None]
    statuses = Counter(each.status for each in found)
    assert min(statuses[kind] for kind in ("reached", "lost-low", "lost-high")) >= COUNT / 50
    assert sum(each.asked is not None for each in found) > COUNT / 50


def test_they_converge_and_an_independent_checker_agrees(solved: list[Solved]) -> None:
    """A settled plant is an ordinary one: every drop and every balance, recomputed."""
    for one in solved:
        assert one.solution.converged.all()
        for row in range(0, len(one.built), 5):
            liquid = one.built.liquids[row]
            off = check(
                one.built.plants[row],
                Fluid(liquid.density, liquid.viscosity, liquid.vapour_pressure),
                {name: float(flow[row]) for name, flow in one.solution.flow.items()},
                {node: float(head[row]) for node, head in one.solution.head.items()},
            )
            assert off.head <= 2e-9 * one.built.head_scale[row], off
            assert off.flow <= 2e-9 * one.built.flow_scale[row], off


def test_the_reading_stands_at_the_set_point_or_the_output_at_the_limit_that_is_nearer(
    solved: list[Solved],
) -> None:
    """At the upper limit a reading that rises with the output is short of its set point, else above it."""
    looked = 0
    for one in solved:
        for row, plant in enumerate(one.built.plants):
            if plant.found is None or plant.found.status is None or plant.found.status == "hunting":
                continue
            looked += 1
            got, aim = reading(plant, one, row), wanted(plant)
            bars = float(one.built.head_scale[row]) * one.built.liquids[row].density * 9.80665e-5
            scale = bars if plant.plant.control.of.endswith("pressure") else one.built.flow_scale[row] * 3600
            if plant.found.status == "reached":
                assert abs(got - aim) <= NEAR * scale, plant.plant.control
                continue
            if plant.plant.control.of.endswith("level"):
                continue  # the surface has moved on: see below
            at_high = plant.found.status == "lost-high"
            farther = reading(*at_other_limit(plant)) - aim  # whichever way the liquid runs
            forward = one.solution.flow["suction-line"][row] > 0 and one.solution.flow["end"][row] >= 0
            pump = plant.plant.pump
            forward = forward and "wrong" not in (pump.rotation, pump.second.rotation)
            if forward and abs(farther - got + aim) > NEAR * scale:
                assert (got < aim) == (at_high == rises(plant)), (plant.plant.control, got, aim)
            assert (got - aim) * farther >= 0 and abs(farther) >= abs(got - aim) - NEAR * scale
    assert looked > COUNT / 2


def at_other_limit(one: ResolvedPlant) -> tuple[ResolvedPlant, Solved, int]:
    """A plant out of control, with its output at the opposite limit."""
    assert one.found is not None
    control = one.plant.control
    share = (control.low_percent if one.found.status == "lost-high" else control.high_percent) / 100
    if control.on == "valve":
        plant = replace(one.plant, valve=replace(one.plant.valve, opening=share))
    else:
        frequency = max(share * (control.full_hz or one.plant.drive.supply_hz), 5.0)
        plant = replace(one.plant, drive=replace(one.plant.drive, frequency_hz=frequency))
    by_hand = replace(plant, control=replace(control, mode="manual"))
    (there,) = settled([one._replace(plant=by_hand, found=None)])  # its drive may have a current limit
    return there, solve_plants(build([there])), 0


def test_a_level_out_of_control_is_balanced_or_at_rim_or_bottom(solved: list[Solved]) -> None:
    """More comes than goes at the rim, less at the bottom; or as much, somewhere between."""
    looked = 0
    for one in solved:
        for row, plant in enumerate(one.built.plants):
            of = plant.plant.control.of
            if (
                plant.found is None
                or not (plant.found.status or "").startswith("lost")
                or not of.endswith("level")
            ):
                continue
            looked += 1
            below = of == "supply-level"  # more goes out of it as more is pumped
            vessel = plant.plant.supply if below else plant.plant.delivery
            surplus = reading(plant, one, row) - wanted(plant)
            near = NEAR * max(float(one.built.flow_scale[row]) * 3600, wanted(plant))
            if vessel.surface_m not in (vessel.bottom_m, vessel.top_m) and abs(surplus) > near:
                outlet = plant.plant.delivery.outlet_m  # where it is drowned the liquid's end leaps
                assert outlet is not None and vessel.surface_m == pytest.approx(outlet, abs=1e-6)
            elif abs(surplus) > near:
                rising = surplus < 0 if below else surplus > 0
                assert (vessel.surface_m == vessel.top_m) == rising, plant.plant
    assert looked > COUNT / 50


def test_no_motor_draws_more_than_its_drives_limit(solved: list[Solved]) -> None:
    """Cut back, the one that is loaded most stands at the limit; above it only if 5 Hz are too much."""
    for one in solved:
        laws = one.built.machines.items()
        currents = [one.running[name].current / law.motor.rated_current for name, law in laws]
        most = np.concatenate(currents, axis=1).max(axis=1)
        for plant, current in zip(one.built.plants, most, strict=True):
            limit = plant.plant.drive.current_limit_percent
            if limit is None:
                continue
            if plant.found is not None and plant.found.overloaded:
                assert current > limit / 100 and plant.plant.drive.frequency_hz == 5.0
            else:
                assert current <= limit / 100 * (1 + 1e-8)
                if plant.found is not None and plant.found.asked is not None:
                    assert current == pytest.approx(limit / 100, rel=1e-7)


def test_plants_settled_together_and_alone_are_the_same(plants: list[ResolvedPlant]) -> None:
    """Batching changes nothing, and what is settled stays as it is."""
    given = controlled_plants(11, COUNT)
    for row in range(0, COUNT, 15):
        (alone,) = settled([given[row]])
        assert alone.plant == plants[row].plant or acts(alone.plant)
        if alone.found is not None and alone.found.output is not None:
            assert plants[row].found is not None and plants[row].found.output is not None
            assert alone.found.status == plants[row].found.status
            assert alone.found.output == pytest.approx(plants[row].found.output, rel=1e-5, abs=1e-6)
        assert settled([alone])[0] is alone
