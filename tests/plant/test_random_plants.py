"""Thousands of legal plants of every shape, every key drawn: their answers hold what `trial.faults` asks.

`LOADFIRST_PLANTS=20000 pytest tests/plant/test_random_plants.py` runs more;
`python3 pysrc/loadfirst_dev trial` as many as one likes.
"""

from __future__ import annotations

import os

import numpy as np
import pytest
from tests.any_key import LEFT_OUT, Data, drawn_keys
from tests.strategies import Dice, any_data, legal, plant_data, random_plants
from tests.trial import by_shape, checked, faults

from loadfirst.plant.build import build
from loadfirst.plant.keys import keys_of
from loadfirst.plant.layout import shape_of
from loadfirst.plant.plant import Plant
from loadfirst.plant.solved import Solved, solve_plants

COUNT = int(os.environ.get("LOADFIRST_PLANTS", "2000"))
TOGETHER = 1000
"""Plants of one shape, solved as a batch and one by one."""


@pytest.fixture(scope="module")
def solved() -> list[Solved]:
    """Plants that are sensible but for a few keys, and some where most keys are anywhere."""
    return [one for _, one in by_shape(list(random_plants(2, COUNT)))]


def test_every_answer_holds_what_is_asked_of_it(solved: list[Solved]) -> None:
    """Balanced by the independent checker, finite on every dial, no pressure below vapour pressure unsaid."""
    assert {one.built.layout.side_by_side + 2 * one.built.layout.in_line for one in solved} == {3, 4, 5}
    wrong = {
        (one.built.plants[row].plant.title, row): found
        for one in solved
        for row in range(len(one.built))
        if (found := faults(one, row))
    }
    assert wrong == {}


def test_no_number_is_missing_or_infinite(solved: list[Solved]) -> None:
    """No NaN and no infinity ever leaves the machines."""
    for one in solved:
        arrays = [values for running in one.running.values() for values in running]
        assert all(np.isfinite(values).all() for values in arrays)


def test_every_key_is_drawn_or_left_out_with_a_reason() -> None:
    """A key that nobody ever set was never tried; one that is listed as left out is a key."""
    assert set(LEFT_OUT) <= set(keys_of(Plant))
    choose, seen = Dice(3), set()
    for _ in range(COUNT // 2):
        data = any_data(choose)
        seen |= {path for path, key in drawn_keys().items() if _there(data, path) not in (None, key.default)}
    assert drawn_keys().keys() - seen == set()


def _there(data: Data, path: str) -> object:
    for name in path.split("."):
        if name not in data:
            return None
        data = data[name]
    return data


def test_a_thousand_plants_of_one_shape_are_each_what_they_are_alone() -> None:
    """To 1e-9 of their scales: nothing that one plant is reaches another."""
    choose, plants = Dice(11), []
    fitted = ("branch", "return_line", "filter", "burst", "summit", "relief")
    while len(plants) < TOGETHER:
        data = plant_data(choose, "side-by-side", True, 3)
        data["pump"] |= {"running": True, "rotation": "right"}
        data["pump"]["second"] = {}
        for table in fitted:
            data[table] = data.get(table, {}) | {"fitted": True}
        data["second_line"], data["discharge"]["filled"] = {"fitted": False}, 1.0
        plants.append(legal(data))
    assert len({shape_of(one) for one in plants}) == 1
    together = solve_plants(build(plants))
    for row, one in enumerate(plants):
        alone = solve_plants(build([one]))
        for name, flow in together.solution.flow.items():
            assert abs(flow[row] - alone.solution.flow[name][0]) <= 1e-9 * alone.built.flow_scale[0], name
        for name, drop in together.solution.drop.items():
            assert abs(drop[row] - alone.solution.drop[name][0]) <= 1e-9 * alone.built.head_scale[0], name


@pytest.mark.parametrize("rated", [0.373, 3.73, 11.2, 37.3, 186.0])
def test_the_checker_agrees_on_a_motor_at_a_point_of_its_table(rated: float) -> None:
    """Where one stretch of the slip's table ends and the next begins."""
    data = plant_data(Dice(7), "single", True, 0)
    data["drive"]["motor_kw"] = rated
    one = solve_plants(build([legal(data)]))
    assert checked(one, 0).head <= 2e-9 * one.built.head_scale[0]
