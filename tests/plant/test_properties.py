"""What holds for every plant, whatever its numbers."""

from __future__ import annotations

from typing import Any

import msgspec
import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.strategies import plants

from loadfirst.plant.build import build
from loadfirst.plant.curves import curves, load_curve, station_curve
from loadfirst.plant.plant import SecondPump
from loadfirst.plant.pumps import SOUND, ResolvedPlant
from loadfirst.plant.solved import solve_plants
from loadfirst.plant.state import State, true_state, true_states

EXAMPLES = settings(deadline=None, max_examples=60)


def change(one: ResolvedPlant, table: str, **keys: Any) -> ResolvedPlant:
    """The plant with some keys of one table changed."""
    part = msgspec.structs.replace(getattr(one.plant, table), **keys)
    return one._replace(plant=msgspec.structs.replace(one.plant, **{table: part}))


def slack(state: State) -> float:
    """What two flows may differ by and yet be the same. [m³/s]"""
    return 1e-8 * (state.flow_scale + abs(state.flow))


def head_slack(one: ResolvedPlant) -> float:
    """What two heads may differ by and yet be the same. [m]"""
    return 1e-8 * float(build([one]).head_scale[0])


@EXAMPLES
@given(plants(attached=[True]), st.floats(0, 1), st.floats(0, 1))
def test_shutting_a_valve_never_raises_the_flow_through_it(one: ResolvedPlant, a: float, b: float) -> None:
    """The first lesson of throttling, forward or backward."""
    tight = true_state(change(one, "valve", opening=min(a, b)))
    wide = true_state(change(one, "valve", opening=max(a, b)))
    assert abs(tight.flow) <= abs(wide.flow) + slack(wide)


@EXAMPLES
@given(plants(wild=[0, 1], machines=["centrifugal"]), st.floats(1, 3))
def test_a_bigger_pump_never_lowers_the_flow_nor_the_head(one: ResolvedPlant, factor: float) -> None:
    """On the same load: more flow, and more head wherever the load rises with flow (here never less).

    As long as the pump adds head: dragged out beyond that, a bigger one is the greater brake.
    """
    curve = one.curve
    bigger = msgspec.structs.replace(
        curve,
        head_m=tuple(factor * head for head in curve.head_m),
        power_kw=None if curve.power_kw is None else tuple(factor * power for power in curve.power_kw),
        motor_kw=factor * curve.motor_kw,
    )
    one = change(one, "drive", motor_kw=None)
    before, after = true_state(one), true_state(one._replace(curve=bigger))
    assume(min(machine.head for machine in before.machines) >= 0)
    assert after.flow >= before.flow - slack(after)
    assert after.station.head >= before.station.head - head_slack(one)


@EXAMPLES
@given(plants(arrangements=["single"], machines=["centrifugal", "displacement"]))
def test_two_equal_pumps_side_by_side_never_give_more_than_twice_the_flow(one: ResolvedPlant) -> None:
    """A falling curve on a rising load: the second pump always adds less than the first gave."""
    one = change(one, "check", fitted=True, stuck_open=False, leak_kv_m3h=0.0)
    one = change(one, "return_line", fitted=False)  # it leaves before a single pump's check valve only
    one = change(one, "relief", fitted=False)  # so does this
    one = change(one, "pump", **SOUND._asdict())
    one = change(one, "pump", second=SecondPump())
    alone, both = true_state(one), true_state(change(one, "pump", arrangement="side-by-side"))
    assume(one.plant.discharge.attached)  # with the line off, the single pump's check valve is off too
    first, second = alone.station.flow, both.station.flow
    assert first - slack(alone) <= second <= 2 * first + slack(both)


@EXAMPLES
@given(plants())
def test_load_and_station_curves_meet_at_the_answer(one: ResolvedPlant) -> None:
    """Forcing the answer's flow through the gap, and through the station, gives the answer's head twice."""
    built, state = build([one]), true_state(one)
    assume(state.station.flow > 0)  # else a check valve may hold while a branch feeds the line
    asked, known = load_curve(built, np.array([[state.station.flow]]))
    answered = station_curve(built, np.array([[state.station.flow]]))
    near = 1e-7 * float(built.head_scale[0])  # a steep load turns 1e-9 of flow into more head
    assert known.all()
    assert asked[0, 0] == pytest.approx(state.station.head, abs=near)
    if "suction-boils" in [note.kind for note in state.notes]:  # down the cliff
        assert answered[0, 0] >= state.station.head - near
    else:
        assert answered[0, 0] == pytest.approx(state.station.head, abs=near)


@EXAMPLES
@given(plants())
def test_the_displayed_balance_closes(one: ResolvedPlant) -> None:
    """Pressure, height, velocity and check valves add up to the pumps' own head; so do the load's blocks.

    Unless nobody knows a part: then at least two blocks are unknown, at no flow.
    """
    state = true_state(one)
    *parts, answer = msgspec.structs.astuple(state.balance)
    blocks = [block.head for block in state.stack]
    own = pytest.approx(state.station.head, abs=head_slack(one))
    assert answer == own
    assert None in parts or sum(parts) == own
    if None in blocks:
        assert blocks.count(None) > 1 and state.flow == 0
    else:
        assert sum(blocks) == own


@EXAMPLES
@given(plants())
def test_what_the_pumps_give_together_is_what_arrives(one: ResolvedPlant) -> None:
    """Mass balance of the whole plant, in the numbers that are shown."""
    state = true_state(one)
    flows = [machine.flow for machine in state.machines]
    given_by_pumps = sum(flows) if one.plant.pump.arrangement == "side-by-side" else flows[0]
    least = solve_plants(build([one])).of(0).least_flow  # below it a flow is shown as none
    slight = (2 + len(state.aside)) * 1.1 * least
    arriving = state.flow + sum(flow for name, flow in state.aside.items() if name != "second-line")
    assert given_by_pumps == pytest.approx(state.station.flow, abs=slight)
    assert state.station.flow == pytest.approx(arriving, abs=slight)


@settings(deadline=None, max_examples=15)
@given(st.lists(plants(), min_size=2, max_size=6))
def test_a_batch_of_any_shapes_equals_its_plants_one_by_one(some: list[ResolvedPlant]) -> None:
    """Plants that are solved together know nothing of each other."""
    for one, together in zip(some, true_states(some), strict=True):
        alone, heads = true_state(one), head_slack(one)
        assert together.flow == pytest.approx(alone.flow, abs=slack(alone))
        assert together.station.head == pytest.approx(alone.station.head, abs=heads)
        assert [note.kind for note in together.notes] == [note.kind for note in alone.notes]


@settings(deadline=None, max_examples=30)
@given(plants(wild=[0, 3, 10]))
def test_every_number_of_a_state_is_finite(one: ResolvedPlant) -> None:
    """JSON has no infinity: what is no number is None, in a state and in its curves."""
    built = build([one])
    state = true_state(built)
    assert state.converged
    numbers = [state.flow, state.synchronous_speed, state.station.head, state.balance.answer]
    parts = (state.station, state.balance, *state.stack, *state.machines, *state.nodes.values(), *state.path)
    for part in parts:
        numbers += [value for value in msgspec.structs.astuple(part) if isinstance(value, float)]
    drawn = curves(built, state.duty)
    columns = [column for column in msgspec.structs.astuple(drawn) if isinstance(column, tuple)]
    columns.append(msgspec.structs.astuple(drawn.npsh))
    numbers += [value for column in columns for value in column if value is not None]
    assert np.isfinite(numbers).all()
