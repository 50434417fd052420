"""Pumps in their place: with the NPSH that goes with the flow, in every arrangement."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from tests.rig import rig
from tests.states import kinds
from tests.trial import checked

from loadfirst.physics.cavitation import head_factor, npsh_ratio
from loadfirst.physics.starved import StarvedMachines
from loadfirst.plant.build import build
from loadfirst.plant.curves import curves, load_curve, station_curve
from loadfirst.plant.in_place import settle_in_place
from loadfirst.plant.npsh import in_place
from loadfirst.plant.pumps import ResolvedPlant
from loadfirst.plant.solved import solve_plants
from loadfirst.plant.state import State, true_state, true_states

SIDE, LINE = {"arrangement": "side-by-side"}, {"arrangement": "in-line"}
UNLIKE = {"second": {"model": "small"}}
MIXED = {"second": {"model": "gear"}}

LOW = {"surface_m": 2.0, "bottom_m": 0.0}
DEEP = {"surface_m": -20.0, "bottom_m": -22.0, "top_m": -18.0}
RELIEF = {"fitted": True, "set_bar": 1.0, "capacity_m3h": 20.0}
STANDING = {"second": {"running": False}}

WIDE = {"valve": {"opening": 1.0}}


def clogged(k: float, **more: float) -> dict[str, Any]:
    """A suction line with such a strainer."""
    return {"suction": {"strainer_k": k, **more}}


SHORT: dict[str, dict[str, Any]] = {
    "single": clogged(900.0) | WIDE,
    "side by side": clogged(900.0) | WIDE | {"pump": SIDE},
    "side by side, unlike": clogged(900.0) | {"pump": SIDE | UNLIKE, "delivery": LOW},
    "in line": clogged(900.0) | WIDE | {"pump": LINE},
    "in line, unlike": clogged(2000.0) | WIDE | {"pump": LINE | UNLIKE},
    "in line before a gear pump": clogged(60000.0) | {"pump": LINE | MIXED},
    "one beside it standing": clogged(900.0) | {"pump": SIDE | STANDING},
    "with a relief valve": clogged(900.0) | {"relief": RELIEF},
    "hot": clogged(60.0) | {"liquid": {"temperature_c": 98.0}},
    "high above the sea": clogged(500.0) | WIDE | {"site": {"altitude_m": 4000.0}},
    "lifting": clogged(60.0) | WIDE | {"pump": {"centre_m": 9.0}},
    "a gear pump": clogged(90000.0, bore_mm=50.0) | {"pump": {"model": "gear"}},
    "dry": {"pump": {"centre_m": 13.0}},
    "a dry gear pump": {"pump": {"model": "gear", "centre_m": 13.0}},
    "drained through": {"liquid": {"temperature_c": 99.0}, "pump": {"centre_m": 1.9}, "delivery": DEEP},
}
"""Plants short of NPSH, by what makes them so."""


@pytest.fixture(params=SHORT)
def short(request: pytest.FixtureRequest) -> ResolvedPlant:
    """One of them."""
    return rig(**SHORT[request.param])


def noted(state: State) -> set[str]:
    """Kinds of its notes."""
    return {note.kind for note in state.notes}


def test_each_is_balanced_and_an_independent_checker_agrees(short: ResolvedPlant) -> None:
    """NPSH, share of the head that is left and the boiling flow are recomputed there from the heads alone."""
    solved = solve_plants(build([short]))
    off = checked(solved, 0)
    assert solved.solution.converged.all()
    assert off.head <= 2e-9 * solved.built.head_scale[0] and off.flow <= 2e-9 * solved.built.flow_scale[0]


def test_each_says_so(short: ResolvedPlant) -> None:
    """By one of the notes on the suction side."""
    assert noted(true_state(short)) & {"npsh-short", "suction-boils", "suction-dry"}


def test_nothing_at_a_pump_s_inlet_is_below_vapour_pressure(short: ResolvedPlant) -> None:
    """That was the old answer's fault: a flow that no atmosphere could push."""
    assert ("below-vapour-pressure", "suction") not in kinds(true_state(short))


