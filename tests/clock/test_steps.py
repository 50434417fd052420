"""Steps: of second order, stable at any size, and they lose nothing."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace
from tests.clocks import everything, in_steps
from tests.rig import rig

from loadfirst.clock.advance import advance
from loadfirst.clock.begin import begin
from loadfirst.clock.moment import Moment
from loadfirst.clock.run import run
from loadfirst.plant.pumps import ResolvedPlant

BUSY: dict[str, dict[str, Any]] = {
    "supply": {"area_m2": 2.0, "inflow_m3h": 20.0, "top_m": 4.0, "bottom_m": 0.0},
    "delivery": {"area_m2": 0.8, "draw_m3h": 20.0, "bottom_m": 12.0, "top_m": 16.0},
    "return_line": {"fitted": True},
    "branch": {"fitted": True, "opening": 0.4},
}


def slowed(plant: ResolvedPlant, share: float = 0.2) -> Moment:
    """A moment at which the lines carry a share of their flow."""
    moment = begin(plant)
    return replace(moment, flows={name: share * flow for name, flow in moment.flows.items()})


def test_the_error_falls_with_the_square_of_the_step() -> None:
    """Flow and volumes of a plant that gets going, against steps a hundred times finer."""
    plant = rig(supply={"area_m2": 0.2}, delivery={"area_m2": 0.2})
    start = slowed(plant)

    def after(count: int) -> Moment:
        moment = start
        for _ in range(count):
            moment = advance(plant, moment, 0.5 / count, (0.0,), 1.0).moment
        return moment

    fine = after(400)

    def off(count: int) -> tuple[float, float]:
        coarse = after(count)
        return (
            abs(coarse.flows["discharge-line"] - fine.flows["discharge-line"]),
            abs(coarse.supply.volume[0] - fine.supply.volume[0]),
        )

    for coarse, half in zip(off(8), off(16), strict=True):
        assert 3.5 < coarse / half < 4.6


@pytest.mark.parametrize("span", [1e-3, 0.0167, 0.1, 1.67, 30.0, 600.0, 3600.0])
@pytest.mark.parametrize("stop", [False, True])
def test_a_step_of_any_size_is_finite_and_balanced(span: float, stop: bool) -> None:
    """Whatever has been switched just before."""
    plant = rig(**BUSY)
    moment = begin(plant)
    if stop:
        plant = rig(**BUSY, pump={"running": False, "model": "medium"}, valve={"opening": 0.1})
    for _ in range(2):
        ran = run(plant, moment, span)
        assert bool(ran.step.stage.solved.solution.converged[0])
        assert ran.moment.seconds == pytest.approx(moment.seconds + span, rel=1e-12)
        assert everything(ran.moment) == pytest.approx(everything(moment), abs=1e-12)
        assert min(ran.moment.supply.volume[0], ran.moment.delivery.volume[0]) >= 0
        moment = ran.moment


def test_a_balance_of_a_day_closes_to_round_off() -> None:
    """Vessels run over and are drawn from all the while."""
    inflow = {**BUSY, "supply": {**BUSY["supply"], "inflow_m3h": 70.0}}
    plant = rig(**inflow)
    start = begin(plant)
    end = in_steps(plant, start, 300.0, 288)
    assert end.seconds == 86_400.0
    assert end.came[0] == pytest.approx(-70.0 * 24, rel=1e-12)
    assert end.overflowed[0] > 100 and end.drawn[0] == pytest.approx(20.0 * 24, rel=1e-9)
    assert abs(everything(end) - everything(start)) <= 1e-15 * 70.0 * 24


def test_a_plant_in_balance_stands_still() -> None:
    """What the plain answer says is where the clock begins, and where it stays while levels stand."""
    wide: dict[str, Any] = {"supply": {"area_m2": 1e5}, "delivery": {"area_m2": 1e5}}
    plant = rig(**wide)
    moment = begin(plant)
    for span in (1e-3, 1.0, 60.0):
        flows = run(plant, moment, span).moment.flows
        assert flows["discharge-line"] == pytest.approx(moment.flows["discharge-line"], rel=1e-6)


def test_many_short_steps_and_one_long_one_lead_to_the_same_moment() -> None:
    """Within the accuracy that the page has."""
    plant = rig(supply={"area_m2": 1.0}, delivery={"area_m2": 1.0})
    start = slowed(plant)
    long, short = run(plant, start, 60.0).moment, in_steps(plant, start, 0.5, 120)
    assert long.supply.volume[0] == pytest.approx(short.supply.volume[0], rel=2e-4)
    assert long.flows["discharge-line"] == pytest.approx(short.flows["discharge-line"], rel=2e-3)


def test_a_moved_surface_is_where_the_hand_put_it() -> None:
    """And the account of hands knows what it took."""
    plant, lower = rig(), rig(supply={"surface_m": 1.0, "bottom_m": 0.0, "top_m": 4.0})
    moment = run(plant, begin(plant), 10.0).moment
    after = run(lower, moment, 1e-3).moment
    assert after.supply.volume[0] == pytest.approx(4.0, abs=1e-3)
    assert after.by_hand[0] == pytest.approx(moment.supply.volume[0] - 4.0, abs=1e-9)
    assert everything(after) == pytest.approx(everything(moment), abs=1e-12)
