"""The sums over sizes against integrals for which the plant is solved at every point."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import pytest
from scipy.stats import multivariate_normal
from tests.evidence.looks import both, plant

from loadfirst.causes.catalogue import cause
from loadfirst.evidence.hypothesis import Hypothesis, priors
from loadfirst.evidence.predict import predict
from loadfirst.evidence.seen import Eye, Seen
from loadfirst.evidence.weigh import row, weigh
from loadfirst.physics.law import Array

pytestmark = pytest.mark.native  # reads files

IDS = ("supply-level-lower", "strainer-blocked", "worn", "hand-valve-half-shut", "thicker-liquid",
       "gauge-span-off", "air-leak", "nothing")  # fmt: skip
POINTS = 121
"""Sizes of a round: first of the whole room, then of the part in which nearly all of the chance lies."""
READ = ("gauge-discharge", "gauge-suction", "flow-meter", "ammeter-1")


@lru_cache(maxsize=1)
def eye() -> Eye:
    """Looks at the plant of all these tests."""
    return Eye(plant("rinse-transfer"))


@lru_cache(maxsize=16)
def whole(one: Hypothesis) -> Seen:
    """The plant at sizes of the whole room, for all tests."""
    return seen(one, np.linspace(0, 1, POINTS))


def seen(one: Hypothesis, shares: Array) -> Seen:
    """The plant solved at each size."""
    plants = [one.at(eye().plant, [share]) for share in shares.tolist()]
    return eye().look(plants, [one.hunts()] * len(plants))


def log_chance(seen: Seen, before: Seen, today: Array, yesterday: Array) -> Array:
    """Of both days' readings, each instrument's as two normal numbers that share the lasting error."""
    found = np.zeros(len(seen.value))
    for number in np.flatnonzero(~np.isnan(today)):
        first, shared = before.value[0, number], before.lasting[0, number]
        for at in range(len(found)):
            lasting = shared, seen.lasting[at, number]
            errors = np.outer(lasting, lasting)
            errors += np.diag([before.passing[0, number], seen.passing[at, number]]) ** 2
            mean = [first, seen.value[at, number]]
            found[at] += multivariate_normal.logpdf([yesterday[number], today[number]], mean, errors)
    return found


def integral(one: Hypothesis, today: Array, yesterday: Array) -> float:
    """Logarithm of the chance of the readings, by solving the plant at each size."""
    before = eye().look([eye().plant], [False])
    if not one.sizes:
        return float(log_chance(seen(one, np.ones(1)), before, today, yesterday)[0])
    shares = np.linspace(0, 1, POINTS)
    found = log_chance(whole(one), before, today, yesterday)
    worth = np.flatnonzero(found > found.max() - 30)
    shares = np.linspace(shares[max(worth[0] - 1, 0)], shares[min(worth[-1] + 1, POINTS - 1)], POINTS)
    found = log_chance(seen(one, shares), before, today, yesterday)
    return float(found.max() + np.log(np.trapezoid(np.exp(found - found.max()), shares)))


@pytest.mark.parametrize(
    ("happened", "seed"),
    [(("strainer-blocked", 0.5), 3), (("worn", 2.0), 5), (("hand-valve-half-shut", 1.5), 8)],
)
def test_the_posterior_is_that_of_a_brute_integral(happened: tuple[str, float], seed: int) -> None:
    """To 1e-3, of causes that the readings leave in doubt."""
    found = predict(plant("rinse-transfer"), [cause(id) for id in IDS])
    before, after = both("rinse-transfer", happened, seed=seed)
    days = [row(found, {id: day[id] for id in READ}) for day in (before, after)]
    quick = weigh(found, days[1], days[0]).probability[0]
    chances = np.array([integral(one, days[1][0], days[0][0]) for one in found.hypotheses])
    brute = np.array(priors(found.hypotheses)) * np.exp(chances - chances.max())
    brute /= brute.sum()
    print(
        {one.id: (round(a, 5), round(b, 5)) for one, a, b in zip(found.hypotheses, quick, brute, strict=True)}
    )
    assert ((brute > 0.02) & (brute < 0.98)).sum() >= 2
    assert quick == pytest.approx(brute, abs=1e-3)
