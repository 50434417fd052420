"""A pump whose curve droops, through time: it stays in its state until that is there no more."""

from __future__ import annotations

from typing import Any

import pytest
from tests.clocks import everything, happenings
from tests.drooping import lifting

from loadfirst.clock.begin import begin
from loadfirst.clock.moment import Moment
from loadfirst.clock.run import run
from loadfirst.plant.pumps import ResolvedPlant

SHUT_OFF, PEAK, PEAK_FLOW = 24.0, 28.0, 10.0 / 3600
"""Of the curve: 24 m at no flow, 28 m at 10 m³/h."""


def plant(lift: float, draw: float) -> ResolvedPlant:
    """Lifts so far into a narrow vessel from which users draw [m³/h]."""
    vessel: dict[str, Any] = {"surface_m": lift + 2, "bottom_m": 20.0, "top_m": 34.0}
    return lifting(
        lift,
        supply={"area_m2": 1e4},
        delivery={**vessel, "area_m2": 0.5, "draw_m3h": draw},
        drive={"efficiency_class": "IE4"},
    )


def lift_of(moment: Moment) -> float:
    """From surface to surface; the supply's hardly moves. [m]"""
    level = moment.delivery.bottom_m + moment.delivery.volume[0] / moment.delivery.area_m2
    return level - moment.supply.bottom_m - moment.supply.volume[0] / moment.supply.area_m2


def run_until(kind: str, one: ResolvedPlant, moment: Moment, span: float) -> tuple[Moment, list[str]]:
    """Until that has happened; all that did, in its order."""
    seen: list[str] = []
    for _ in range(25):
        ran = run(one, moment, span)
        moment = ran.moment
        seen += [name for name, _ in happenings(ran)]
        if kind in seen:
            return moment, seen
    raise AssertionError(f"{kind} has not happened, but {seen}")


@pytest.mark.native
def test_flow_falls_back_at_the_peak_and_recovers_only_below_shut_off() -> None:
    """Between the two heads both states last: which of them is there, the way there says.

    The heads are to each other as those of the curve, whatever speed the motor holds.
    """
    filling, drained = plant(26.0, 0.0), plant(26.0, 12.0)
    begun = begin(filling)
    assert begun.flows["discharge-line"] > PEAK_FLOW
    full, up = run_until("check-shuts", filling, begun, 30.0)
    assert up == ["flow-falls-back", "check-shuts"]
    empty, down = run_until("flow-recovers", drained, full, 60.0)
    assert down == ["check-opens", "flow-recovers"]
    assert empty.flows["discharge-line"] > PEAK_FLOW
    assert lift_of(empty) / lift_of(full) == pytest.approx(SHUT_OFF / PEAK, abs=0.03)
    assert everything(empty) == pytest.approx(everything(begun), abs=1e-12)
