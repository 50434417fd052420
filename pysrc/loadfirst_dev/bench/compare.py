"""The solver against scipy's root finder, timed in turn. Runs natively and in the browser's Python."""

from __future__ import annotations

import random
import time
from collections.abc import Callable
from dataclasses import asdict, dataclass
from statistics import median
from typing import Any

import numpy as np

from loadfirst.physics.network import Solution, solve
from loadfirst.plant import library
from loadfirst.plant.build import Built, build
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.read import resolve_data
from loadfirst_dev.bench.loop import Loop

PLANT = "rinse-transfer"
SEED = 20
BLOCK = 20  # solves between two looks at the clock: a browser's clock is coarse


@dataclass(frozen=True)
class Pair:
    """Two works done in turn: median time of each, and the median of their ratio, round by round.

    A ratio within one round suffers less from what else the machine does than one of two medians.
    """

    first: float  # [s]
    second: float  # [s]
    ratio: float


@dataclass(frozen=True)
class Compared:
    """What was found.

    Attributes
    ----------
    one : one solve of the default plant, by the network and by the root finder.
    many : `count` plants, by the root finder one after the other and as one batch.
    building : making the network of the batch, which is not in `many`. [s]
    apart : largest difference in flow, of the flow at best efficiency. [-]
    """

    one: Pair
    many: Pair
    count: int
    building: float
    apart: float


def compare(count: int = 1000, singles: int = 60, batches: int = 9) -> dict[str, Any]:
    """Time both on the default plant, and on `count` plants like it. A plain dictionary of `Compared`."""
    one = built([{}])
    loop = loops_of(one)[0]
    many = built(random_edits(count))
    loops = loops_of(many)
    single = in_turn(
        singles,
        lambda: [solved(one) for _ in range(BLOCK)],
        lambda: [loop.solve() for _ in range(BLOCK)],
    )
    batch = in_turn(batches, lambda: [each.solve() for each in loops], lambda: solved(many))
    found = Compared(
        one=Pair(single.first / BLOCK, single.second / BLOCK, single.ratio),
        many=batch,
        count=count,
        building=median(clocked(lambda: build(many.plants)) for _ in range(3)),
        apart=apart(many, loops),
    )
    return asdict(found)


def in_turn(rounds: int, first: Callable[[], object], second: Callable[[], object]) -> Pair:
    """Both works, `rounds` times after two that do not count."""
    taken = [(clocked(first), clocked(second)) for _ in range(rounds + 2)][2:]
    firsts, seconds = zip(*taken, strict=True)
    return Pair(median(firsts), median(seconds), median(a / b for a, b in taken))


def clocked(work: Callable[[], object]) -> float:
    """How long a work takes. [s]"""
    started = time.perf_counter()
    work()
    return time.perf_counter() - started


def random_edits(count: int) -> list[dict[str, float]]:
    """Valve openings, levels and frequencies such that the pump delivers; the same at every run."""
    draw = random.Random(SEED).uniform
    return [
        {
            "valve.opening": draw(0.2, 1),
            "supply.surface_m": draw(0.5, 4),
            "delivery.surface_m": draw(12, 16),
            "drive.frequency_hz": draw(44, 55),
        }
        for _ in range(count)
    ]


def built(edits: list[dict[str, float]]) -> Built:
    """The default plant with each of these changes."""
    data = library.data("plants", PLANT)
    return build([resolve_data(apply_edits(data, each)) for each in edits])


def loops_of(plants: Built) -> list[Loop]:
    """The same plants for the root finder."""
    pairs = zip(plants.plants, plants.liquids, strict=True)
    return [Loop(one, liquid.density, liquid.kinematic) for one, liquid in pairs]


def solved(plants: Built) -> Solution:
    """One balance of all these plants."""
    return solve(plants.network, plants.head_scale, plants.flow_scale)


def apart(plants: Built, loops: list[Loop]) -> float:
    """Largest difference of the two answers. [-]"""
    flow = solved(plants).flow["pump-1"]
    return float(np.max(np.abs(flow - [loop.solve() for loop in loops]) / plants.flow_scale))
