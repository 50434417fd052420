"""What all elements that only resist have in common, whatever their sizes."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.physics.check import CheckValves
from loadfirst.physics.filter import Filters
from loadfirst.physics.inertia import RigidColumns
from loadfirst.physics.law import Array, Law, column
from loadfirst.physics.level import Vessels
from loadfirst.physics.pipe import Pipes
from loadfirst.physics.siphon import Siphons, Summits
from loadfirst.physics.valve import Valves

Make = Callable[[Array], Law]
"""A law of one element each for the plants of a (B, 1) table of sizes from 0 to 1."""


def pipes(size: Array) -> Law:
    """Long or short, wide or narrow, smooth or rough, water or thick oil."""
    bore = 0.02 + 0.4 * size
    oil = np.where(size > 0.5, 3e-4, 1e-6)
    return Pipes(200 * (1 - size), bore, bore / 20 * size**3, 30 * size, oil)


def valves(size: Array) -> Law:
    """From a needle valve to a large one; a size of 0 is shut."""
    return Valves(400 * size**2)


def check_valves(size: Array) -> Law:
    """From an open pipe end to a tight check valve."""
    return CheckValves(1e5 * size)


def broken_check_valves(size: Array) -> Law:
    """Check valves that do not hold."""
    return CheckValves(1e5 * size, False)


def filters(size: Array) -> Law:
    """From clean on water to fouled on cold oil."""
    return Filters(1e10 * (1 + size), 50 * size**2, 1e-6 + 3e-4 * size, 1e5 * (1 - size))


def siphons(size: Array) -> Law:
    """From far below what a summit can pull to far above the outlet."""
    run = Pipes(30.0, 0.08 + 0.1 * size, 5e-5, 2.0, 1e-6)
    return Siphons(run, 30 * size - 12, 0.08 + 0.1 * size)


def summits(size: Array) -> Law:
    """The same with pipes of their own, and a line before them that stands full."""
    bore = 0.08 + 0.1 * size
    return Summits(30.0, bore, 5e-5, 2.0, 1e-6, 30 * size - 12, False)


def columns(size: Array) -> Law:
    """Liquid at rest at the beginning of a long step or of a very short one."""
    pipe = pipes(size)
    assert isinstance(pipe, Pipes)
    return RigidColumns.of(pipe, 10 ** (12 * size - 3), 0.0)


def vessels(size: Array) -> Law:
    """Vessels without inflow: free, at the rim, and empty either way."""
    slope = 100 * size
    return Vessels(0.0, np.where(size > 0.7, 0.0, slope), slope, size < 0.2, (size > 0.2) & (size < 0.4))


PLAIN = [pipes, valves, check_valves, broken_check_valves]
CORNERED = [filters, siphons, summits, columns, vessels]
ALL = pytest.mark.parametrize("make", [*PLAIN, *CORNERED])
SMOOTH = pytest.mark.parametrize("make", [pipes, valves, broken_check_valves])
SIZE = st.floats(0, 1)
FLOW = st.one_of(st.just(0.0), st.floats(-0.5, 0.5), st.floats(-1e-9, 1e-9), st.floats(-1e-4, 1e-4))


@SMOOTH
@given(SIZE, FLOW)
def test_the_drop_is_the_same_both_ways(make: Make, size: float, flow: float) -> None:
    """Turning the flow round turns the drop round, and leaves its slope."""
    law = make(column(size))
    (drop, slope), (back, slope_back) = law.head_drop(column(flow)), law.head_drop(column(-flow))
    assert back == -drop
    assert slope_back == slope


@ALL
@given(SIZE, FLOW, FLOW)
def test_more_flow_never_costs_less(make: Make, size: float, one: float, other: float) -> None:
    """The drop never falls as the flow rises, and the slope says so."""
    low, high = sorted((one, other))
    law = make(column(size))
    (less, slope), (more, _) = law.head_drop(column(low)), law.head_drop(column(high))
    assert more >= less - 1e-12 * np.abs(less)
    assert slope >= 0


@pytest.mark.parametrize("make", PLAIN)
@given(SIZE, st.floats(1e-9, 0.5), st.sampled_from([-1, 1]))
def test_the_slope_is_the_slope_of_the_drop(make: Make, size: float, amount: float, way: int) -> None:
    """Against a central difference, forward and backward."""
    law, step = make(column(size)), 1e-5 * amount
    before, after = (law.head_drop(column(way * amount + side * step))[0][0, 0] for side in (-1, 1))
    slope = law.head_drop(column(way * amount))[1][0, 0]
    assert (after - before) / (2 * step) == pytest.approx(slope, rel=1e-4, abs=1e-300)


@pytest.mark.parametrize("make", CORNERED)
@given(SIZE, st.floats(1e-6, 0.5), st.sampled_from([-1, 1]))
def test_away_from_corners_the_slope_is_that_of_the_drop(
    make: Make, size: float, amount: float, way: int
) -> None:
    """Against a central difference."""
    law, step = make(column(size)), 1e-5 * amount
    flows = column([[way * amount - step], [way * amount], [way * amount + step]])
    many = law.rows(np.zeros(3, dtype=np.intp))
    drop, slope = many.head_drop(flows)
    if slope.max() < 1.001 * slope.min() + 1e-3:  # no corner between
        assert (drop[2, 0] - drop[0, 0]) / (2 * step) == pytest.approx(slope[1, 0], rel=1e-3, abs=1e-3)


@ALL
@given(st.lists(st.tuples(SIZE, FLOW), min_size=1, max_size=6))
def test_a_batch_is_its_plants_one_by_one(make: Make, plants: list[tuple[float, float]]) -> None:
    """And so are some of its rows, whether picked or made alone."""
    size, flow = (np.array(values, dtype=float)[:, None] for values in zip(*plants, strict=True))
    law = make(size)
    drop, slope = law.head_drop(flow)
    for i in range(len(plants)):
        row = np.array([i])
        for alone in (make(size[row]), law.rows(row)):
            assert alone.count == law.count == 1
            drop_alone, slope_alone = alone.head_drop(flow[row])
            assert drop_alone == pytest.approx(drop[row], rel=1e-13, abs=0)
            assert slope_alone == pytest.approx(slope[row], rel=1e-13, abs=0)
            assert (alone.shut(flow[row]) == law.shut(flow)[row]).all()


@ALL
@pytest.mark.parametrize("flow", [0.0, 1e-12, 1e-300, 5e-324, 1e3])
def test_the_law_stays_finite_at_the_smallest_and_largest_flows(make: Make, flow: float) -> None:
    """No overflow, no 0/0, no warning, whichever way it flows."""
    sizes = np.linspace(0, 1, 11)[:, None]
    for way in (-1, 1):
        drop, slope = make(sizes).head_drop(np.full(sizes.shape, way * flow))
        assert np.isfinite(drop).all() and np.isfinite(slope).all()


@ALL
def test_one_row_of_parameters_serves_every_plant(make: Make) -> None:
    """A shared row is kept when rows are picked."""
    law, flow = make(column(0.7)), np.array([[0.01], [-0.02], [0.03]])
    assert law.head_drop(flow)[0].shape == law.shut(flow).shape == (3, 1)
    some = law.rows(np.array([2, 0]))
    assert (some.head_drop(flow[[2, 0]])[0] == law.head_drop(flow)[0][[2, 0]]).all()
