"""All states of ways side by side, against what can be reckoned by hand."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from loadfirst.physics.law import Array
from loadfirst.physics.let_go import let_go, shared
from loadfirst.physics.ways import Way, meetings, stable

FLOW = np.linspace(0.0, 1.2, 200)
SPAN = (-1e3, 1e3)

roots = st.lists(st.floats(0.02, 0.98), min_size=1, max_size=3)


def load(flow: Array) -> Array:
    """A lift of 10 m and a quadratic resistance."""
    return 10 + 5 * flow**2


@given(roots)
def test_every_crossing_of_one_way_is_found(at: list[float]) -> None:
    """A head built to meet the load at up to three known flows."""
    at = sorted(at)
    assume(len(at) == 1 or np.diff(at).min() > 0.02)

    def head(flow: Array) -> Array:
        return load(flow) + 500 * np.prod([root - flow for root in at], axis=0)

    way = Way.tabled(head, FLOW, SPAN, 50.0)
    found = meetings([way], FLOW, load(FLOW), 50.0)
    assert found[:, 0] == pytest.approx(at, abs=2e-3)


SHUT_OFF, RISE, FALL = 10.0, 8.0, 10.0
"""H = 10 + 8 q - 10 q²: its peak of 11.6 m is at 0.4, and it is back at 10 m at 0.8."""


def parabola(flow: Array) -> Array:
    """Of a pump with a check valve: below no flow it holds any head."""
    return np.where(flow < 0, SHUT_OFF - 1e6 * flow, SHUT_OFF + RISE * flow - FALL * flow**2)


def pair() -> list[Way]:
    """Two like pumps."""
    flow = np.concatenate([np.linspace(-0.01, -1e-6, 20), np.linspace(0, 1.5, 300)])
    return [Way.tabled(parabola, flow, SPAN, 12.0)] * 2


def test_two_like_pumps_share_a_load_in_the_ways_that_a_hand_finds() -> None:
    """Both alike: H(q) = L(2q). Unlike: H(a) = H(b) only where a + b = 0.8. One alone: H(q) = L(q).

    With L = 10.2 + Q²: alike 8 q - 14 q² = 0.2, so q = 0.026 and 0.545; unlike at Q = 0.8
    L = 10.84, 10 q² - 8 q + 0.84 = 0, q = 0.124 and 0.676; alone 8 q - 11 q² = 0.2, q = 0.026, 0.701.
    """
    flow = np.concatenate([[-1e-3, -1e-7], np.linspace(1e-7, 3, 200)])
    asked = np.where(flow < 0, 10.2 + 1e6 * flow, 10.2 + flow**2)
    found = meetings(pair(), flow, asked, 12.0)
    held = [[0.0, 0.0]]
    alone = [[0.02592, 0], [0, 0.02592], [0.70136, 0], [0, 0.70136]]
    alike = [[0.02621, 0.02621], [0.54522, 0.54522]]
    unlike = [[0.12441, 0.67559], [0.67559, 0.12441]]
    wanted = np.array(sorted(held + alone + alike + unlike, key=sum))
    assert len(found) == len(wanted)
    for one in wanted:
        assert np.abs(found - one).max(axis=1).min() < 1e-3, one
    rise = np.where(found < -1e-9, -1e6, np.where(found > 1e-6, RISE - 2 * FALL * found, -1e6))
    lasts = stable(rise, np.where(found.sum(axis=1) < 1e-6, 1e6, 2 * found.sum(axis=1)))
    kept = {tuple(np.round(np.abs(one), 2)) for one in found[lasts]}
    assert kept == {(0.0, 0.0), (0.7, 0.0), (0.0, 0.7), (0.55, 0.55)}


def test_what_is_let_go_runs_to_the_state_on_its_side() -> None:
    """Both started far out stay together; a second that stands still cannot come in."""
    ways, flow = pair(), np.concatenate([[-1e-3, -1e-6], np.linspace(1e-6, 3, 400)])
    asked = Way(flow, np.where(flow < 0, 10.2 + 1e6 * flow, 10.2 + flow**2))
    for start, end in (
        ((1.0, 1.0), (0.545, 0.545)),
        ((0.7, 0.0), (0.701, 0.0)),
        ((0.0, 0.7), (0.0, 0.701)),
        ((0.01, 0.01), (0.0, 0.0)),
        ((0.7, 0.3), (0.545, 0.545)),
    ):
        assert let_go(ways, asked, start, (12.0, 1.0)) == pytest.approx(end, abs=2e-3), start


def test_a_shared_flow_is_followed() -> None:
    """Downward from much the pumps share alike as far as the peak, 0.4 each; then one takes it all."""
    found = shared(pair(), [1.2, 1.0, 0.9, 0.75, 0.5], 0.6, (12.0, 1.0), 1e-4)
    assert found[:3] == pytest.approx([0.6, 0.5, 0.45], abs=1e-3)
    assert found[3:] == pytest.approx([0.75, 0.5], abs=1e-3)


@pytest.mark.parametrize(("rise", "load_rise", "lasts"), [(-1, 0, True), (1, 2, True), (2, 1, False)])
def test_one_way_lasts_where_the_load_rises_more_steeply(rise: float, load_rise: float, lasts: bool) -> None:
    """The rule of the slopes (Pfleiderer, from memory)."""
    assert stable(np.array([[rise]], dtype=float), np.array([load_rise], dtype=float)).tolist() == [lasts]


def test_two_ways_on_their_rising_stretches_do_not_last_however_steep_the_load() -> None:
    """Their sum would; their difference grows."""
    assert not stable(np.array([[0.1, 0.1]]), np.array([1e6]))[0]
    assert stable(np.array([[-0.2, 0.1]]), np.array([1.0]))[0]
