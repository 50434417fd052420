"""Two causes at once."""

from __future__ import annotations

import numpy as np
import pytest
from tests.evidence.looks import both, only, plant

from loadfirst.causes.catalogue import cause
from loadfirst.evidence.likelihood import bias, log_likelihood
from loadfirst.evidence.pairs import log_evidence
from loadfirst.evidence.predict import Predictions, predict
from loadfirst.evidence.suspects import suspects, unexplained
from loadfirst.evidence.weigh import row, weigh

EVERYWHERE = 401
PAIRS = [
    ("worn", "valve-throttled"), ("worn", "gauge-zero-off"), ("strainer-blocked", "flow-meter-span-off"),
    ("supply-slow", "back-pressure-higher"), ("gauge-shut-off", "valve-opened"),
]  # fmt: skip


@pytest.fixture(scope="module")
def found() -> Predictions:
    """Single causes of the reference system, and these pairs."""
    return predict(plant("reference"), pairs=[(cause(one), cause(other)) for one, other in PAIRS])


@pytest.mark.parametrize(
    "changes",
    [
        (("worn", 12.0), ("valve-throttled", 0.6)),
        (("strainer-blocked", 0.75), ("flow-meter-span-off", -20.0)),
        (("gauge-shut-off", None), ("valve-opened", 0.5)),
    ],
)
def test_two_at_once_are_found(found: Predictions, changes: tuple[tuple[str, float | None], ...]) -> None:
    """Though either alone is likelier beforehand; both sizes lie in their intervals, no reading is left."""
    before, after = both("reference", *changes, seed=5)
    first = suspects(weigh(found, row(found, after), row(found, before)))[0]
    assert first.hypothesis.id == " + ".join(id for id, _ in changes)
    assert first.probability > 0.9
    for fitted, (id, size) in zip(first.fitted, changes, strict=True):
        assert fitted.cause == id
        if size is not None:
            assert fitted.low < size < fitted.high
    assert unexplained(first) == ()


def test_a_single_cause_is_not_taken_for_two(found: Predictions) -> None:
    """The second would have to earn its place."""
    before, after = both("reference", ("worn", 12.0), seed=5)
    posterior = weigh(found, row(found, after), row(found, before))
    ids = [one.id for one in found.hypotheses]
    assert posterior.probability[0, ids.index("worn")] > 0.5
    assert sum(posterior.probability[0, ids.index(" + ".join(pair))] for pair in PAIRS) < 0.3


def test_without_the_pair_the_readings_stay_unexplained() -> None:
    """And the likeliest single cause says so."""
    found = predict(plant("reference"))
    before, after = both("reference", ("worn", 25.0), ("valve-throttled", 0.4), ("gauge-zero-off", -12.0))
    first = suspects(weigh(found, row(found, after), row(found, before)))[0]
    assert unexplained(first)


def test_the_sum_over_both_sizes_is_a_double_integral(found: Predictions) -> None:
    """Two readings of today alone leave a long ridge; a sum over both rooms whole agrees to 1 %."""
    _, after = both("reference", ("worn", 12.0), ("valve-throttled", 0.6), seed=5)
    today = row(found, only(after, "gauge-discharge", "flow-meter"))
    known = bias(found.before, found.scales, np.full_like(today, np.nan))
    surface = next(one for one in found.pairs if one.hypothesis.id == "worn + valve-throttled")
    quick = log_evidence(surface, found.scales, known, today)[0]

    share = np.linspace(0, 1, EVERYWHERE)
    fit = log_likelihood(surface.at(share, share).flat(), found.scales, known, today)
    chance = np.exp(fit.reshape(EVERYWHERE, EVERYWHERE) - quick)
    assert np.trapezoid(np.trapezoid(chance, share), share) == pytest.approx(1, abs=0.01)


def test_pairs_that_touch_the_same_keys_are_left_out() -> None:
    """A valve cannot be opened and throttled at once; nor can what cannot happen here."""
    asked = [("valve-opened", "valve-throttled"), ("worn", "user-opens"), ("worn", "supply-slow")]
    found = predict(
        plant("reference"),
        [cause(id) for id in ("worn", "supply-slow", "valve-opened", "valve-throttled")],
        [(cause(one), cause(other)) for one, other in asked],
    )  # fmt: skip
    assert [one.hypothesis.id for one in found.pairs] == ["worn + supply-slow"]
