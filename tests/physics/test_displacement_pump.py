"""What a maker prints of a displacement pump, and what is made of it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.displacement import GEAR, pumps

from loadfirst.errors import InputError
from loadfirst.physics.displacement_pump import (
    KINDS,
    MOST_DRAG,
    DisplacementPump,
    laminar_share,
    worn_clearance,
)
from loadfirst.units import BAR


def made(**changes: object) -> DisplacementPump:
    """The ordinary gear pump with other numbers in print."""
    names = (
        "kind displacement speed pressure viscosity density "
        "volumetric_efficiency mechanical_efficiency npsh_required"
    )
    printed = {name: getattr(GEAR, name) for name in names.split()}
    return DisplacementPump(**(printed | changes))


@given(pumps())
def test_slip_and_torque_add_up_to_the_makers_point(pump: DisplacementPump) -> None:
    """Whatever the kind: the split is usual, the sum is the maker's."""
    ideal = pump.per_radian * pump.speed
    slip = (1 - pump.volumetric_efficiency) * ideal
    over = pump.laminar * pump.viscosity * slip + pump.inertia * pump.density * slip**2
    assert over == pytest.approx(pump.pressure, rel=1e-9)
    torque = (
        pump.per_radian * pump.pressure * (1 + pump.friction)
        + pump.drag * pump.viscosity * pump.speed
        + pump.bearings
    )
    wanted = pump.per_radian * pump.pressure / pump.mechanical_efficiency
    assert torque == pytest.approx(wanted, rel=1e-9)
    assert pump.rated_power == pytest.approx(wanted * pump.speed)
    assert pump.rated_flow == pytest.approx(ideal - slip, abs=1e-12 * ideal)


@given(pumps())
def test_no_part_of_a_loss_is_negative(pump: DisplacementPump) -> None:
    """Clearances always let through, and friction never helps."""
    assert pump.laminar > 0 and pump.inertia >= 0
    assert min(pump.friction, pump.drag, pump.bearings) >= 0
    lost = 1 / pump.mechanical_efficiency - 1
    share = pump.drag / pump.per_radian * pump.viscosity * pump.speed / pump.pressure
    assert share <= MOST_DRAG * lost * (1 + 1e-9)


@pytest.mark.parametrize("kind", KINDS)
def test_on_oil_clearances_rub_and_on_water_they_jet(kind: str) -> None:
    """The thinner the liquid, the more of the pressure goes into speed."""
    shares = [laminar_share(KINDS[kind], 10 * BAR, thick, 900.0) for thick in (1e-3, 1e-2, 0.1, 10.0)]
    assert shares == sorted(shares)
    assert shares[0] < 0.7 and shares[-1] == pytest.approx(1, abs=1e-3)


def test_the_gaps_share_is_the_root_of_its_own_equation() -> None:
    """12 μ v/gap + 1.5 ρ v²/2 = Δp/gaps, put back in."""
    kind, pressure, thick, dense = KINDS["gear"], 7 * BAR, 2e-3, 850.0
    share = laminar_share(kind, pressure, thick, dense)
    speed = share * pressure / kind.gaps / (12 * thick / kind.gap)
    assert 12 * thick * speed / kind.gap + 0.75 * dense * speed**2 == pytest.approx(pressure / kind.gaps)


def test_a_limit_left_out_is_the_rated_pressure() -> None:
    """A maker who prints no more allows no more."""
    assert made().pressure_limit == GEAR.pressure
    assert GEAR.pressure_limit == 12 * BAR


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("kind", "piston", "one of gear, lobe, screw"),
        ("displacement", 0.0, "above 0"),
        ("speed", float("nan"), "above 0"),
        ("volumetric_efficiency", 1.0, "above 0 and below 1"),
        ("mechanical_efficiency", 1.01, "above 0, to 1"),
        ("npsh_required", -1.0, "0 m or more"),
        ("pressure_limit", 5 * BAR, "the rated pressure or more"),
    ],
)
def test_what_no_maker_could_print_is_refused(name: str, value: object, said: str) -> None:
    """The error names the key and what would do."""
    with pytest.raises(InputError, match=f"pump.{name} is .*{said}"):
        made(**{name: value})


def test_a_pump_is_compared_by_its_numbers() -> None:
    """Two of the same print are the same pump."""
    assert replace(GEAR) == GEAR


@given(pumps(), st.floats(0, 0.5))
def test_a_worn_pump_slips_more_by_its_wear_at_the_makers_point(pump: DisplacementPump, wear: float) -> None:
    """Higher gaps pass the added share of the rated flow at the rated pressure, neither more nor less."""
    c = worn_clearance(pump, wear)
    slip = pump.per_radian * pump.speed - pump.rated_flow + wear * pump.rated_flow
    rubbed = pump.laminar * pump.viscosity * slip / c**3
    fast = pump.inertia * pump.density * slip**2 / c**2
    assert c >= 1
    assert rubbed + fast == pytest.approx(pump.pressure, rel=1e-9)


def test_a_new_pump_has_the_makers_gaps() -> None:
    """No wear, no change, to the last digit."""
    assert worn_clearance(GEAR, 0.0) == 1.0
