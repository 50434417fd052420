"""A branch to a second user: it takes its share, draws the pressure down, and may give something back."""

from __future__ import annotations

import pytest
from tests.rig import rig
from tests.states import kinds, stack_of

from loadfirst.errors import InputError
from loadfirst.plant.state import true_state

HIGH = {"surface_m": 40.0, "bottom_m": 38.0, "top_m": 42.0}
SLOW = {"frequency_hz": 15.0}


def branch(**keys: object) -> dict[str, object]:
    """A branch that is fitted."""
    return {"fitted": True} | keys


def test_a_second_user_takes_its_share_and_the_gauge_falls() -> None:
    """The pump is the same; the load is lighter, so more flows in all and less pressure is asked."""
    alone, both = true_state(rig()), true_state(rig(branch=branch()))
    assert both.aside["branch-line"] > 0
    assert both.station.flow == pytest.approx(both.flow + both.aside["branch-line"], rel=1e-9)
    assert both.station.flow > alone.station.flow and both.flow < alone.flow
    assert both.nodes["discharge"].pressure < alone.nodes["discharge"].pressure
    assert kinds(both) == []


def test_the_stack_follows_the_delivery_with_each_section_at_its_own_flow() -> None:
    """Suction line and check valve lose at the station's flow, valve and pipe at what is delivered."""
    alone, both = true_state(rig()), true_state(rig(branch=branch()))
    assert sum(stack_of(both).values()) == pytest.approx(both.station.head, rel=1e-9)
    assert list(stack_of(both)) == list(stack_of(alone))
    more = (both.station.flow / alone.station.flow) ** 2
    less = (both.flow / alone.flow) ** 2
    assert stack_of(both)["check-valve"] == pytest.approx(stack_of(alone)["check-valve"] * more, rel=1e-9)
    assert stack_of(both)["valve"] == pytest.approx(stack_of(alone)["valve"] * less, rel=1e-9)


def test_a_branch_whose_valve_is_shut_changes_nothing() -> None:
    """It stands there full, and nothing more is to be seen of it."""
    alone, both = true_state(rig()), true_state(rig(branch=branch(opening=0.0)))
    assert both.aside == {"branch-line": 0.0}
    assert both.flow == pytest.approx(alone.flow, rel=1e-6)
    assert kinds(both) == kinds(alone)


def test_nothing_comes_back_from_an_end_that_pours_freely() -> None:
    """The first user's open valve draws the pressure below the second's height: it gets nothing."""
    state = true_state(rig(branch=branch(end_m=40.0), valve={"opening": 1.0}))
    assert state.aside == {"branch-line": 0.0}
    note = next(note for note in state.notes if note.kind == "not-supplied")
    assert note.where == "branch" and 0 < note.facts["missing"] < 40.0


def test_liquid_comes_back_from_under_a_surface_that_stands_higher() -> None:
    """A second vessel that is not only a user: it feeds the first."""
    state = true_state(rig(branch=branch(end_m=40.0, pours=False), valve={"opening": 1.0}))
    assert state.aside["branch-line"] < 0
    assert state.flow > state.station.flow
    assert ("backflow", "branch") in kinds(state)


def test_a_lower_second_user_empties_a_line_that_pours_from_above() -> None:
    """Pump too slow for the high end: nothing is delivered, nothing comes back; the branch has it all."""
    pouring = HIGH | {"outlet_m": 55.0}
    state = true_state(rig(branch=branch(), delivery=pouring))
    assert state.flow == 0.0 and state.aside["branch-line"] == pytest.approx(state.station.flow, rel=1e-6)
    assert ("not-reached", "pipe-end") in kinds(state)
    blocks = stack_of(state)
    missing = next(note.facts["missing"] for note in state.notes if note.kind == "not-reached")
    assert blocks["not-reached"] == pytest.approx(-missing, rel=1e-12)
    assert sum(blocks.values()) == pytest.approx(state.station.head, rel=1e-9)


@pytest.mark.parametrize("fitted", [True, False])
def test_a_pump_that_is_too_slow_for_both_leaves_the_line_full_up_to_the_lower_end(fitted: bool) -> None:
    """Behind a tight check valve the gauge shows the lower end's height."""
    state = true_state(
        rig(
            branch=branch(end_m=20.0),
            delivery=HIGH | {"outlet_m": 41.0},
            drive=SLOW,
            check={"fitted": fitted},
        )
    )
    assert state.station.flow == state.flow == 0.0
    if fitted:
        assert state.nodes["after-valve"].head == pytest.approx(20.0, abs=1e-4)
        assert stack_of(state)["check-valve"] == pytest.approx(state.station.head - 18.0, rel=1e-4)
    assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-6)


def test_with_the_line_off_the_branch_is_off_too() -> None:
    """It leaves from the line that is gone."""
    assert true_state(rig(branch=branch(), discharge={"attached": False})).aside == {}


def test_a_branch_rougher_than_its_bore_allows_is_refused() -> None:
    """As any line."""
    with pytest.raises(InputError, match=r"branch.roughness_mm is 4.0, but must be at or below 1/20"):
        rig(branch=branch(roughness_mm=4.0))
