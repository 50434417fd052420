"""Pumps that turn the wrong way and pump backward: propellers and displacement pumps."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from tests.rig import rig
from tests.states import kinds, stack_of
from tests.trial import checked

from loadfirst.errors import InputError
from loadfirst.instruments.panel import readings
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves
from loadfirst.plant.solved import solve_plants
from loadfirst.plant.state import State, true_state

WRONG = {"rotation": "wrong"}
OPEN = {"check": {"fitted": False}}
THIN = OPEN | {"discharge": {"bore_mm": 15.0, "roughness_mm": 0.05}}
NOTHING = ("nothing-comes", "pump-1")


def turned(model: str, second: dict[str, Any] | None = None, **tables: Any) -> State:
    """The plain plant with that pump, its motor turning the wrong way."""
    pump = {"model": model} | WRONG | ({"arrangement": "side-by-side", "second": second} if second else {})
    return true_state(rig(pump=pump, **tables))


@pytest.mark.parametrize("model", ["axial", "gear", "lobe", "screw"])
def test_it_takes_from_the_delivery_and_gives_to_the_supply(model: str) -> None:
    """Without a check valve: the flow is turned, the pressure falls from the suction to the discharge."""
    found = turned(model, **OPEN)
    (machine,) = found.machines
    assert found.flow < 0 and machine.flow == found.flow and machine.backward is True
    assert ("pumps-backward", "pump-1") in kinds(found)
    assert ("reverse-flow", "pump-1") not in kinds(found)
    assert sum(stack_of(found).values()) == pytest.approx(found.station.head, abs=1e-9)


def test_a_propeller_gives_half_its_head_at_no_flow() -> None:
    """Common practice, soft; the motor's slip moves it by some per cent."""
    shut = {"valve": {"opening": 0.0}, "check": {"fitted": False}}
    right, wrong = true_state(rig(pump={"model": "axial"}, **shut)), turned("axial", **shut)
    assert -wrong.station.head == pytest.approx(0.5 * right.station.head, rel=0.05)


def test_a_displacement_pump_gives_backward_what_it_gave_forward() -> None:
    """Driven by the same pressure difference: two open vessels of one level, a wide line."""
    vessel = {"surface_m": 2.0, "bottom_m": 0.0, "top_m": 4.0}
    level = {"delivery": vessel, "discharge": {"length_m": 4.0}} | OPEN
    right, wrong = true_state(rig(pump={"model": "gear"}, **level)), turned("gear", **level)
    assert -wrong.flow == pytest.approx(right.flow, rel=0.02)


def test_behind_a_check_valve_its_inlet_boils_and_no_more() -> None:
    """Absolute pressure at the discharge flange is the vapour pressure; the check valve holds."""
    found = turned("gear")
    assert found.flow == 0 and NOTHING in kinds(found)
    discharge = found.nodes["discharge"].pressure
    assert discharge == pytest.approx(found.liquid.vapour_pressure - 101325.0, abs=1.0)
    assert discharge + 101325.0 >= found.liquid.vapour_pressure  # type: ignore[operator]
    assert not any(kind == "below-vapour-pressure" for kind, _ in kinds(found))


def test_a_thin_line_gives_it_what_comes_at_vapour_pressure() -> None:
    """Some flow, far less than it would displace; the torque is that of the small pressure."""
    thin, wide = turned("gear", **THIN), turned("gear", **OPEN)
    assert 0 < -thin.flow < 0.2 * -wide.flow
    assert NOTHING in kinds(thin) and NOTHING not in kinds(wide)
    (machine,) = thin.machines
    assert machine.stalled is False and machine.npsh_available == pytest.approx(0.09, abs=0.02)


def test_its_relief_valve_protects_nothing() -> None:
    """It stands on the other side; the note tells the pressure where nothing relieves."""
    found = turned("gear", relief={"fitted": True}, **OPEN)
    note = next(note for note in found.notes if note.kind == "relief-behind")
    assert note.facts["pressure"] == pytest.approx(found.nodes["suction"].pressure)
    assert ("no-relief", "pump-1") not in kinds(found)
    assert not any(kind == "relief-lifted" for kind, _ in kinds(found))
    blocked = turned("gear", suction={"strainer_k": 1e5}, **OPEN)
    assert blocked.nodes["suction"].pressure > turned("gear", **OPEN).nodes["suction"].pressure  # type: ignore[operator]


def test_two_alike_share_what_comes() -> None:
    """Both phases exchanged at the common feeder: equal flows, one pressure."""
    found = turned("gear", second=dict(WRONG), **THIN)
    first, second = found.machines
    assert first.flow == pytest.approx(second.flow, rel=1e-6) and first.flow < 0
    assert kinds(found).count(NOTHING) == 1 and ("nothing-comes", "pump-2") in kinds(found)


