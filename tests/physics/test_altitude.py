"""The barometer over the height."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loadfirst.errors import InputError
from loadfirst.physics.altitude import barometric_pressure


@given(st.floats(-2000, 10_900), st.floats(0.1, 100))
def test_higher_up_the_air_weighs_less(height: float, more: float) -> None:
    """By some 12 Pa a metre at sea level."""
    assert barometric_pressure(height + more) < barometric_pressure(height)


@given(st.floats(-1999, 10_999))
def test_pressure_falls_as_fast_as_the_air_is_heavy(height: float) -> None:
    """Hydrostatics, dp/dh = -ρ g, with the density of dry air at the layer's temperature."""
    density = float(barometric_pressure(height)) / (287.05287 * (288.15 - 0.0065 * height))
    fall = float(barometric_pressure(height - 1) - barometric_pressure(height + 1)) / 2
    assert fall == pytest.approx(density * 9.80665, rel=1e-6)


@pytest.mark.parametrize("height", [-2001.0, 11_001.0, float("nan")])
def test_outside_the_layer_it_is_refused(height: float) -> None:
    """No plant stands there."""
    with pytest.raises(InputError, match="site.altitude"):
        barometric_pressure(height)
