"""Where a note begins, and what a default or a neighbour must not change."""

from __future__ import annotations

from typing import Any

import pytest
from tests.rig import rig

from loadfirst.instruments.panel import readings
from loadfirst.physics.motor import Motor
from loadfirst.plant.state import State, true_state, true_states
from loadfirst.units import BAR, PERCENT, G


def said(state: State) -> set[str]:
    """Kinds of the notes given."""
    return {note.kind for note in state.notes}


@pytest.mark.parametrize(("times", "overload"), [(0.999, True), (1.001, False)])
def test_overload_begins_at_the_rated_power(times: float, overload: bool) -> None:
    """A motor of just the power that the pump takes, found step by step: its size moves the slip."""
    power = 7.5
    for _ in range(8):
        power = true_state(rig(drive={"motor_kw": power})).machines[0].shaft_power / 1e3
    assert ("overload" in said(true_state(rig(drive={"motor_kw": times * power})))) is overload


@pytest.mark.parametrize(("spare", "short"), [(-0.01, True), (0.01, False)])
def test_npsh_falls_short_where_less_is_available_than_required(spare: float, short: bool) -> None:
    """The barometer is lowered until so much is to spare: what is available changes the flow, and it that."""
    low, high = 0.3, 1.1
    for _ in range(40):
        middle = (low + high) / 2
        state = true_state(rig(suction={"strainer_k": 200}, site={"barometer_bar": middle}))
        machine = state.machines[0]
        assert machine.npsh_available is not None
        enough = machine.npsh_available - machine.npsh_required > spare
        low, high = (low, middle) if enough else (middle, high)
    assert machine.npsh_available - machine.npsh_required == pytest.approx(spare, abs=1e-6)
    assert ("npsh-short" in said(state)) is short


@pytest.mark.parametrize(("times", "boils"), [(1.001, True), (0.999, False)])
def test_a_liquid_boils_below_its_vapour_pressure(times: float, boils: bool) -> None:
    """At an open surface that is the air's pressure."""
    liquid = {"name": "ether", "density_kgm3": 900, "viscosity_mpas": 1, "vapour_bar": times * 1.01325}
    places = {n.where for n in true_state(rig(liquid=liquid)).notes if n.kind == "below-vapour-pressure"}
    assert ("supply-surface" in places) is boils


@pytest.mark.parametrize("supply", [50, 60])
def test_without_a_drive_the_supplys_frequency_reaches_the_motor(supply: int) -> None:
    """3000 or 3600 turns a minute with two poles."""
    plain, said_so = (
        true_state(rig(drive={"supply_hz": supply} | more)) for more in ({}, {"frequency_hz": supply})
    )
    assert plain == said_so
    assert plain.synchronous_speed == pytest.approx(supply * 2 * 3.141592653589793, rel=1e-12)


def test_each_gauge_has_its_own_dial() -> None:
    """Height, range and class of one do not change another."""
    gauges = {
        place: {"height_m": 0.5 + number, "range_bar": [-1, 10 + number], "class": 1 + number}
        for number, place in enumerate(("suction", "discharge", "after_valve"))
    }
    one = rig(gauges=gauges)
    state = true_state(one)
    nodes = ("suction", "discharge", "after-valve")
    for number, (node, shown) in enumerate(zip(nodes, readings(state, one.plant), strict=False)):
        pressure = state.nodes[node].pressure
        assert pressure is not None
        assert shown.value == pytest.approx(pressure - state.liquid.density * G * number, rel=1e-9)
        assert shown.high == pytest.approx((10 + number) * BAR)
        assert shown.accuracy == pytest.approx((1 + number) * PERCENT * (11 + number) * BAR)


def test_an_ammeter_that_suits_the_motor_reaches_half_as_far_again() -> None:
    """The next usual scale above one and a half times the rated current: 13.8 A on 25 A (common practice)."""
    one = rig()
    rated = float(Motor.rated(7500.0).rated_current[0, 0])
    ammeter = next(shown for shown in readings(true_state(one), one.plant) if shown.id == "ammeter-1")
    assert 1.4 * rated < 20 < 1.5 * rated < ammeter.high == pytest.approx(25.0)


def test_an_end_that_nothing_leaves_takes_the_head_upon_itself() -> None:
    """A slow pump without check valve below a free outlet: what is lacking is a block of its own."""
    slow: dict[str, Any] = {"frequency_hz": 20.0}
    state = true_state(rig(drive=slow, check={"fitted": False}, delivery={"outlet_m": 15.5}))
    blocks = {block.block: block.head for block in state.stack}
    assert state.flow == 0.0
    assert blocks["not-reached"] == pytest.approx(state.station.head - 13.5, rel=1e-9)


def test_pressures_at_both_ends_of_the_way_are_those_of_the_vessels() -> None:
    """At rest at the supply's bottom; in the pipe's end, where an exit loss of 0.4 is still to come."""
    state = true_state(rig(delivery={"outlet_m": 15.5}, discharge={"fittings_k": 0.4}))
    place = {point.place: point for point in state.path}
    weight = state.liquid.density * G
    assert place["supply-outlet"].pressure == pytest.approx(2.0 * weight, rel=1e-12)
    speed = state.flow / (3.141592653589793 / 4 * 0.08**2)
    assert place["pipe-end"].pressure == pytest.approx((0.4 - 1.0) * state.liquid.density * speed**2 / 2)


def test_gas_on_liquids_of_different_weight_in_one_batch() -> None:
    """Each plant divides by its own liquid's weight."""
    oil = {"name": "oil", "density_kgm3": 700, "viscosity_mpas": 1, "vapour_bar": 0}
    plants = [rig(delivery={"gas_bar": 2}), rig(delivery={"gas_bar": 2}, liquid=oil)]
    for together, alone in zip(true_states(plants), map(true_state, plants), strict=True):
        assert together.flow == pytest.approx(alone.flow, rel=1e-9)