def test_the_duty_lies_on_both_curves(short: ResolvedPlant) -> None:
    """The load asks that head at that flow; the station gives it there, or falls past it down its cliff."""
    built, state = build([short]), true_state(short)
    flow = np.array([[state.station.flow]])
    near = 1e-6 * float(built.head_scale[0])
    answered = float(station_curve(built, flow)[0, 0])
    if "suction-boils" in noted(state):
        assert answered >= state.station.head - near
    elif state.station.flow > 0:
        assert answered == pytest.approx(state.station.head, abs=near)
        assert float(load_curve(built, flow)[0][0, 0]) == pytest.approx(state.station.head, abs=near)


def test_one_that_is_short_gives_no_more_than_with_plenty(short: ResolvedPlant) -> None:
    """Against the same plant under 30 bar more in both vessels: only the NPSH is another."""
    plant = short.plant
    if plant.relief.fitted:
        pytest.skip("what a relief valve is set to is a gauge pressure")
    data = {"supply": {"gas_bar": 30.0}, "delivery": {"gas_bar": 30.0}}
    name = next(name for name, tables in SHORT.items() if rig(**tables) == short)
    tables = {table: SHORT[name].get(table, {}) | data.get(table, {}) for table in SHORT[name] | data}
    plenty, state = true_state(rig(**tables)), true_state(short)
    assert not noted(plenty) & {"npsh-short", "suction-boils", "suction-dry"}
    assert state.station.flow < plenty.station.flow + 1e-9


def test_a_batch_of_short_and_sound_plants_is_as_each_alone() -> None:
    """Of one shape, some in want: rows know nothing of each other."""
    some = [rig(suction={"strainer_k": k}) for k in (0.8, 2000.0, 150.0, 60000.0, 0.0)]
    for one, together in zip(some, true_states(some), strict=True):
        alone = true_state(one)
        assert together.flow == pytest.approx(alone.flow, rel=1e-9)
        assert kinds(together) == kinds(alone)


def test_a_plant_with_plenty_is_untouched() -> None:
    """To the last digit: its laws are the ordinary ones."""
    built = build([rig()])
    assert settle_in_place(built).laws is built.machines


def test_head_that_is_lost_is_what_the_factor_says() -> None:
    """One pump short of a little: its head over that with plenty is the factor at its NPSH over NPSH3.

    NPSH3 as the most that is required up to this flow: the motor's slip makes a level curve fall a little.
    """
    built = build([rig(**SHORT["single"])])
    machine = true_state(built).machines[0]
    law, flow = settle_in_place(built).laws["pumps"], np.array([[machine.flow]])
    assert isinstance(law, StarvedMachines) and machine.npsh_available is not None
    plenty, required = -built.machines["pumps"].head_drop(flow)[0], law.required(flow)
    factor, _ = head_factor(npsh_ratio(machine.npsh_available, required))
    assert machine.head == pytest.approx(float((factor * plenty)[0, 0]), rel=1e-9)
    assert machine.npsh_required <= required[0, 0] <= 1.01 * machine.npsh_required


@pytest.mark.parametrize("name", ["single", "in line", "side by side, unlike", "in line before a gear pump"])
def test_npsh_at_every_pump_never_rises_with_the_flow_of_the_line(name: str) -> None:
    """What makes the answer the only one; forward and backward."""
    built = build([rig(**SHORT[name])])
    flow = np.linspace(-0.01, 0.02, 400)
    available = in_place(built, flow).available
    assert (np.diff(available, axis=0) <= 1e-9 * np.abs(available[1:])).all()


def test_in_line_the_second_pump_has_the_head_of_the_first() -> None:
    """Sound, and with a strainer that starves the first until nothing is left to help the second."""
    sound = true_state(rig(pump=LINE))
    first, second = sound.machines
    assert first.npsh_available is not None and second.npsh_available is not None
    lost = next(block.head for block in sound.stack if block.block == "check-valve")
    assert lost is not None
    assert second.npsh_available == pytest.approx(first.npsh_available + first.head - lost / 2, rel=1e-6)
    starved = true_state(rig(**SHORT["in line"]))
    assert starved.machines[0].npsh_available < starved.machines[1].npsh_available  # type: ignore[operator]
    assert starved.machines[0].head < 0.5 * starved.machines[1].head


