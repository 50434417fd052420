"""The air around a plant: by its barometer, or by its height above the sea."""

from __future__ import annotations

import pytest
from tests.rig import rig

from loadfirst.plant.air import air_pressure
from loadfirst.plant.effective import effective
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import true_state
from loadfirst.units import ATMOSPHERE, G


def test_without_a_word_it_is_the_standard_atmosphere() -> None:
    """Exactly: 1.01325 bar."""
    assert air_pressure(rig().plant) == ATMOSPHERE


@pytest.mark.parametrize(("altitude", "pressure"), [(0, 101325), (500, 95461), (1500, 84556), (3000, 70109)])
def test_at_a_height_it_is_that_of_the_standard_atmosphere(altitude: float, pressure: float) -> None:
    """ISO 2533's table (from memory), printed to the pascal for geopotential heights."""
    assert air_pressure(rig(site={"altitude_m": altitude}).plant) == pytest.approx(pressure, abs=1.0)


def test_height_takes_away_from_the_npsh_and_from_nothing_else() -> None:
    """Some 1.2 m of NPSH per kilometre; flow and gauge pressures are the same."""
    low, high = true_state(rig()), true_state(rig(site={"altitude_m": 1000}))
    lost = (ATMOSPHERE - 89874.6) / (low.liquid.density * G)
    before, after = low.machines[0].npsh_available, high.machines[0].npsh_available
    assert before is not None and after is not None
    assert before - after == pytest.approx(lost, rel=1e-4)
    assert high.flow == low.flow and high.nodes["discharge"] == low.nodes["discharge"]


def test_what_is_effective_says_barometer_or_altitude() -> None:
    """Either can be read again and is the same plant."""
    plain, high = effective(rig()), effective(rig(site={"altitude_m": 800}))
    assert plain["site"] == {"barometer_bar": 1.01325, "altitude_m": None}
    assert high["site"] == {"barometer_bar": None, "altitude_m": 800.0}
    assert resolve_data(plain).plant.site.barometer_bar == 1.01325
