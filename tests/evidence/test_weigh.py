"""What the weighing says of plain cases, and by which rules."""

from __future__ import annotations

import numpy as np
import pytest
from tests.evidence.looks import both, only, plant, predictions

from loadfirst.causes.catalogue import CAUSES, cause
from loadfirst.causes.observations import OBSERVATIONS
from loadfirst.errors import InputError
from loadfirst.evidence.hypothesis import Hypothesis, priors
from loadfirst.evidence.predict import predict
from loadfirst.evidence.suspects import suspects, unexplained
from loadfirst.evidence.weigh import Posterior, row, weigh
from loadfirst.instruments.instrument import Reading

SEED = 7
CLEAR = (
    ("rinse-transfer", "strainer-blocked", None, "suction-side"),
    ("rinse-transfer", "valve-opened", None, "discharge-side"),
    ("rinse-transfer", "worn", 15.0, "machine"),
    ("rinse-transfer", "supply-slow", None, "drive"),
    ("reference", "valve-throttled", 0.6, "discharge-side"),
    ("reference", "denser-liquid", 1.3, "liquid"),
    ("reference", "ammeter-span-off", -20.0, "instrument"),
)


def weighed(name: str, *changes: tuple[str, float | None], seed: int = SEED, **more: object) -> Posterior:
    """All instruments, which err as the seed draws it, on both days."""
    found = predictions(name)
    before, after = both(name, *changes, seed=seed)
    return weigh(found, row(found, after), row(found, before), **more)  # type: ignore[arg-type]


def chance(posterior: Posterior, id: str) -> float:
    """Of one hypothesis."""
    ids = [one.id for one in posterior.predictions.hypotheses]
    return float(posterior.probability[0, ids.index(id)])


@pytest.mark.parametrize(("name", "id", "size", "group"), CLEAR)
def test_a_clear_cause_is_found(name: str, id: str, size: float | None, group: str) -> None:
    """Its group nearly for certain, itself or its twin among those that stand, its size in the interval."""
    posterior = weighed(name, (id, size))
    assert posterior.groups[group][0] > 0.9
    found = {one.hypothesis.id: one for one in suspects(posterior)}
    assert found[id].stands
    true = cause(id).usual(plant(name)) if size is None else size
    fitted = found[id].fitted[0]
    wide = fitted.high - fitted.low
    assert fitted.low - wide / 2 <= true <= fitted.high + wide / 2
    assert unexplained(found[id]) == ()


@pytest.mark.parametrize("seed", range(1, 9))
def test_where_nothing_has_changed_nothing_leads(seed: int) -> None:
    """And what cannot be told from it stands beside it: a gauge that is shut off shows the same."""
    posterior = weighed("rinse-transfer", seed=seed)
    leader = posterior.predictions.hypotheses[int(posterior.probability[0].argmax())]
    assert leader.id == "nothing"
    assert 0.3 < chance(posterior, "nothing") < 0.95
    assert 0 < chance(posterior, "gauge-shut-off") < 0.4


def test_without_any_reading_all_is_as_likely_as_beforehand() -> None:
    """A family of causes that no reading tells apart counts as one; nothing as twenty."""
    found = predictions("rinse-transfer")
    posterior = weigh(found, row(found, {}))
    assert posterior.probability[0] == pytest.approx(priors(found.hypotheses))
    families: dict[str, float] = {}
    for one, given in zip(found.hypotheses, posterior.probability[0], strict=True):
        key = one.causes[0].alike or one.causes[0].id
        families[key] = families.get(key, 0.0) + given
    unit = families["worn"]
    assert families.pop("nothing") == pytest.approx(20 * unit)
    assert all(each == pytest.approx(unit) for each in families.values())


def test_weights_say_what_is_likelier_beforehand() -> None:
    """In proportion, and 0 rules out; a weight below 0 is refused, and nothing that is left too."""
    found = predictions("rinse-transfer")
    plain = weigh(found, row(found, {}))
    tilted = weigh(found, row(found, {}), weights={"worn": 4.0, "burst": 0.0})
    ratio = chance(plain, "worn") / chance(plain, "nothing")
    assert chance(tilted, "worn") / chance(tilted, "nothing") == pytest.approx(4 * ratio)
    assert chance(tilted, "burst") == 0
    with pytest.raises(InputError, match="weights.worn is -1"):
        weigh(found, row(found, {}), weights={"worn": -1.0})
    with pytest.raises(InputError, match="above 0 for some cause"):
        weigh(found, row(found, {}), weights=dict.fromkeys([one.id for one in CAUSES], 0.0))


