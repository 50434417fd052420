"""How far an instrument has moved, and whether it can have done so by itself.

A class is a limit that a sound instrument never passes (EN 837-1), so two looks at it differ by no more
than the parts of both that do not repeat. Noise has no limit: twice its standard deviation holds about
95 of 100 values (JCGM 100:2008, G.6.6, from memory).
"""

from __future__ import annotations

import pytest

from loadfirst.days.shift import shift
from loadfirst.instruments.faults.own_error import REPEATABLE
from loadfirst.instruments.instrument import NONE, Chance, Instrument, Reading

LIMIT = 0.016 * 6e5  # [Pa] of the dial below
PIECES = 2000


def gauge(serial: int = 0) -> Instrument:
    """A dial of class 1.6, 0 to 6 bar."""
    return Instrument("gauge-discharge", "pressure", 0.0, 6e5, 1.6, serial=serial)


def read(truth: float, dial: Instrument | None = None, chance: Chance = NONE) -> Reading:
    """What it shows."""
    return (dial or gauge()).show(truth, chance=chance)


@pytest.mark.parametrize(("noise", "most"), [(0.0, 0.0), (3000.0, 0.05)])
def test_scatter_of_one_instrument_looks_like_a_change_hardly_ever(noise: float, most: float) -> None:
    """Over many pieces and two looks at each; and the limit is not too wide: half of it is often passed."""
    false, half = 0, 0
    for seed in range(1, PIECES):
        looks = [gauge().show(4e5, chance=Chance(seed, look), noise=noise) for look in (0, 1)]
        found = shift(*looks, True)
        false += found.moved != "same"
        assert found.change is not None and found.explained is not None
        half += abs(found.change) > found.explained / 2
    assert false / PIECES <= most
    assert half / PIECES > 0.1


def test_another_instrument_in_its_place_explains_more() -> None:
    """Its lasting error is another: the greatest errors of both count in full."""
    one = shift(read(4e5), read(4.1e5), False)
    assert one.explained == pytest.approx(2 * LIMIT)
    assert one.moved == "same"
    same = shift(read(4e5), read(4.1e5), True)
    assert same.explained == pytest.approx(one.explained * REPEATABLE) and same.moved == "up"


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
