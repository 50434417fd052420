"""Pumps that stand beside or before one that runs, and what their check valves let through them."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from tests.rig import rig
from tests.states import kinds, stack_of

from loadfirst.instruments.panel import readings
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves
from loadfirst.plant.state import State, true_state

STOPPED = {"running": False}


def two(arrangement: str = "side-by-side", first: bool = True, **tables: dict[str, Any]) -> State:
    """Two medium pumps, the second (or the first) standing."""
    pump = {"arrangement": arrangement} | ({"second": STOPPED} if first else STOPPED)
    return true_state(rig(pump=pump, **tables))


def test_behind_a_tight_check_valve_nothing_passes_the_standing_pump() -> None:
    """The plant is then that of one pump; the ammeter of the other shows nothing."""
    alone, beside = true_state(rig()), two()
    assert beside.machines[1].flow == 0 and beside.machines[1].standing is True
    assert beside.flow == pytest.approx(alone.flow, rel=0.02)
    assert kinds(beside) == [("standing", "pump-2")]
    shown = {reading.id: reading.value for reading in readings(beside, rig().plant)}
    assert shown["ammeter-2"] == 0 and shown["tachometer-2"] == 0 and shown["ammeter-1"] != 0


@pytest.mark.parametrize("check", [{"leak_kv_m3h": 6.0}, {"stuck_open": True}, {"fitted": False}])
def test_what_the_check_valve_lets_back_spins_the_standing_pump_backward(check: dict[str, Any]) -> None:
    """The running pump gives more than the line gets, and the tachometer counts the turns."""
    tight, passing = two(), two(check=check)
    strong, idle = passing.machines
    assert idle.flow < 0 and idle.speed < 0
    assert strong.flow == pytest.approx(passing.station.flow - idle.flow, rel=1e-9)
    assert passing.flow < tight.flow and passing.station.head < tight.station.head
    assert ("turning-backward", "pump-2") in kinds(passing)
    shown = {reading.id: reading.value for reading in readings(passing, rig().plant)}
    assert shown["tachometer-2"] == pytest.approx(-idle.speed)
    assert sum(stack_of(passing).values()) == pytest.approx(passing.station.head, rel=1e-9)


def test_the_more_the_check_valve_leaks_the_less_reaches_the_line() -> None:
    """From a weeping seat to a flap that hangs open."""
    flows = [two(check={"leak_kv_m3h": kv}).flow for kv in (0.0, 1.0, 5.0, 20.0)]
    assert flows == sorted(flows, reverse=True)
    assert two(check={"stuck_open": True}).flow < flows[1]


@pytest.mark.parametrize("first", [True, False])
def test_in_line_the_running_pump_drives_the_liquid_through_the_standing_one(first: bool) -> None:
    """A windmill: it costs head, whichever stands."""
    alone, both = true_state(rig()), two("in-line", first)
    idle = both.machines[1 if first else 0]
    assert idle.flow > 0 and idle.head < 0 and idle.speed > 0 and idle.current == 0
    assert both.flow < alone.flow
    assert both.station.head == pytest.approx(sum(machine.head for machine in both.machines))
    assert sum(stack_of(both).values()) == pytest.approx(both.station.head, rel=1e-9)


def test_either_of_two_equal_pumps_may_stand() -> None:
    """Side by side it makes no difference to the line which one it is."""
    one, other = two(), two(first=False)
    assert other.flow == pytest.approx(one.flow, rel=1e-9)
    assert other.machines[0].flow == 0 and ("standing", "pump-1") in kinds(other)


def test_a_plant_whose_only_pump_stands_shows_the_load_alone() -> None:
    """The check valve bears the column; without one it runs back, from a higher supply it runs forward."""
    held = true_state(rig(pump=STOPPED))
    assert held.converged and held.flow == 0 and held.machines[0].current == 0
    back = true_state(rig(pump=STOPPED, check={"fitted": False}))
    assert back.flow < 0 and ("turning-backward", "pump-1") in kinds(back)
    high = {"surface_m": 30.0, "bottom_m": 28.0, "top_m": 32.0}
    driven = true_state(rig(pump=STOPPED, supply=high))
    assert driven.flow > 0 and driven.station.head < 0 and ("standing", "pump-1") in kinds(driven)
    assert sum(stack_of(driven).values()) == pytest.approx(driven.station.head, rel=1e-9)


def test_a_standing_displacement_pump_passes_hardly_anything() -> None:
    """Its gears are held, only the gaps pass, and they do not spin it."""
    oil = {"name": "oil", "density_kgm3": 880, "viscosity_mpas": 60, "vapour_bar": 1e-4}
    pump = {"model": "gear", "arrangement": "side-by-side", "second": STOPPED}
    state = true_state(rig(pump=pump, liquid=oil, relief={"fitted": True}, check={"stuck_open": True}))
    idle = state.machines[1]
    assert -0.05 * state.machines[0].flow < idle.flow < 0 and idle.speed == 0
    assert ("standing", "pump-2") in kinds(state)


def test_the_pump_that_has_too_little_head_is_named_with_the_check_valve_that_is_held_shut() -> None:
    """The stronger pump holds the weaker's check valve shut: the note says by how much."""
    pump = {"model": "large", "arrangement": "side-by-side", "second": {"model": "small"}}
    state = true_state(rig(pump=pump, delivery={"surface_m": 40.0, "bottom_m": 38.0, "top_m": 42.0}))
    note = next(note for note in state.notes if note.kind == "held-shut")
    assert note.where == "check-2"
    assert note.facts["head"] == pytest.approx(state.machines[1].head) and (
        note.facts["against"] > note.facts["head"]
    )
    gap = state.machines[0].head - note.facts["against"]
    assert 0 < gap < 2  # what the stronger pump's own check valve takes


@pytest.mark.parametrize("arrangement", ["single", "side-by-side", "in-line"])
@pytest.mark.parametrize("stuck", [True, False])
def test_the_curves_of_a_station_with_a_standing_pump_are_finite(arrangement: str, stuck: bool) -> None:
    """And the second pump's is drawn, because it differs."""
    pump = {"arrangement": arrangement} | ({"second": STOPPED} if arrangement != "single" else STOPPED)
    one = build([rig(pump=pump, check={"stuck_open": stuck})])
    drawn = curves(one, true_state(one).duty, 30)
    assert np.isfinite([head for head in drawn.station if head is not None]).all()
    assert drawn.second if arrangement != "single" else True
