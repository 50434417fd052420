"""A viscous liquid: factors, their limits, and how they go with speed."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.changed import at_ratio, check_same, check_sound
from tests.pumps import RADIAL, pumps

from loadfirst.errors import InputError
from loadfirst.physics.centrifugal import PumpCurve
from loadfirst.physics.changes import viscosity
from loadfirst.physics.changes.viscosity import CENTISTOKE, factors, thicken

liquids = st.floats(-8, 0).map(lambda x: 10.0**x)  # [m²/s] from thinner than any liquid to tar


def thickened(pump: PumpCurve, nu: float, speed: float | None = None) -> PumpCurve:
    """The pump with a liquid of this viscosity in m²/s."""
    return thicken(pump, factors(pump, nu, speed))


@given(pumps(), liquids, st.floats(0.2, 2))
def test_a_pump_with_a_viscous_liquid_is_a_pump(pump: PumpCurve, nu: float, ratio: float) -> None:
    """Whatever the curve, the liquid and the speed, the law stays one."""
    check_sound(thickened(pump, nu, ratio * pump.speed), pump)


@given(pumps(), st.floats(0, CENTISTOKE))
def test_water_and_thinner_liquids_change_nothing(pump: PumpCurve, nu: float) -> None:
    """Even in a pump so small that B is above 1 with water: its curve was measured with that."""
    by = factors(pump, nu)
    assert (by.flow, by.efficiency, by.npsh) == (1, 1, 1) and by.notes == ()
    check_same(thicken(pump, by), pump)


def test_the_factors_fall_with_the_viscosity_and_are_held_at_the_limit() -> None:
    """From 1 downward without a step, then constant beyond B = 40."""
    every = [factors(RADIAL, nu * CENTISTOKE) for nu in np.geomspace(1, 1e5, 2000)]
    for name, sign in (("flow", -1), ("efficiency", -1), ("npsh", 1)):
        values = np.array([getattr(by, name) for by in every])
        assert values[0] == 1
        assert (sign * np.diff(values) >= 0).all()
        assert np.abs(np.diff(values)).max() < 0.02
        assert values[-1] == values[-2]


def test_beyond_the_limit_nothing_is_continued_and_the_notes_say_so() -> None:
    """At 4000 cSt and above: same factors, viscosity and parameter both noted as held."""
    edge, beyond = factors(RADIAL, 4000 * CENTISTOKE), factors(RADIAL, 20_000 * CENTISTOKE)
    assert (beyond.flow, beyond.efficiency, beyond.npsh) == (edge.flow, edge.efficiency, edge.npsh)
    held = {note.limit: note for note in beyond.notes if note.range.held}
    assert set(held) == {"viscosity", "parameter"}
    assert held["viscosity"].got == pytest.approx(20_000)
    assert beyond.parameter > edge.parameter


def test_within_the_limits_there_is_no_note() -> None:
    """An ordinary pump with a light oil."""
    assert factors(RADIAL, 46 * CENTISTOKE).notes == ()


def test_a_pump_unlike_those_of_the_tests_is_noted_but_not_held() -> None:
    """Half a cubic metre an hour is less than the tests had."""
    small = at_ratio(RADIAL, 0.05)
    limits = {note.limit: note.range.held for note in factors(small, 46 * CENTISTOKE).notes}
    assert limits.get("flow") is False and limits.get("head") is False


def test_the_shut_off_head_stays_and_the_power_rises() -> None:
    """CH is 1 at no flow; an oil of 100 cSt costs power everywhere and efficiency most."""
    changed = thickened(RADIAL, 100 * CENTISTOKE)
    assert changed.shut_off_head == RADIAL.shut_off_head
    flow = np.linspace(0, changed.last_flow, 30)
    head, power, npsh = changed.at(flow)
    head_water, power_water, npsh_water = RADIAL.at(flow)
    assert (head[1:] < head_water[1:]).all() and (power > power_water).all() and (npsh > npsh_water).all()
    assert changed.best_efficiency < 0.8 * RADIAL.best_efficiency


def test_the_side_inlet_needs_more_npsh() -> None:
    """A is 0.5 in place of 0.1."""
    end = factors(RADIAL, 1e-4).npsh
    side = factors(RADIAL, 1e-4, inlet=viscosity.SIDE_INLET).npsh
    assert side - 1 == pytest.approx(5 * (end - 1), rel=1e-9)


@given(pumps(), liquids, st.floats(0.2, 2))
def test_correcting_for_a_speed_is_correcting_the_curve_of_that_speed(
    pump: PumpCurve, nu: float, ratio: float
) -> None:
    """Water first moved to the speed, then corrected; or corrected for the speed, then moved."""
    check_same(
        thickened(at_ratio(pump, ratio), nu),
        at_ratio(thickened(pump, nu, ratio * pump.speed), ratio),
        within=1e-5,
    )


def test_a_slower_pump_suffers_more() -> None:
    """B goes with 1/√n: half the speed is as bad as twice the viscosity."""
    fast, slow = factors(RADIAL, 5e-5), factors(RADIAL, 5e-5, 0.5 * RADIAL.speed)
    assert slow.parameter / fast.parameter == pytest.approx(np.sqrt(2), rel=1e-9)
    assert slow.parameter == pytest.approx(factors(RADIAL, 1e-4).parameter, rel=1e-9)
    assert slow.flow < fast.flow and slow.efficiency < fast.efficiency


def test_the_head_factor_never_rises_and_stays_above_nought() -> None:
    """Far beyond the best point it is held."""
    for nu in (1e-5, 1e-4, 1e-2):
        head = factors(RADIAL, nu).head(np.linspace(0, 20, 500))
        assert head[0] == 1 and (np.diff(head) <= 0).all() and head[-1] > 0.25


@pytest.mark.parametrize("nu", [-1e-6, 2.0, float("nan")])
def test_no_viscosity_outside_its_range(nu: float) -> None:
    """Refused by name."""
    with pytest.raises(InputError, match="liquid.viscosity"):
        factors(RADIAL, nu)


@pytest.mark.parametrize("speed", [0.0, -10.0, float("nan")])
def test_no_speed_that_is_none(speed: float) -> None:
    """Refused by name."""
    with pytest.raises(InputError, match="drive.speed"):
        factors(RADIAL, 1e-5, speed)
