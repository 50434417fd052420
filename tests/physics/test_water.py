"""The water formulations: smooth, and equal to their tables' structure at simple points."""

from __future__ import annotations

import pytest

from loadfirst.physics.water import dynamic_viscosity, liquid_density, saturation_pressure


def test_the_saturation_pressure_reaches_the_critical_point() -> None:
    """IAPWS R7-97: 22.064 MPa at 647.096 K, where liquid and steam become one."""
    assert saturation_pressure(647.096) == pytest.approx(22.064e6, rel=1e-6)


def test_the_dilute_gas_is_all_that_is_left_of_the_viscosity_without_density() -> None:
    """Steam at no density thickens with temperature, as gases do; a liquid thins."""
    assert dynamic_viscosity(600.0, 0.0) > dynamic_viscosity(400.0, 0.0)
    assert dynamic_viscosity(360.0, 1000.0) < dynamic_viscosity(280.0, 1000.0)


def test_water_expands_by_the_handbooks_coefficient_at_room_temperature() -> None:
    """2.07e-4 per kelvin at 20 °C (from memory, three digits): the slope of the density, not its value."""
    expansion = (liquid_density(292.65) - liquid_density(293.65)) / liquid_density(293.15)
    assert expansion == pytest.approx(2.07e-4, rel=0.005)
