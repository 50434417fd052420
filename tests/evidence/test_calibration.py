"""What is given 80 to 90 % is true 80 to 90 % of the time."""

from __future__ import annotations

from math import comb

import numpy as np
import pytest
from msgspec.structs import replace
from tests.evidence.looks import Shown, plant, predictions, shown

from loadfirst.evidence.hypothesis import priors
from loadfirst.evidence.seen import SWING, SWINGING
from loadfirst.evidence.weigh import Posterior, row, weigh
from loadfirst.physics.law import Array, Flags
from loadfirst.plant.automatic import settled
from loadfirst.plant.state import true_states

pytestmark = pytest.mark.native  # reads files

CASES = 2000
UNLIKELY = 1e-4
"""A bin farther out than this on either side is wrong."""
EDGES = (0.001, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0)
TWO_READINGS = ("gauge-discharge", "flow-meter")


def drawn(name: str, count: int, seed: int) -> tuple[Array, list[Shown], list[Shown]]:
    """True hypotheses by number, drawn as likely as they are beforehand, with both days' readings.

    Sizes are even over the room; instruments err as `instruments` has it, rectangularly; pointers that
    swing are read as a person would. The few plants that come to no rest are left out.
    """
    chance = np.random.default_rng(seed)
    found = predictions(name)
    truth = chance.choice(len(found.hypotheses), size=count, p=priors(found.hypotheses))
    plants = [
        found.hypotheses[number].at(found.plant, [float(share)])
        for number, share in zip(truth, chance.random(count), strict=True)
    ]
    states = true_states(settled(plants))
    days = shown([plant(name), *plants], range(1, count + 1))
    for number, state, (_, today) in zip(truth, states, days, strict=True):
        if state.hunting or found.hypotheses[number].hunts():
            swing(today, chance)
    rest = [at for at, state in enumerate(states) if state.converged]
    return truth[rest], [days[at][0] for at in rest], [days[at][1] for at in rest]


def swing(today: Shown, chance: np.random.Generator) -> None:
    """Read swinging pointers as a person would."""
    for id, reading in today.items():
        if reading.quantity in SWINGING and reading.value is not None:
            value = reading.value + SWING * (reading.high - reading.low) * chance.standard_normal()
            today[id] = replace(reading, value=min(max(value, reading.low), reading.high))


def bounds(count: int, chance: float) -> tuple[float, float]:
    """Shares of `count` trials beyond which less than `UNLIKELY` lies, exactly binomial."""
    each = [comb(count, k) * chance**k * (1 - chance) ** (count - k) for k in range(min(count, 1000) + 1)]
    below = np.cumsum(each)
    return float(np.searchsorted(below, UNLIKELY)) / count, float(
        np.searchsorted(below, 1 - UNLIKELY)
    ) / count


def by_group(posterior: Posterior, truth: Array) -> tuple[Array, Flags]:
    """Probability of each group, and whether it is the true one."""
    names = [one.group for one in posterior.predictions.hypotheses]
    groups = list(posterior.groups)
    given = np.stack([posterior.groups[group] for group in groups], axis=1)
    return given, np.array([[names[number] == group for group in groups] for number in truth])


def holds(title: str, given: Array, true: Flags) -> bool:
    """Print the table; whether every bin is within its bounds."""
    print(f"\n{title}\n  given          times   mean   true   bounds")
    sound = True
    for low, high in zip(EDGES, EDGES[1:], strict=False):
        here = (given >= low) & ((given < high) | (high == 1))
        if not here.any():
            continue
        count, mean, share = int(here.sum()), float(given[here].mean()), float(true[here].mean())
        least, most = bounds(count, mean) if count < 1000 else wide(count, mean)
        print(f"  {low:5.3f} to {high:3.1f} {count:8} {mean:6.3f} {share:6.3f}   {least:.3f} to {most:.3f}")
        sound &= least <= share <= most
    return sound


def wide(count: int, chance: float) -> tuple[float, float]:
    """The same for many trials, by the normal distribution: 3.72 standard deviations."""
    spread = 3.72 * (chance * (1 - chance) / count) ** 0.5
    return chance - spread - 1 / count, chance + spread + 1 / count


def test_probabilities_are_as_often_true_as_they_say() -> None:
    """2000 cases, with all readings of both days, and with two readings of today alone; causes and groups."""
    truth, earlier, later = drawn("rinse-transfer", CASES, 1)
    found = predictions("rinse-transfer")
    yesterday = np.concatenate([row(found, one) for one in earlier])
    today = np.concatenate([row(found, one) for one in later])
    few = np.where(np.isin(found.instruments, TWO_READINGS), today, np.nan)
    sound = []
    for title, posterior in (
        ("all readings of both days", weigh(found, today, yesterday)),
        ("two readings of today", weigh(found, few)),
    ):
        true = np.arange(len(found.hypotheses)) == truth[:, None]
        sound.append(holds(f"{title}: causes", posterior.probability, true))
        sound.append(holds(f"{title}: groups", *by_group(posterior, truth)))
    assert len(truth) > 0.99 * CASES
    assert all(sound)


def test_a_posterior_that_is_too_sure_would_be_found_out() -> None:
    """The same table refuses probabilities that were squared and made to add up again."""
    truth, earlier, later = drawn("rinse-transfer", 400, 2)
    found = predictions("rinse-transfer")
    posterior = weigh(
        found,
        np.concatenate([row(found, one) for one in later]),
        np.concatenate([row(found, one) for one in earlier]),
    )
    sharp = posterior.probability**2
    sharp /= sharp.sum(axis=1, keepdims=True)
    assert not holds("too sure", sharp, np.arange(len(found.hypotheses)) == truth[:, None])
