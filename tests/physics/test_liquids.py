"""Liquids: what they refuse, and how water behaves between freezing and boiling."""

from __future__ import annotations

import pytest

from loadfirst.errors import InputError
from loadfirst.physics.liquids import Liquid, water
from loadfirst.units import ATMOSPHERE


@pytest.mark.parametrize("celsius", [-0.01, 100.01, float("nan")])
def test_water_that_would_freeze_or_boil_is_refused(celsius: float) -> None:
    """The error says what it was and what would do."""
    with pytest.raises(InputError) as caught:
        water(celsius)
    assert caught.value.text == f"liquid.temperature_c is {celsius!r}, but must be from 0 to 100 °C."
    assert caught.value.facts == {"low": 0, "high": 100, "unit": "°C"}


@pytest.mark.parametrize(
    ("density", "viscosity", "vapour_pressure", "says"),
    [
        (0.0, 1e-3, 0.0, "liquid.density is 0.0, but must be above 0 kg/m³."),
        (float("nan"), 1e-3, 0.0, "liquid.density is nan, but must be above 0 kg/m³."),
        (1000.0, -1e-3, 0.0, "liquid.viscosity is -0.001, but must be above 0 Pa s."),
        (1000.0, 1e-3, -1.0, "liquid.vapour_pressure is -1.0, but must be 0 Pa absolute or more."),
        (1000.0, 1e-3, float("inf"), "liquid.vapour_pressure is inf, but must be 0 Pa absolute or more."),
    ],
)
def test_an_impossible_liquid_is_refused(
    density: float, viscosity: float, vapour_pressure: float, says: str
) -> None:
    """NaN and infinity are refused with the rest."""
    with pytest.raises(InputError) as caught:
        Liquid("oil", density, viscosity, vapour_pressure)
    assert caught.value.text == says


def test_kinematic_viscosity_is_dynamic_viscosity_over_density() -> None:
    """By definition: 9 mPa s at 900 kg/m³ is 10 mm²/s."""
    assert Liquid("oil", 900.0, 9e-3, 0.0).kinematic == pytest.approx(1e-5, rel=1e-15)


def test_warmer_water_is_thinner_and_readier_to_boil() -> None:
    """Viscosity falls and vapour pressure rises all the way, without a step."""
    every_degree = [water(float(celsius)) for celsius in range(101)]
    viscosity = [liquid.viscosity for liquid in every_degree]
    vapour_pressure = [liquid.vapour_pressure for liquid in every_degree]
    assert viscosity == sorted(viscosity, reverse=True)
    assert vapour_pressure == sorted(vapour_pressure)
    assert max(b / a for a, b in zip(vapour_pressure, vapour_pressure[1:], strict=False)) < 1.08


def test_water_is_heaviest_near_four_degrees() -> None:
    """The anomaly of water: denser at 4 °C than on either side."""
    assert max(range(101), key=lambda celsius: water(float(celsius)).density) == 4


def test_water_boils_at_the_atmosphere_just_below_a_hundred_degrees() -> None:
    """IAPWS: 99.97 °C at 101 325 Pa (from memory; the Celsius scale is no longer fixed by boiling water)."""
    assert water(99.97).vapour_pressure == pytest.approx(ATMOSPHERE, rel=3e-4)


def test_the_same_water_is_computed_once() -> None:
    """A drag on another control does not compute the liquid again."""
    assert water(37.25) is water(37.25)
