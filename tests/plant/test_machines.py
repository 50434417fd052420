"""Stations of displacement pumps, with their relief valve, and of pumps that differ."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from msgspec import UNSET
from tests.rig import rig
from tests.states import kinds, stack_of

from loadfirst.errors import InputError
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves, load_curve, station_curve
from loadfirst.plant.edits import apply_edits
from loadfirst.plant.effective import effective
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import State, true_state

OIL = {"name": "oil", "density_kgm3": 880, "viscosity_mpas": 60, "vapour_bar": 1e-4}
DISPLACING = ("gear", "lobe", "screw")


def oil_rig(model: str = "gear", **tables: dict[str, Any]) -> State:
    """A displacement pump on oil, a relief valve fitted unless told otherwise."""
    tables = {"relief": {"fitted": True}, **tables}
    return true_state(rig(pump={"model": model}, liquid=OIL, **tables))


@pytest.mark.parametrize("model", DISPLACING)
def test_a_displacement_pump_gives_nearly_its_displacement_whatever_the_load(model: str) -> None:
    """Throttling raises the pressure and hardly touches the flow."""
    wide = oil_rig(model, valve={"opening": 1.0})
    tight = oil_rig(model, valve={"opening": 0.55})
    assert tight.machines[0].head > wide.machines[0].head
    assert 0.9 * wide.flow < tight.flow < wide.flow
    for state in (wide, tight):
        machine = state.machines[0]
        assert 0 < machine.volumetric_efficiency < 1 and 0 < machine.mechanical_efficiency < 1  # type: ignore[operator]
        assert machine.efficiency == pytest.approx(
            machine.volumetric_efficiency * machine.mechanical_efficiency,
            rel=1e-9,  # type: ignore[operator]
        )


@pytest.mark.parametrize("model", DISPLACING)
def test_against_a_shut_valve_the_relief_valve_takes_all_the_flow(model: str) -> None:
    """The pressure climbs to its setting and little beyond; nothing is delivered, and a note says so."""
    one = rig(pump={"model": model}, liquid=OIL, relief={"fitted": True}, valve={"opening": 0.0})
    state = true_state(one)
    set_pressure = one.plant.relief.set_bar * 1e5  # type: ignore[operator]
    assert state.converged and state.flow == 0
    assert state.station.flow > 0
    assert set_pressure < state.machines[0].pressure < 1.15 * set_pressure  # type: ignore[operator]
    assert ("relief-lifted", "relief") in kinds(state)
    assert ("stalled", "pump-1") not in kinds(state)
    assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-9)


@pytest.mark.parametrize("relief", [{"fitted": False}, {"fitted": True, "state": "blocked"}])
@pytest.mark.parametrize("model", DISPLACING)
def test_without_a_working_relief_valve_only_the_motor_stops_it(model: str, relief: dict[str, Any]) -> None:
    """Far beyond the casing's rating: the answer is finite and does not pretend to be safe."""
    state = oil_rig(model, relief=relief, valve={"opening": 0.0})
    machine = state.machines[0]
    assert state.converged and machine.flow == 0
    assert machine.pressure > 2 * machine.pressure_limit  # type: ignore[operator]
    found = {kind for kind, _ in kinds(state)}
    assert {"pressure-limit", "no-relief", "stalled"} <= found
    assert "beyond-curve" not in found


def test_a_relief_valve_that_passes_takes_flow_at_any_pressure() -> None:
    """The gauge falls a little, the delivery more; it looks like a worn pump."""
    sound = oil_rig(valve={"opening": 0.3})
    passing = oil_rig(valve={"opening": 0.3}, relief={"fitted": True, "state": "passing"})
    assert passing.flow < sound.flow
    assert passing.machines[0].head < sound.machines[0].head
    assert ("relief-lifted", "relief") not in kinds(passing)


def test_with_the_line_off_a_displacement_pump_simply_gives_its_displacement() -> None:
    """Nothing resists, so there is hardly any pressure, and no more flow than it displaces."""
    state = oil_rig(discharge={"attached": False}, suction={"length_m": 1.0})
    attached = oil_rig()
    assert attached.flow < state.flow < 1.1 * attached.flow
    assert state.machines[0].load < attached.machines[0].load


def test_only_displacement_pumps_say_what_only_they_have() -> None:
    """A centrifugal pump has no pressure limit here and no volumetric efficiency."""
    assert true_state(rig()).machines[0].volumetric_efficiency is UNSET
    assert oil_rig().machines[0].volumetric_efficiency is not UNSET


@pytest.mark.parametrize("model", DISPLACING)
@pytest.mark.parametrize("arrangement", ["single", "side-by-side", "in-line"])
@pytest.mark.parametrize("opening", [0.0, 0.05, 0.3, 1.0])
def test_the_nearly_upright_curve_is_drawn_through_the_duty_point(
    model: str, arrangement: str, opening: float
) -> None:
    """Dense enough along its head: straight lines between the points pass where the pump works."""
    pump = {"model": model, "arrangement": arrangement}
    one = build([rig(pump=pump, liquid=OIL, relief={"fitted": True}, valve={"opening": opening})])
    duty = true_state(one).duty
    drawn = curves(one, duty, 60)
    assert len(drawn.flow) == 60 and list(drawn.flow) == sorted(drawn.flow)
    known = [(q, h) for q, h in zip(drawn.flow, drawn.station, strict=True) if h is not None]
    flows, heads = np.array(known).T
    assert (np.diff(heads) <= 1e-9 * one.head_scale[0]).all()
    at = np.interp(-duty.head, -heads, flows)
    assert at == pytest.approx(duty.flow, abs=2e-3 * one.flow_scale[0])
    steps = -np.diff(heads[heads >= 0])
    assert steps.max() < 0.1 * heads.max()