def test_throttling_the_discharge_cures_what_less_flow_cures() -> None:
    """Below the flow that the note names there is enough, just above not; nothing cures a dry pump."""
    state = true_state(rig(**SHORT["single"]))
    enough = next(note.facts["enough"] for note in state.notes if note.kind == "npsh-short")
    assert 0 < enough < state.flow
    flows: dict[bool, list[float]] = {True: [], False: []}
    for opening in np.linspace(0.02, 1.0, 12):
        now = true_state(rig(**(SHORT["single"] | {"valve": {"opening": float(opening)}})))
        flows["npsh-short" in noted(now)].append(now.flow)
    assert max(flows[False]) <= enough <= min(flows[True])
    for opening in (0.1, 1.0):
        assert "suction-dry" in noted(true_state(rig(**(SHORT["dry"] | {"valve": {"opening": opening}}))))


def test_throttling_the_suction_takes_npsh_away() -> None:
    """The same flow, once held by the discharge valve and once by a strainer: what each leaves the pump."""
    state = true_state(rig(valve={"opening": 0.35}))
    low, high = 0.8, 5e4
    for _ in range(20):
        k = (low + high) / 2
        other = true_state(rig(suction={"strainer_k": k}))
        low, high = (k, high) if other.flow > state.flow else (low, k)
    kept, taken = state.machines[0].npsh_available, other.machines[0].npsh_available
    assert kept is not None and taken is not None
    assert other.flow == pytest.approx(state.flow, rel=1e-3)
    assert taken < 0.5 * kept and "npsh-short" in noted(other) and "npsh-short" not in noted(state)


def test_a_suction_that_boils_passes_no_more_whatever_the_load() -> None:
    """A gear pump on a stopped-up strainer: the same flow against 14 m and against nothing; less pressure."""
    starved = SHORT["a gear pump"]
    far, near = (
        true_state(rig(**starved, delivery={"surface_m": h, "bottom_m": h - 1, "top_m": h + 2}))
        for h in (14.0, 2.0)
    )
    assert far.flow == pytest.approx(near.flow, rel=1e-12)
    assert near.machines[0].head < far.machines[0].head
    assert far.machines[0].volumetric_efficiency < 0.9  # type: ignore[operator]
    assert far.machines[0].npsh_available == pytest.approx(
        far.nodes["suction"].head  # type: ignore[arg-type]
        - 0.5 + (101325 - far.liquid.vapour_pressure) / (far.liquid.density * 9.80665),
        abs=1e-9,
    )  # fmt: skip


def test_the_pressure_at_a_boiling_flange_is_the_vapour_s() -> None:
    """By construction of the flow: exactly that, and not below it."""
    state = true_state(rig(**SHORT["a gear pump"]))
    assert state.nodes["suction"].pressure == pytest.approx(state.liquid.vapour_pressure - 101325, abs=0.1)


def test_dry_pumps_give_nothing_and_the_gauge_shows_vapour() -> None:
    """Centrifugal or gear pump, 13 m above the surface: the check valve holds what stands behind it."""
    for name in ("dry", "a dry gear pump"):
        state = true_state(rig(**SHORT[name]))
        assert state.flow == 0 and state.station.head == pytest.approx(0, abs=1e-3)
        assert state.nodes["suction"].pressure == pytest.approx(state.liquid.vapour_pressure - 101325)
        missing = next(note.facts["missing"] for note in state.notes if note.kind == "suction-dry")
        assert missing == pytest.approx(
            13 - 2 - (101325 - state.liquid.vapour_pressure) / (state.liquid.density * 9.80665), rel=1e-9
        )


def test_the_marks_say_where_it_begins() -> None:
    """At `begins` available is required, at the other two it is twice and five times that, on the columns."""
    drawn = curves(build([rig(suction={"strainer_k": 60.0})]), true_state(rig()).duty, 2000)
    npsh = drawn.npsh
    offered = np.array([np.nan if value is None else value for value in drawn.npsh_available])
    ratio = offered / np.array(drawn.npsh_required)
    assert npsh.begins is not None and npsh.bubbles_surely is not None and npsh.bubbles_first is not None
    assert npsh.bubbles_first < npsh.bubbles_surely < npsh.begins
    for mark, times in ((npsh.begins, 1.0), (npsh.bubbles_surely, 2.0), (npsh.bubbles_first, 5.0)):
        assert np.interp(mark, drawn.flow, ratio) == pytest.approx(times, rel=1e-3)