def test_beside_a_sound_one_its_check_valve_holds() -> None:
    """The sound pump delivers; the other runs dry behind its check valve."""
    alone = true_state(rig(pump={"model": "gear"}))
    found = true_state(rig(pump={"model": "gear", "arrangement": "side-by-side", "second": dict(WRONG)}))
    assert found.flow == pytest.approx(alone.flow, rel=1e-3)
    assert ("nothing-comes", "pump-2") in kinds(found) and ("held-shut", "check-2") not in kinds(found)


@pytest.mark.parametrize("key", ["wear_percent", "trim_percent", "blocked_percent"])
def test_what_else_has_become_of_it_counts_backward_too(key: str) -> None:
    """Worn, trimmed or stopped up, it gives less."""
    lies = {"delivery": {"surface_m": 3.0, "bottom_m": 0.0, "top_m": 4.0}} | OPEN
    some = {"wear_percent": 20.0, "trim_percent": 90.0, "blocked_percent": 30.0}[key]
    whole = true_state(rig(pump={"model": "axial"} | WRONG, **lies))
    less = true_state(rig(pump={"model": "axial", key: some} | WRONG, **lies))
    assert -less.flow < -whole.flow


def test_gas_in_the_suction_does_not_reach_it() -> None:
    """It takes in at the other side."""
    assert turned("gear", suction={"gas_percent": 10.0}, **OPEN) == turned("gear", **OPEN)


def test_one_that_stands_does_not_pump_backward() -> None:
    """Its motor is off: which way it would turn does not matter."""
    found = true_state(rig(pump={"model": "gear", "running": False} | WRONG))
    assert kinds(found)[0] == ("standing", "pump-1")


@pytest.mark.parametrize("model", ["axial", "gear"])
@pytest.mark.parametrize(
    "tables", [{}, OPEN, THIN, {"check": {"leak_kv_m3h": 1.0}}, {"pump": {"centre_m": 14.0}}]
)
def test_the_independent_checker_finds_it_balanced(model: str, tables: dict[str, Any]) -> None:
    """Filled or not, held or not, above or below what a column can stand."""
    pump = {"model": model} | WRONG | tables.get("pump", {})
    solved = solve_plants(build([rig(**tables | {"pump": pump})]))
    assert solved.solution.converged.all()
    off = checked(solved, 0)
    assert off.head <= 2e-9 * solved.built.head_scale[0], off
    assert off.flow <= 2e-9 * solved.built.flow_scale[0], off


@pytest.mark.parametrize("tables", [{}, OPEN, THIN])
@pytest.mark.parametrize("model", ["axial", "gear"])
def test_the_curves_rise_in_flow_and_meet_at_the_duty(model: str, tables: dict[str, Any]) -> None:
    """Down to where it would give nothing; where too little comes they fall straight to what is left."""
    built = build([rig(pump={"model": model} | WRONG, **tables)])
    duty = true_state(built).duty
    drawn = curves(built, duty)
    assert list(drawn.flow) == sorted(drawn.flow) and len(drawn.flow) == 60
    assert drawn.flow[0] < min(duty.flow, 0) < drawn.flow[-1]
    for column in (drawn.load, drawn.machine, drawn.station):
        known = [(q, h) for q, h in zip(drawn.flow, column, strict=True) if h is not None]
        missed = min(abs(h - duty.head) for q, h in known if abs(q - duty.flow) <= 0.03 * abs(drawn.flow[0]))
        assert missed < 0.02 * built.head_scale[0]


def test_instruments_show_it_without_a_sign() -> None:
    """The tachometer counts turns, the flow meter knows no backward flow, the ammeter is as ever."""
    plant = rig(pump={"model": "gear"} | WRONG, **OPEN)
    shown = {reading.id: reading for reading in readings(true_state(plant), plant.plant)}
    assert shown["tachometer-1"].value > 0 and shown["flow-meter"].value == 0  # type: ignore[operator]
    assert shown["flow-meter"].off_scale == "low" and np.isfinite(shown["ammeter-1"].value)  # type: ignore[arg-type]


def test_what_is_not_computed_is_refused_with_the_reason() -> None:
    """In line with another; two unlike ones side by side that both pump backward."""
    with pytest.raises(InputError, match=r"pump\.rotation is 'wrong'.*backward against the other"):
        rig(pump={"model": "axial", "arrangement": "in-line"} | WRONG)
    both = {"arrangement": "side-by-side", "second": {"model": "lobe"} | WRONG}
    with pytest.raises(InputError, match=r"two unlike pumps.*gets how much"):
        rig(pump={"model": "gear"} | WRONG | both)
