"""Control valves: shut means shut, each turn towards it costs head, and what they refuse."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.law import SHUT, column
from loadfirst.physics.valve import CHARACTERISTICS, Valves, flow_coefficient, inherent_flow

EVERY_TRIM = pytest.mark.parametrize("characteristic", CHARACTERISTICS)


@EVERY_TRIM
def test_a_valve_at_opening_0_is_shut(characteristic: str) -> None:
    """Its flow coefficient is exactly 0, and its law one steep line both ways."""
    kv = flow_coefficient(40.0, 0.0, characteristic, 50.0)
    assert kv == 0
    drop, slope = Valves(kv).head_drop(np.array([[1e-8], [-1e-8], [0.0]]))
    assert drop.ravel().tolist() == pytest.approx([100.0, -100.0, 0.0])
    assert (slope == SHUT).all()


@EVERY_TRIM
def test_a_valve_fully_open_has_its_full_flow_coefficient(characteristic: str) -> None:
    """Whatever the trim and its rangeability."""
    assert flow_coefficient(63.0, 1.0, characteristic, 30.0) == pytest.approx(63.0, rel=1e-15)


@EVERY_TRIM
@given(opening=st.floats(0.0, 0.98), flow=st.floats(1e-4, 0.05), rangeability=st.floats(5, 100))
def test_shutting_the_valve_always_costs_head(
    characteristic: str, opening: float, flow: float, rangeability: float
) -> None:
    """The lesson in one line: a heavier load, not the pump, makes pressure."""
    wide = Valves(flow_coefficient(40.0, opening + 0.02, characteristic, rangeability))
    tight = Valves(flow_coefficient(40.0, opening, characteristic, rangeability))
    assert tight.head_drop(column(flow))[0] > wide.head_drop(column(flow))[0]


def test_the_trims_lie_as_their_names_say() -> None:
    """Half open, quick-opening passes most, linear half, equal percentage least."""
    quick, linear, equal = (
        float(inherent_flow(0.5, trim, 50.0)) for trim in ("quick-opening", "linear", "equal-percentage")
    )
    assert quick == pytest.approx(0.5**0.5)
    assert quick > linear > equal
    assert linear == pytest.approx(0.51)


def test_many_openings_are_the_openings_one_by_one() -> None:
    """Stem positions and sizes of many plants at once."""
    sizes, openings = [10.0, 20.0, 30.0], [0.0, 0.3, 1.0]
    together = flow_coefficient(sizes, openings, "linear", 50.0)
    alone = [flow_coefficient(*one, "linear", 50.0) for one in zip(sizes, openings, strict=True)]
    assert together.tolist() == [float(kv) for kv in alone]


def test_a_valve_that_passes_less_than_a_shut_one_leaks_is_shut() -> None:
    """Steeper than `SHUT` would stall the solver, for a flow that nobody can see."""
    tiny = Valves([[1e-6, 1e-4]])
    assert tiny.shut(np.zeros((1, 2))).tolist() == [[True, False]]
    assert (tiny.head_drop(np.full((1, 2), 1e-9))[1] <= SHUT).all()


def test_a_valve_holds_only_where_it_is_shut() -> None:
    """One of two is shut, at every flow; neither has a corner."""
    law = Valves([[0.0, 25.0]])
    assert law.count == 2
    assert law.shut(np.array([[0.1, 0.1], [-0.1, 0.0]])).tolist() == [[True, False], [True, False]]
    assert law.corners() is None


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"kv_open": 0.0}, "valve.kv_open is 0.0, but must be above 0 m³/h."),
        ({"opening": 1.4}, "valve.opening is 1.4, but must be from 0 (shut) to 1 (open)."),
        ({"opening": float("nan")}, "valve.opening is nan, but must be from 0 (shut) to 1 (open)."),
        ({"rangeability": 1.0}, "valve.rangeability is 1.0, but must be above 1."),
        (
            {"characteristic": "parabolic"},
            "valve.characteristic is 'parabolic', but must be one of "
            "equal-percentage, linear, quick-opening.",
        ),
    ],
)
def test_an_impossible_valve_is_refused(change: dict[str, object], says: str) -> None:
    """The error names the parameter, the value and what would do."""
    sizes = {"kv_open": 40.0, "opening": 0.5, "characteristic": "linear", "rangeability": 50.0}
    with pytest.raises(InputError) as caught:
        flow_coefficient(**{**sizes, **change})  # type: ignore[arg-type]
    assert caught.value.text == says


def test_a_negative_flow_coefficient_is_refused() -> None:
    """A law made directly checks its own parameter."""
    with pytest.raises(InputError, match="valve.kv is -1.0, but must be 0 m³/h or more"):
        Valves(-1.0)
