"""The yardstick of the solver: the same physics written independently gives the same flow."""

from __future__ import annotations

import pytest

from loadfirst_dev.bench.compare import SEED, apart, built, compare, loops_of, random_edits
from loadfirst_dev.bench.loop import slip
from loadfirst_dev.bench.solves import SAME, figures


def test_the_root_finder_and_the_network_agree() -> None:
    """Over random openings, levels and frequencies; what is left is told in `solves.SAME`."""
    many = built(random_edits(40))
    assert apart(many, loops_of(many)) < SAME


def test_the_random_plants_are_the_same_at_every_run() -> None:
    """Two runs of the measurements compare the same work."""
    assert random_edits(5) == random_edits(5)
    assert len({tuple(each.values()) for each in random_edits(50)}) == 50
    assert isinstance(SEED, int)


def test_slip_follows_the_table_and_stops_at_its_ends() -> None:
    """Between the points along the logarithm of the power."""
    assert slip(0.1) == 0.05 and slip(500) == 0.008
    assert slip(3.73) == pytest.approx(0.03)
    assert 0.025 < slip(6.5) < 0.03


def test_a_comparison_becomes_three_figures() -> None:
    """Ratio of one, gain of many, and how far apart."""
    found = figures("natively", compare(count=5, singles=2, batches=2))
    assert [figure.aim.split()[:2] for figure in found] == [["at", "most"], ["at", "least"], ["at", "most"]]
    assert all(figure.value > 0 for figure in found)
