"""Is the pump on its curve: the rule that people follow by hand, and its gates."""

from __future__ import annotations

import pytest
from tests.evidence.looks import Shown, both, happened, only, plant

from loadfirst.errors import InputError
from loadfirst.evidence.on_curve import NEEDED, ORDER, OnCurve, on_curve
from loadfirst.plant.state import true_state

SEEDS = range(1, 26)


def held(name: str, *changes: tuple[str, float | None], seed: int = 3) -> OnCurve:
    """Today's readings, held against the plant as it was known."""
    return on_curve(plant(name), both(name, *changes, seed=seed)[1])


def openings(found: OnCurve) -> list[str]:
    """Gates that are open."""
    return [gate.name for gate in found.gates if gate.open]


@pytest.mark.parametrize("name", ["rinse-transfer", "reference", "twin-mains"])
def test_exact_instruments_put_a_sound_pump_on_its_curve(name: str) -> None:
    """Head from the gauges is the pumps' own less what their check valves lose; ISO 9906."""
    found, balance = held(name, seed=0), true_state(plant(name)).balance
    assert found.head == pytest.approx(balance.answer - (balance.check_valve or 0.0), rel=1e-6)
    assert found.curve == pytest.approx(found.head, rel=1e-6)
    assert found.healthy and found.gates == ()


def test_a_sound_pump_is_called_healthy_about_as_often_as_it_should() -> None:
    """95 of 100 by the coverage factor; instruments err less than they may."""
    assert sum(held("reference", seed=seed).healthy for seed in SEEDS) >= 0.9 * len(SEEDS)


@pytest.mark.parametrize("change", [("worn", 30.0), ("air-leak", None), ("strainer-blocked", None)])
def test_a_load_keeps_the_point_on_the_curve_and_a_bad_pump_leaves_it(
    change: tuple[str, float | None],
) -> None:
    """Wear and air put it below, a lighter or heavier load never off."""
    found = held("reference", change)
    if change[0] == "strainer-blocked":
        assert found.healthy
        return
    assert found.side == "below" and not found.healthy
    assert openings(found) == ["instruments", "suction-and-gas", "liquid", "machine"]
    assert [gate.name for gate in found.gates] == list(ORDER)


def test_near_shut_off_even_a_worn_pump_looks_well() -> None:
    """So it is not called healthy there, sound or not: little of what leaks shows."""
    for changes in ([("valve-throttled", 0.05)], [("worn", 10.0), ("valve-throttled", 0.05)]):
        found = held("rinse-transfer", *changes, seed=0)
        assert found.side == "on"
        assert not found.well_out and not found.healthy


def test_small_wear_stays_hidden_and_is_told() -> None:
    """The least wear that would show: that much shows with exact readings, half of it does not."""
    least = held("reference", seed=0).least_wear
    assert least is not None and 1 < least <= 10
    assert held("reference", ("worn", 1.5 * least), seed=0).side == "below"
    assert held("reference", ("worn", 0.5 * least), seed=0).side == "on"


def test_without_a_tachometer_the_speed_stays_open() -> None:
    """A slow pump then leaves the curve; at its measured speed it stands on it."""
    _, after = both("reference", ("supply-slow", 0.85), seed=3)
    blind = on_curve(plant("reference"), only(after, *NEEDED))
    assert blind.side == "below" and not blind.speed_measured and "speed" in openings(blind)
    assert on_curve(plant("reference"), after).healthy


def test_above_the_curve_nothing_that_only_lowers_it_can_be_the_cause() -> None:
    """A larger impeller: no bypass, no rotation, no gas."""
    found = held("reference", ("impeller-larger", None))
    assert found.side == "above"
    assert openings(found) == ["instruments", "liquid", "machine"]
    assert {gate.name: gate.why for gate in found.gates}["suction-and-gas"] == "side"


def test_the_gate_of_rotation_is_open_where_the_point_is_that_of_a_pump_that_turns_backward() -> None:
    """And shut where it is not."""
    assert "rotation" in openings(held("reference", ("phases-swapped", None)))
    assert "rotation" not in openings(held("reference", ("worn", 30.0)))


def test_a_displacement_pump_is_held_against_its_own_curve() -> None:
    """Upright nearly, so that it is the flow that tells; it has no impeller to turn the wrong way."""
    assert held("displacement").side == "on"
    found = held("displacement", ("worn", 30.0))
    assert found.side == "below"
    assert {gate.name: gate.why for gate in found.gates}["rotation"] == "no-impeller"


def test_the_meters_place_opens_the_gate_of_the_bypass() -> None:
    """Behind the return line's tee it misses what goes back."""
    name = "reference"
    behind = happened(name, ("flow-meter-elsewhere", None))
    _, after = both(name, ("flow-meter-elsewhere", None), ("return-passing", 0.8), seed=3)
    found = on_curve(behind, after)
    assert found.side == "below" and openings(found)[:2] == ["instruments", "bypass"]
    looked = on_curve(behind, after, seen=("instruments", "bypass"))
    assert openings(looked)[0] == "suction-and-gas"


@pytest.mark.parametrize("missing", NEEDED)
def test_three_readings_are_needed(missing: str) -> None:
    """Each of them, and on its scale."""
    _, after = both("reference")
    rest: Shown = {id: one for id, one in after.items() if id != missing}
    with pytest.raises(InputError, match=f"{missing} is not there, but must be a reading on its scale"):
        on_curve(plant("reference"), rest)


def test_pumps_that_droop_side_by_side_are_refused() -> None:
    """How they share the flow is a matter of history."""
    with pytest.raises(InputError, match="do not droop"):
        on_curve(plant("late-second"), both("late-second")[1])
