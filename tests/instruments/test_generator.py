"""Chance by counting: the same bits everywhere, and spread as chance should be."""

from __future__ import annotations

import math
from itertools import pairwise
from statistics import fmean, pstdev

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.instruments.faults.noise import tremble
from loadfirst.instruments.faults.own_error import REPEATABLE, own_error, repeatable
from loadfirst.instruments.generator import bits, normal, stream, uniform

MANY = 4000


def test_it_is_splitmix64() -> None:
    """Its first five numbers from the seed 1234567, as they are printed in many places (from memory)."""
    assert [bits(1234567, count) for count in range(5)] == [
        6457827717110365317, 3203168211198807973, 9817491932198370423,
        4593380528125082431, 16408922859458223821,
    ]  # fmt: skip


def test_the_same_seed_gives_these_bits_wherever_it_runs() -> None:
    """Written down once; this test runs natively and inside the browser's Python alike."""
    state = stream(7, "gauge-discharge", "noise", 0)
    assert uniform(state).hex() == "0x1.12e8a045ac8f0p-3"
    assert tremble(1.0, 7, "gauge-discharge", 0).hex() == "-0x1.a00e48df4c348p+0"
    assert own_error(7, "gauge-discharge", 0, 0).hex() == "0x1.a933bf621608ep-1"


def test_uniform_numbers_fill_their_range_evenly() -> None:
    """Mean 1/2 and deviation 1/√12, within four standard errors of so many numbers."""
    drawn = [uniform(stream(1, "any", number)) for number in range(MANY)]
    assert 0 <= min(drawn) and max(drawn) < 1
    assert fmean(drawn) == pytest.approx(0.5, abs=4 / math.sqrt(12 * MANY))
    assert pstdev(drawn) == pytest.approx(1 / math.sqrt(12), rel=4 / math.sqrt(2 * MANY))


def test_normal_numbers_have_the_shape_of_the_bell() -> None:
    """Mean 0, deviation 1, 68.3 % within one, 95.4 % within two; neighbours know nothing of each other."""
    drawn = [normal(stream(1, "any", number)) for number in range(MANY)]
    assert fmean(drawn) == pytest.approx(0, abs=4 / math.sqrt(MANY))
    assert pstdev(drawn) == pytest.approx(1, rel=4 / math.sqrt(2 * MANY))
    for reach, share in ((1, 0.683), (2, 0.954)):
        assert sum(abs(x) < reach for x in drawn) / MANY == pytest.approx(share, abs=0.03)
    assert fmean(a * b for a, b in pairwise(drawn)) == pytest.approx(0, abs=4 / math.sqrt(MANY))


def test_every_word_and_number_makes_another_stream() -> None:
    """Seed, instrument, purpose and look."""
    about = [(seed, id, look) for seed in range(9) for id in ("a", "b", "ab") for look in range(9)]
    assert len({stream(seed, id, look) for seed, id, look in about}) == len(about)


@given(st.integers(1, 999), st.integers(0, 99), st.integers(0, 10**6))
def test_a_sound_instrument_never_leaves_its_class(seed: int, serial: int, look: int) -> None:
    """Lasting and passing error together; two looks differ by no more than what does not repeat."""
    one, other = (own_error(seed, "gauge-suction", serial, each) for each in (look, look + 1))
    assert abs(one) <= 1 and abs(other) <= 1
    assert abs(one - other) <= 2 * REPEATABLE


def test_nothing_of_a_tachometers_error_lasts() -> None:
    """It is the supply's frequency that wanders: looks on two days have nothing in common."""
    days = [
        [own_error(seed, "tachometer-1", 0, look, repeatable("speed")) for seed in range(1, 1001)]
        for look in (0, 1)
    ]
    assert abs(correlation(*days)) < 0.15
    assert all(max(map(abs, day)) > 0.95 for day in days)


def test_a_replaced_instrument_shares_nothing_with_the_old_one() -> None:
    """Over many seeds the errors of two looks go together, those of two pieces do not."""
    seeds = range(1, 1001)
    here = [own_error(seed, "gauge-suction", 0, 0) for seed in seeds]
    later = [own_error(seed, "gauge-suction", 0, 1) for seed in seeds]
    another = [own_error(seed, "gauge-suction", 1, 0) for seed in seeds]
    assert correlation(here, later) > 0.9
    assert abs(correlation(here, another)) < 0.15
    assert own_error(0, "gauge-suction", 0, 0) == 0  # no seed, no error


def correlation(one: list[float], other: list[float]) -> float:
    """Of two lists whose means are about 0."""
    return fmean(a * b for a, b in zip(one, other, strict=True)) / (pstdev(one) * pstdev(other))