@pytest.mark.parametrize("positive", [True, False])
def test_an_observation_counts_as_bayes_rule_has_it(positive: bool) -> None:
    """By hand: odds of the strainer against the suction's pressure times the ratio of hit and false alarm."""
    before = weighed("rinse-transfer", ("strainer-blocked", None))
    after = weighed("rinse-transfer", ("strainer-blocked", None), observed={"strainer-basket": positive})
    hit, alarm = OBSERVATIONS["strainer-basket"].hit, OBSERVATIONS["strainer-basket"].false_alarm
    factor = hit / alarm if positive else (1 - hit) / (1 - alarm)
    odds = [chance(one, "strainer-blocked") / chance(one, "supply-pressure-lower") for one in (before, after)]
    assert odds[1] == pytest.approx(odds[0] * factor, rel=1e-9)
    with pytest.raises(InputError, match="the id of an observation"):
        weighed("rinse-transfer", observed={"crystal-ball": True})


def test_a_replaced_gauge_tells_less() -> None:
    """It shares no lasting error with yesterday's: wider interval of the size, less sure of the cause."""
    found = predictions("reference")
    days = [only(day, "gauge-discharge", "flow-meter") for day in both("reference", ("worn", 10.0))]
    before, after = (row(found, day) for day in days)
    same = weigh(found, after, before)
    other = weigh(found, after, before, fresh=("gauge-discharge",))
    wide = [next(one for one in suspects(each) if one.hypothesis.id == "worn") for each in (same, other)]
    widths = [one.fitted[0].high - one.fitted[0].low for one in wide]
    assert widths[1] > 1.2 * widths[0]
    assert entropy(other) > entropy(same)


def entropy(posterior: Posterior) -> float:
    """[bit]"""
    given = posterior.probability[0]
    return float(-(given * np.log2(np.maximum(given, 1e-300))).sum())


def test_yesterdays_readings_take_the_lasting_error_out() -> None:
    """Today's alone leave more in doubt, and a dial that reads high on both days accuses nobody."""
    found = predictions("reference")
    before, after = both("reference", ("worn", 10.0), seed=SEED)
    assert entropy(weigh(found, row(found, after))) > entropy(
        weigh(found, row(found, after), row(found, before))
    )
    blank = both("reference")[0]
    high = {id: shifted(reading, 0.7) for id, reading in blank.items()}
    alone, against = weigh(found, row(found, high)), weigh(found, row(found, high), row(found, high))
    assert chance(against, "nothing") > max(0.5, chance(alone, "nothing"))


def shifted(reading: Reading, share: float) -> float | None:
    """What an instrument shows that errs by a share of its limit."""
    return None if reading.value is None else reading.value + share * (reading.accuracy or 0.0)


def test_a_gauge_that_is_shut_off_keeps_what_it_showed() -> None:
    """The flow fell and every other dial moved, the discharge gauge not: only with two causes at once."""
    found = predict(plant("reference"), CAUSES, [(cause("gauge-shut-off"), cause("valve-throttled"))])
    before, after = both("reference", ("gauge-shut-off", None), ("valve-throttled", 0.5), seed=SEED)
    posterior = weigh(found, row(found, after), row(found, before))
    assert chance(posterior, "gauge-shut-off + valve-throttled") > 0.9


def test_a_pointer_on_its_stop_says_at_least_so_much() -> None:
    """Nothing is made of how far beyond; a value beyond the scale counts as the stop."""
    found = predictions("rinse-transfer")
    scale = found.scales[found.instruments.index("gauge-discharge")]
    at_end, beyond = (
        row(found, {"gauge-discharge": scale.high}),
        row(found, {"gauge-discharge": 2 * scale.high}),
    )
    assert np.array_equal(at_end, beyond, equal_nan=True)
    posterior = weigh(found, at_end)
    assert chance(posterior, "nothing") < 1e-6
    assert chance(posterior, "back-pressure-higher") > 10 * chance(posterior, "worn")


def test_many_sets_at_once_are_as_each_alone() -> None:
    """Row by row, observations too."""
    found = predictions("rinse-transfer")
    days = [both("rinse-transfer", ("worn", 8.0), seed=seed) for seed in range(1, 6)]
    today = np.concatenate([row(found, after) for _, after in days])
    yesterday = np.concatenate([row(found, before) for before, _ in days])
    saw = np.array([True, False, True, True, False])
    many = weigh(found, today, yesterday, {"gaps-measured": saw})
    for at in range(5):
        one = weigh(found, today[[at]], yesterday[[at]], {"gaps-measured": bool(saw[at])})
        assert many.probability[at] == pytest.approx(one.probability[0], rel=1e-12, abs=1e-300)


def test_unknown_instruments_are_refused() -> None:
    """By name, with those that there are."""
    with pytest.raises(InputError, match="gauge-nowhere is not a known key"):
        row(predictions("rinse-transfer"), {"gauge-nowhere": 1.0})


def test_a_pair_is_less_likely_than_either_and_counts_both_orders() -> None:
    """2 times 0.1 times the product of both."""
    first, second = (Hypothesis((cause(id),)) for id in ("worn", "gauge-zero-off"))
    pair = Hypothesis((*first.causes, *second.causes))
    given = priors([first, second, pair])
    assert given[2] / given[0] == pytest.approx(2 * 0.1 * 0.5)
    assert pair.group == "instrument + machine"
    assert sum(given) == pytest.approx(1)
