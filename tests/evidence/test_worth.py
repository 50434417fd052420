"""What a further check is expected to tell, against chance played out, and in order."""

from __future__ import annotations

import numpy as np
import pytest
from tests.evidence.looks import both, only, predictions

from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.errors import InputError
from loadfirst.evidence.cloud import clouds
from loadfirst.evidence.likelihood import expected, shown_chance
from loadfirst.evidence.weigh import Posterior, row, weigh
from loadfirst.evidence.worth import information, worth
from loadfirst.physics.law import Array

PLAYED = 5_000


def doubtful(*ids: str, seed: int = 4) -> Posterior:
    """A suction that is half blocked, of which some instruments have been read on both days."""
    found = predictions("rinse-transfer")
    days = both("rinse-transfer", ("strainer-blocked", 0.6), seed=seed)
    before, after = (row(found, only(day, *ids)) for day in days)
    return weigh(found, after, before)


def played(posterior: Posterior, id: str) -> tuple[float, float]:
    """Mean information of readings drawn as they may come, and its standard error. [bit]"""
    chance = np.random.default_rng(3)
    predictions = posterior.predictions
    number = predictions.instruments.index(id)
    scale, parts = predictions.scales[number], clouds(posterior)
    means = [tuple(x[0] for x in expected(part.seen, posterior.known, number)) for part in parts]
    truth = chance.choice(len(parts), size=PLAYED, p=posterior.probability[0])
    shown = np.empty(PLAYED)
    for which in np.unique(truth):
        here, (mean, spread) = truth == which, means[which]
        point = chance.choice(len(mean), size=int(here.sum()), p=parts[which].weight)
        shown[here] = mean[point] + spread[point] * chance.standard_normal(len(point))
    shown = np.where(shown >= scale.high, np.inf, np.where(shown <= scale.low, -np.inf, shown))
    told = np.stack(
        [density(shown, *mean, part.weight, scale) for mean, part in zip(means, parts, strict=True)]
    )
    bits = np.log2(told[truth, np.arange(PLAYED)] / (posterior.probability[0] @ told))
    return float(bits.mean()), float(bits.std() / PLAYED**0.5)


def density(shown: Array, mean: Array, spread: Array, weight: Array, scale: object) -> Array:
    """Of readings under one hypothesis; the chance of a stop."""
    kept = weight > 1e-6
    each = shown_chance(shown[:, None], mean[kept], spread[kept], scale)  # type: ignore[arg-type]
    return np.asarray(np.exp(each) @ (weight[kept] / weight[kept].sum()))


@pytest.mark.parametrize("id", ["gauge-discharge", "flow-meter", "ammeter-1"])
def test_a_readings_worth_is_what_chance_played_out_gives(id: str) -> None:
    """Within four standard errors of five thousand readings and the width of a stretch of the scale."""
    posterior = doubtful("gauge-suction")
    told = worth(posterior, [id])[0]
    mean, error = played(posterior, id)
    print(id, told, mean, error)
    assert told.cause == pytest.approx(mean, abs=4 * error + 0.01)
    assert 0 < told.group < told.cause


def test_an_observations_worth_by_hand() -> None:
    """Entropy of what it says, less that which its own chances leave."""
    posterior = doubtful("gauge-suction", "flow-meter")
    one = OBSERVATIONS["strainer-basket"]
    ids = [each.id for each in posterior.predictions.hypotheses]
    there = float(posterior.probability[0, ids.index("strainer-blocked")])
    says = there * one.hit + (1 - there) * one.false_alarm
    left = there * binary(one.hit) + (1 - there) * binary(one.false_alarm)
    assert worth(posterior, ["strainer-basket"])[0].cause == pytest.approx(binary(says) - left, abs=1e-9)


def binary(chance: float) -> float:
    """Entropy of yes or no. [bit]"""
    return float(-chance * np.log2(chance) - (1 - chance) * np.log2(1 - chance))


def test_checks_come_in_the_order_of_what_they_tell_about_the_cause() -> None:
    """All that have not been made; none tells more than what is in doubt."""
    posterior = doubtful("gauge-suction", "flow-meter")
    found = worth(posterior)
    assert [one.cause for one in found] == sorted((one.cause for one in found), reverse=True)
    assert not {"gauge-suction", "flow-meter"} & {one.check for one in found}
    assert {"gauge-discharge", "ammeter-1", "strainer-basket"} <= {one.check for one in found}
    given = posterior.probability[0]
    doubt = -(given * np.log2(np.maximum(given, 1e-300))).sum()
    assert all(0 <= one.group <= one.cause + 1e-9 and one.cause <= doubt for one in found)


def test_what_was_observed_is_not_offered_again() -> None:
    """But may be asked for; what is no check is refused."""
    found = predictions("rinse-transfer")
    posterior = weigh(found, row(found, {}), observed={"strainer-basket": True})
    assert "strainer-basket" not in {one.check for one in worth(posterior)}
    assert worth(posterior, ["strainer-basket"])[0].cause > 0
    with pytest.raises(InputError, match="check is 'tea-leaves', but must be the id"):
        worth(posterior, ["tea-leaves"])


def test_information_of_plain_tables() -> None:
    """A fair coin seen clearly is one bit; one that says nothing none; groups know less than causes."""
    half = np.array([0.5, 0.5])
    assert information(half, np.eye(2)) == pytest.approx(1)
    assert information(half, np.full((2, 3), 1 / 3)) == pytest.approx(0)
    assert information(np.array([1.0, 0.0]), np.eye(2)) == 0
