"""What has become of a pump in its plant: worn, trimmed, blocked, turned the wrong way, thickened, gassed."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec import UNSET
from tests.rig import rig
from tests.states import kinds

from loadfirst.errors import InputError
from loadfirst.plant.answer import Note
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves
from loadfirst.plant.state import State, true_state


def state(second: dict[str, Any] | None = None, **pump: Any) -> State:
    """The plain plant with its pump in that condition."""
    return true_state(rig(pump=pump | ({"second": second} if second else {})))


def oil(viscosity: float) -> dict[str, Any]:
    """An oil of water's density and of that dynamic viscosity in mPa·s."""
    return {"name": "oil", "density_kgm3": 998.0, "viscosity_mpas": viscosity, "vapour_bar": 0.01}


def rules(found: State) -> list[str]:
    """Limits of rules that were passed."""
    return [str(note.rule) for note in found.notes if note.kind == "outside-rule"]


@pytest.mark.parametrize(
    "pump",
    [{"wear_percent": 10.0}, {"trim_percent": 90.0}, {"blocked_percent": 30.0}, {"rotation": "wrong"}],
    ids=lambda pump: next(iter(pump)),
)
@pytest.mark.parametrize("arrangement", ["single", "side-by-side", "in-line"])
def test_a_pump_that_is_not_what_it_was_gives_less(pump: dict[str, Any], arrangement: str) -> None:
    """Less flow, and less head on a load that rises with the flow."""
    sound, less = state(arrangement=arrangement), state(arrangement=arrangement, **pump)
    assert less.flow < sound.flow
    assert less.station.head < sound.station.head
    assert less.converged


def test_wear_hardly_shows_against_a_shut_valve() -> None:
    """So a shut-in test clears a worn pump; well out on the curve it does not."""
    sound, worn = (
        [true_state(rig(pump={"wear_percent": wear}, valve={"opening": x})) for x in (0.0, 1.0)]
        for wear in (0.0, 20.0)
    )
    assert worn[0].station.head > 0.95 * sound[0].station.head
    assert worn[1].flow < 0.94 * sound[1].flow


def test_a_pump_of_another_diameter_follows_the_trim_rule_at_no_flow() -> None:
    """Head with the square of the diameter, but for what the motor's slip gives back."""
    full, less = (true_state(rig(pump={"trim_percent": d}, valve={"opening": 0.0})) for d in (100.0, 90.0))
    assert less.station.head / full.station.head == pytest.approx(0.81, rel=0.01)


def test_more_than_nine_tenths_blocked_is_plugged() -> None:
    """Churning: hardly any head, some power all the same."""
    plugged = state(blocked_percent=95.0)
    assert plugged.station.head < 0.15 * state().station.head
    assert plugged.machines[0].shaft_power > 500
    assert plugged.station.head == pytest.approx(state(blocked_percent=100.0).station.head)


def test_each_of_two_pumps_has_a_condition_of_its_own() -> None:
    """A worn one beside a sound one: the sound one takes over."""
    worn = state(arrangement="side-by-side", second={"wear_percent": 20.0})
    first, second = worn.machines
    assert first.flow > second.flow
    other = state(arrangement="side-by-side", wear_percent=20.0)
    assert other.flow == pytest.approx(worn.flow, rel=1e-9)
    equal = state(arrangement="side-by-side", wear_percent=20.0, second={"wear_percent": 20.0})
    assert equal.flow < worn.flow


def test_water_at_any_temperature_leaves_a_pump_as_its_maker_measured_it() -> None:
    """Its points are on water; only the density moves its power."""
    cold = true_state(rig(liquid={"temperature_c": 1.0}, valve={"opening": 0.0}))
    warm = true_state(rig(liquid={"temperature_c": 60.0}, valve={"opening": 0.0}))
    assert cold.station.head == pytest.approx(warm.station.head, rel=1e-3)
    assert rules(cold) == []


def test_a_thick_liquid_takes_head_and_flow_and_asks_more_power() -> None:
    """Within the method no note; the same oil as thin as water changes nothing."""
    thin, thick = (true_state(rig(liquid=oil(v), discharge={"length_m": 1.0})) for v in (0.9, 100.0))
    assert thick.flow < thin.flow
    assert thick.machines[0].efficiency < thin.machines[0].efficiency
    assert rules(thin) == rules(thick) == []


def test_beyond_the_method_the_note_names_its_limit() -> None:
    """The factors are held at the end of the range, and whoever reads the answer is told."""
    found = true_state(rig(liquid=oil(5000.0)))
    assert {"viscosity.viscosity", "viscosity.parameter"} <= set(rules(found))
    note = next(note for note in found.notes if note.rule == "viscosity.viscosity")
    assert note == Note(
        "outside-rule",
        "pump-1",
        {"got": pytest.approx(5000e-6, rel=0.01), "low": 0.0, "high": pytest.approx(4000e-6), "held": 1.0},
        "viscosity.viscosity",
    )


def test_gas_takes_the_head_away_little_at_first_then_all() -> None:
    """Two per cent hardly show, six take half the head, and a pump full of air draws less current."""
    none, little, much, most = (true_state(rig(suction={"gas_percent": g})) for g in (0.0, 2.0, 6.0, 15.0))
    assert 0.9 * none.station.head < little.station.head < none.station.head
    assert much.flow < 0.7 * little.flow
    assert most.flow == 0 and most.machines[0].current < none.machines[0].current
    assert "gas.fraction" in rules(most)


def test_a_displacement_pump_wears_and_is_gassed_too() -> None:
    """More slips back, less liquid is swept."""
    sound, worn, gassed = (
        true_state(
            rig(pump={"model": "gear", "wear_percent": w}, liquid=oil(60.0), suction={"gas_percent": g})
        )
        for w, g in ((0.0, 0.0), (20.0, 0.0), (0.0, 10.0))
    )
    assert worn.flow < sound.flow
    assert gassed.flow == pytest.approx(0.9 * sound.flow, rel=0.02)
    assert worn.machines[0].volumetric_efficiency < sound.machines[0].volumetric_efficiency  # type: ignore[operator]


@pytest.mark.parametrize("key", [{"trim_percent": 90.0}, {"blocked_percent": 10.0}])
def test_what_needs_an_impeller_is_refused_for_a_displacement_pump(key: dict[str, Any]) -> None:
    """With the key and the reason; for the second pump likewise."""
    name = next(iter(key))
    with pytest.raises(InputError, match=rf"pump\.{name}.*It has no impeller"):
        rig(pump={"model": "gear"} | key)
    with pytest.raises(InputError, match=rf"pump\.second\.{name}.*It has no impeller"):
        rig(pump={"arrangement": "in-line", "second": {"model": "gear"} | key})


def test_the_curves_are_those_of_the_pump_as_it_has_become() -> None:
    """The drawn machine is the worn one; the second pump is drawn where it differs."""
    alike, worn = (
        curves(one, true_state(one).duty)
        for one in (
            build([rig(pump={"arrangement": "side-by-side"})]),
            build([rig(pump={"arrangement": "side-by-side", "second": {"wear_percent": 30.0}})]),
        )
    )
    assert alike.second is UNSET and worn.second is not UNSET
    pairs = list(zip(worn.machine, worn.second, strict=True))
    assert all(second < first for first, second in pairs[1:])  # type: ignore[operator]


def test_the_sound_pump_has_no_notes_of_its_condition() -> None:
    """Nothing has become of it."""
    assert kinds(state()) == []
