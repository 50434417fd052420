"""A control valve whose throat boils: what is behind it no longer matters."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from tests.rig import rig
from tests.states import kinds, stack_of

from loadfirst.errors import InputError
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves, load_curve, station_curve
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.state import State, true_state, true_states


def low(level: float = 0.5, recovery: float | None = 0.5, **tables: dict[str, Any]) -> ResolvedPlant:
    """A wide line down to a vessel at that level: the valve has the pump's head to itself."""
    vessel = {"surface_m": level, "bottom_m": level - 0.3, "top_m": level + 4.0}
    line = {"length_m": 5.0, "fittings_k": 1.0}
    valve = {"recovery": recovery, "opening": 0.7} | tables.pop("valve", {})
    return rig(**({"delivery": vessel, "discharge": line, "valve": valve} | tables))


def note(state: State) -> dict[str, float]:
    """The numbers of its note."""
    return next(note.facts for note in state.notes if note.kind == "choked")


def test_a_choked_valve_lets_less_through_than_its_flow_coefficient_says() -> None:
    """Less flow, more pressure before it; the block of the valve is the greater for it."""
    free, choked = true_state(low(recovery=None)), true_state(low())
    assert choked.flow < free.flow
    assert choked.nodes["discharge"].pressure > free.nodes["discharge"].pressure
    assert sum(stack_of(choked).values()) == pytest.approx(choked.station.head, rel=1e-9)
    facts = note(choked)
    assert facts["drop"] == pytest.approx(stack_of(choked)["valve"] * 998.2 * 9.80665, rel=1e-3)
    assert facts["most"] < facts["drop"]


def test_what_is_behind_a_choked_valve_does_not_matter_to_the_flow() -> None:
    """Lowering the far vessel brings nothing."""
    flows = [true_state(low(level)).flow for level in (1.0, 0.5, -3.0, -8.0)]
    assert flows[1:] == pytest.approx([flows[0]] * 3, rel=1e-9)


def test_a_valve_with_enough_pressure_behind_it_does_not_choke() -> None:
    """Then its recovery factor changes nothing."""
    free, same = true_state(low(25.0, recovery=None)), true_state(low(25.0, recovery=0.9))
    assert same.flow == free.flow and kinds(same) == []


def test_the_greater_the_recovery_of_pressure_the_sooner_it_chokes() -> None:
    """A ball valve (0.6) before a globe valve (0.9)."""
    flows = [true_state(low(recovery=recovery)).flow for recovery in (0.4, 0.6, 0.75, 1.0)]
    assert flows == sorted(flows)


def test_hot_water_chokes_a_valve_that_cold_water_does_not() -> None:
    """The higher the vapour pressure, the less drop is left."""
    plants = [
        low(3.0, recovery=0.9, liquid={"temperature_c": t}, valve={"opening": 0.5}) for t in (10.0, 90.0)
    ]
    assert ["choked" in dict(kinds(true_state(one))) for one in plants] == [False, True]


@pytest.mark.parametrize("flow", [0.5, 1.0, 1.5])
def test_the_load_asks_for_more_where_the_valve_chokes(flow: float) -> None:
    """The duty lies on the load's curve, which rises on beyond it: nothing stops a stronger pump."""
    one, state = low(), true_state(low())
    through = np.array([[flow * state.flow]])
    asked, known = load_curve(build([one]), through)
    answered = station_curve(build([one]), through)
    assert known.all()
    if flow == 1.0:
        assert asked[0, 0] == pytest.approx(state.station.head, rel=1e-6)
    else:
        assert (asked[0, 0] > answered[0, 0]) == (flow > 1)


def test_curves_of_a_choked_plant_rise_with_the_flow() -> None:
    """Two states, one curve: the greater of both."""
    one = build([low()])
    load = [head for head in curves(one, true_state(one).duty, 40).load if head is not None]
    assert len(load) > 30 and load == sorted(load)


def test_choked_and_free_plants_of_a_batch_know_nothing_of_each_other() -> None:
    """Only the rows that choke are split in two."""
    some = [low(), low(25.0, recovery=0.9), low(recovery=None), low(-3.0, recovery=0.7)]
    for one, together in zip(some, true_states(some), strict=True):
        assert together.flow == pytest.approx(true_state(one).flow, rel=1e-9)
        assert kinds(together) == kinds(true_state(one))


def test_beside_a_branch_and_two_lines_a_valve_may_choke_too() -> None:
    """The plant is cut at the valve, whatever stands on both sides."""
    on = {"fitted": True}
    state = true_state(low(branch=on, return_line=on, second_line=on, filter=on))
    assert state.converged and "choked" in dict(kinds(state))
    given = state.station.flow
    assert given == pytest.approx(
        state.flow + state.aside["branch-line"] + state.aside["return-line"], rel=1e-9
    )


def test_the_critical_pressure_of_water_is_known() -> None:
    """To give another is an error like any other property of water."""
    with pytest.raises(InputError, match="liquid.critical_bar is 200.0, but must be left out for water"):
        rig(liquid={"critical_bar": 200.0})