def test_a_larger_second_pump_in_place_of_an_equal_one_gives_more() -> None:
    """Side by side and in line."""
    for arrangement in ("side-by-side", "in-line"):
        equal = true_state(rig(pump={"arrangement": arrangement}))
        larger = true_state(rig(pump={"arrangement": arrangement, "second": {"model": "large"}}))
        smaller = true_state(rig(pump={"arrangement": arrangement, "second": {"model": "small"}}))
        assert smaller.flow < equal.flow < larger.flow


def test_the_second_pump_brings_its_own_motor() -> None:
    """Unless it is told another; the first one's stays."""
    second = {"model": "large"}
    two = true_state(rig(pump={"arrangement": "in-line", "second": second}))
    assert [machine.rated_power for machine in two.machines] == [7500.0, 15000.0]
    told = true_state(rig(pump={"arrangement": "in-line", "second": second | {"motor_kw": 18.5}}))
    assert [machine.rated_power for machine in told.machines] == [7500.0, 18500.0]


def test_naming_the_same_pump_twice_is_an_equal_pair() -> None:
    """To the last digits that the solver gives."""
    pump = {"arrangement": "side-by-side"}
    equal, named = true_state(rig(pump=pump)), true_state(rig(pump=pump | {"second": {"model": "medium"}}))
    assert named.flow == pytest.approx(equal.flow, rel=1e-9)
    assert named.station.head == pytest.approx(equal.station.head, rel=1e-9)


def test_the_stronger_pump_holds_the_weakers_check_valve_shut() -> None:
    """On a load that asks more than the weaker has, that one runs without flow; the stack still closes."""
    pump = {"model": "large", "arrangement": "side-by-side", "second": {"model": "small"}}
    state = true_state(rig(pump=pump, delivery={"surface_m": 40.0, "bottom_m": 38.0, "top_m": 42.0}))
    strong, weak = state.machines
    assert strong.flow > 0 and weak.flow == 0 and strong.head > weak.head
    assert ("dead-headed", "pump-2") in kinds(state)
    assert state.station.head == pytest.approx(strong.head)
    assert sum(stack_of(state).values()) == pytest.approx(state.station.head, rel=1e-9)
    assert state.balance.answer == pytest.approx(strong.head)


@pytest.mark.parametrize("arrangement", ["side-by-side", "in-line"])
@pytest.mark.parametrize("second", ["small", "large", "gear", "axial"])
@pytest.mark.parametrize("opening", [0.0, 0.2, 1.0])
def test_load_and_station_of_unlike_pumps_meet_at_the_duty(
    arrangement: str, second: str, opening: float
) -> None:
    """Whatever shares the flow or adds the head."""
    pump = {"arrangement": arrangement, "second": {"model": second}}
    one = build([rig(pump=pump, valve={"opening": opening})])
    state = true_state(one)
    near = 1e-6 * one.head_scale[0]
    answered = station_curve(one, np.array([[state.station.flow]]))
    assert answered[0, 0] == pytest.approx(state.station.head, abs=near)
    assert sum(block.head or 0.0 for block in state.stack) == pytest.approx(state.station.head, abs=near)
    if state.station.flow > 0:
        asked, known = load_curve(one, np.array([[state.station.flow]]))
        assert known.all() and asked[0, 0] == pytest.approx(state.station.head, abs=near)
    drawn = curves(one, state.duty, 40)
    assert drawn.second is not UNSET and len(drawn.second) == 40


def test_what_the_file_leaves_open_suits_the_pumps_and_is_said() -> None:
    """Relief valve, flow meter, motors: the effective plant gives the same state when it is read again."""
    data = {
        "format": 1,
        "title": "Oil",
        "pump": {"model": "gear", "arrangement": "side-by-side"},
        "liquid": OIL,
    }
    data |= {"relief": {"fitted": True}}
    data["pump"] |= {"second": {"model": "screw"}}
    one = resolve_data(data)
    whole = effective(one)
    assert whole["relief"]["set_bar"] == pytest.approx(1.1 * 16)
    assert whole["pump"]["second"]["motor_kw"] == 11
    assert true_state(resolve_data(whole)) == true_state(one)


def test_naming_a_pump_takes_its_other_names_away() -> None:
    """A model in place of a table of its own numbers, and the other way round."""
    own = {"kind": "gear", "motor_kw": 3, "displacement_cm3": 37, "speed_rpm": 2900, "pressure_bar": 8}
    own |= {"volumetric_percent": 93, "mechanical_percent": 84, "viscosity_mpas": 75, "npshr_m": 2.8}
    data = {"format": 1, "title": "Oil", "pump": {"model": "medium"}}
    edited = apply_edits(data, {"pump.displacement": own})
    assert "model" not in edited["pump"]
    assert resolve_data(edited).curve.motor_kw == 3
    assert "displacement" not in apply_edits(edited, {"pump.model": "medium"})["pump"]


@pytest.mark.parametrize(
    ("pump", "sentence"),
    [
        ({"second": {"model": "medum"}}, "pump.second.model is 'medum', but must be the id of a pump"),
        ({"displacement": {"kind": "gaer"}}, "Did you mean gear?"),
    ],
)
def test_a_slip_of_the_pen_is_answered_as_elsewhere(pump: dict[str, Any], sentence: str) -> None:
    """With the place and what would do."""
    data = {"format": 1, "title": "Any", "pump": {"model": "medium", "arrangement": "in-line"} | pump}
    if "displacement" in pump:
        del data["pump"]["model"]  # type: ignore[attr-defined]
    with pytest.raises(InputError, match=r".*") as caught:
        resolve_data(data)
    assert sentence in f"{caught.value.text} {caught.value.hint}"
