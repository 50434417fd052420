"""How far an instrument has moved, and whether it can have done so by itself.

Held against JCGM 100:2008 (GUM), 5.1.2 and G.6.6, from memory: independent uncertainties add in
squares, and twice the standard uncertainty holds about 95 of 100 values.
"""

from __future__ import annotations

import math

import pytest

from loadfirst.days.shift import shift
from loadfirst.instruments.instrument import NONE, Chance, Instrument, Reading

LIMIT = 0.016 * 6e5  # [Pa] of the dial below
PIECES = 2000


def gauge(serial: int = 0) -> Instrument:
    """A dial of class 1.6, 0 to 6 bar."""
    return Instrument("gauge-discharge", "pressure", 0.0, 6e5, 1.6, serial=serial)


def read(truth: float, dial: Instrument | None = None, chance: Chance = NONE) -> Reading:
    """What it shows."""
    return (dial or gauge()).show(truth, chance=chance)


@pytest.mark.parametrize("noise", [0.0, 3000.0])
def test_scatter_of_one_instrument_looks_like_a_change_less_than_once_in_twenty(noise: float) -> None:
    """Over many pieces and two looks at each; and it does now and then: the limit is not too wide."""
    false = 0
    for seed in range(1, PIECES):
        looks = [gauge().show(4e5, chance=Chance(seed, look), noise=noise) for look in (0, 1)]
        false += shift(*looks, True).moved != "same"
    assert 0.02 < false / PIECES < 0.05


def test_another_instrument_in_its_place_explains_more() -> None:
    """Its lasting error is another: the full uncertainty of both counts, √2 · 2 · a/√3."""
    one = shift(read(4e5), read(4.1e5), False)
    assert one.explained == pytest.approx(2 * math.sqrt(2) * LIMIT / math.sqrt(3))
    assert one.moved == "same"
    same = shift(read(4e5), read(4.1e5), True)
    assert same.explained == pytest.approx(one.explained / 5) and same.moved == "up"


def test_off_the_scale_there_is_a_direction_and_no_number() -> None:
    """On the same stop twice nobody can say anything."""
    away = shift(read(5e5), read(7e5), True)
    assert (away.change, away.explained, away.moved) == (None, None, "up")
    assert shift(read(7e5), read(5e5), True).moved == "down"
    assert shift(read(7e5), read(8e5), True).moved is None


def test_an_instrument_that_was_not_there_has_not_moved() -> None:
    """Nor one without a reading."""
    assert shift(None, read(4e5), True).moved is None
    assert shift(gauge().show(None), read(4e5), True).moved is None
