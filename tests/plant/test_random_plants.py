"""Thousands of legal plants of every shape: all converge, and an independent checker agrees.

`LOADFIRST_PLANTS=20000 pytest tests/plant/test_random_plants.py` runs the full count.
"""

from __future__ import annotations

import os
from collections import defaultdict

import numpy as np
import pytest
from tests.checker import Fluid, Off, check
from tests.strategies import Dice, ResolvedPlant, legal, plant_data, random_plants

from loadfirst.plant.build import build
from loadfirst.plant.layout import Shape, shape_of
from loadfirst.plant.solved import Solved, solve_plants

COUNT = int(os.environ.get("LOADFIRST_PLANTS", "3000"))
EVERY = 10 if COUNT <= 3000 else 1
"""Which of the plants the checker looks at in a short run: it takes 2 ms for each."""


def by_shape(plants: list[ResolvedPlant]) -> list[Solved]:
    """Solve plants, those of one shape together."""
    shapes: dict[Shape, list[ResolvedPlant]] = defaultdict(list)
    for one in plants:
        shapes[shape_of(one)].append(one)
    assert len({shape.arrangement for shape in shapes}) == 3
    return [solve_plants(build(some)) for some in shapes.values()]


@pytest.fixture(scope="module")
def solved() -> list[Solved]:
    """Plants that are sensible but for a few keys."""
    return by_shape(list(random_plants(2, COUNT)))


def checked(one: Solved, row: int) -> Off:
    """What the independent checker says of one answer."""
    solution, liquid = one.solution, one.built.liquids[row]
    return check(
        one.built.plants[row],
        Fluid(liquid.density, liquid.viscosity, liquid.vapour_pressure),
        {name: float(flow[row]) for name, flow in solution.flow.items()},
        {node: float(head[row]) for node, head in solution.head.items()},
    )


def test_every_plant_converges(solved: list[Solved]) -> None:
    """Every legal plant of these shapes has an answer, and the solver finds it."""
    for one in solved:
        assert [reason for reason in one.solution.reason if reason] == []
        assert one.solution.converged.all()


def test_no_number_is_missing_or_infinite(solved: list[Solved]) -> None:
    """No NaN and no infinity ever leaves the solver or the machines."""
    for one in solved:
        parts = [one.solution.flow, one.solution.head, one.solution.drop]
        arrays = [values for part in parts for values in part.values()]
        arrays += [values for running in one.running.values() for values in running]
        assert all(np.isfinite(values).all() for values in arrays)


def test_an_independent_checker_finds_every_element_and_node_balanced(solved: list[Solved]) -> None:
    """Drops recomputed from the flows, and sums at the nodes: 1e-9 of the head and flow scales.

    The checker's own arithmetic may add as much again, hence twice that.
    """
    for one in solved:
        for row in range(0, len(one.built), EVERY):
            off = checked(one, row)
            assert off.head <= 2e-9 * one.built.head_scale[row], off
            assert off.flow <= 2e-9 * one.built.flow_scale[row], off


def test_plants_with_most_keys_anywhere_in_their_range_converge() -> None:
    """Needle-thin lines on river-wide pumps: legal, and no excuse for the solver."""
    choose = Dice(5)
    shapes = [(a, attached) for a in ("single", "side-by-side", "in-line") for attached in (True, False)]
    plants = [legal(plant_data(choose, *shapes[k % 6], wild=30)) for k in range(COUNT // 2)]
    for one in by_shape(plants):
        assert one.solution.converged.all()


def test_two_flat_pumps_on_a_needle_converge() -> None:
    """A case that stalled: the flow of flat pumps is noise in the heads that a thin line makes."""
    choose = Dice(5)
    data = plant_data(choose, "side-by-side", True, 0)
    curve = {"flow_m3h": [0, 98, 259, 813], "head_m": [54.63, 54.62, 54.47, 49.7], "speed_rpm": 1450.0}
    curve |= {"power_kw": [92, 128, 158, 767], "npshr_m": [0.5, 0.6, 1.1, 6.5], "motor_kw": 907.0}
    data["pump"] = {"arrangement": "side-by-side", "curve": curve}
    data["suction"] |= {"bore_mm": 5.0, "roughness_mm": 0.0, "length_m": 5000.0, "strainer_k": 43957.0}
    data["valve"]["opening"] = 0.0
    for fitted in (True, False):
        data["check"]["fitted"] = fitted
        one = solve_plants(build([legal(data)]))
        assert one.solution.converged.all()
        assert checked(one, 0).head <= 2e-9 * one.built.head_scale[0]


@pytest.mark.parametrize("rated", [0.373, 3.73, 11.2, 37.3, 186.0])
def test_the_checker_agrees_on_a_motor_at_a_point_of_its_table(rated: float) -> None:
    """Where one stretch of the slip's table ends and the next begins."""
    data = plant_data(Dice(7), "single", True, 0)
    data["drive"]["motor_kw"] = rated
    one = solve_plants(build([legal(data)]))
    assert checked(one, 0).head <= 2e-9 * one.built.head_scale[0]