def test_the_station_s_curve_ends_where_the_suction_boils() -> None:
    """It falls straight down there and is not drawn beyond."""
    one = build([rig(**SHORT["a gear pump"])])
    state = true_state(one)
    drawn = curves(one, state.duty)
    assert drawn.npsh.boils == pytest.approx(state.station.flow, rel=1e-9)
    at = [head for flow, head in zip(drawn.flow, drawn.station, strict=True) if flow == drawn.npsh.boils]
    assert len(at) == 2 and at[1] == 0.0
    beyond = [h for flow, h in zip(drawn.flow, drawn.station, strict=True) if flow > drawn.npsh.boils]
    assert beyond and set(beyond) == {None}


@pytest.mark.parametrize("points", [12, 60])
@pytest.mark.parametrize("k", [900.0, 20000.0, 90000.0])
def test_curves_of_a_choked_suction_start_at_no_flow_and_pass_the_duty(k: float, points: int) -> None:
    """Also where it boils before the second of the even points, and where the head bends between two."""
    one = build([rig(**clogged(k) | WIDE | {"pump": SIDE})])
    duty = true_state(one).duty
    drawn = curves(one, duty, points)
    assert drawn.flow[0] == 0 and list(drawn.flow) == sorted(drawn.flow)
    at = [head for flow, head in zip(drawn.flow, drawn.station, strict=True) if flow == duty.flow]
    assert at and at[0] == pytest.approx(duty.head, abs=1e-3 * float(one.head_scale[0]))


def test_a_pump_that_gives_nothing_for_want_of_npsh_says_so() -> None:
    """Held shut by a pump beside it that needs less, or before a shut valve: its head is gone too."""
    beside = true_state(rig(**clogged(550.0) | {"pump": SIDE | {"second": {"model": "large"}}}))
    note = next(n for n in beside.notes if n.kind == "npsh-short" and n.where == "pump-2")
    assert beside.machines[1].flow == 0 and note.facts["lost"] > beside.machines[1].head
    assert 0 < note.facts["enough"] < beside.station.flow  # less flow of the other cures it
    supply = {"surface_m": -8.2, "bottom_m": -9.0}
    alone = true_state(rig(supply=supply, valve={"opening": 0.0}))
    assert [n.facts["enough"] for n in alone.notes if n.kind == "npsh-short"] == [0.0]


def test_a_suction_at_vapour_pressure_is_not_below_it() -> None:
    """Where no liquid reaches the pumps vapour stands in front of them, and not less by the last digit."""
    for above in np.linspace(3000.0, 5000.0, 11):
        supply = {"surface_m": -5.0, "bottom_m": -6.0}
        state = true_state(rig(supply=supply, site={"altitude_m": float(above)}))
        if "suction-dry" in noted(state):
            assert "below-vapour-pressure" not in noted(state)


@pytest.mark.parametrize(
    ("tables", "hunts"),
    [
        ({}, False),
        ({"suction": {"strainer_k": 130.0}, "valve": {"opening": 0.8}}, False),  # bubbles alone
        (SHORT["single"], True),
        (SHORT["a gear pump"], True),
        ({"suction": {"mouth_m": 1.9}}, True),
    ],
)
def test_readings_hunt_where_head_is_lost_or_air_is_drawn(tables: dict[str, Any], hunts: bool) -> None:
    """Common practice; a margin that is merely small shows on no gauge."""
    assert true_state(rig(**tables)).hunting is hunts


def test_no_pump_lives_on_what_is_locked_in_between_two_check_valves() -> None:
    """Far too little NPSH in line: the first gives no head, nor does the second, whatever holds behind it."""
    plant = rig(supply={"surface_m": -9.0, "bottom_m": -12.0}, pump={"arrangement": "in-line"})
    state = true_state(plant)
    assert state.station.flow == 0 and state.converged
    assert all(0 <= machine.head < 1e-3 for machine in state.machines)
