"""Water against the check values of the IAPWS releases and against printed tables."""

from __future__ import annotations

from functools import partial

import numpy as np
import pytest
from tests.published.printed import Printed, each

from loadfirst.physics.liquids import water
from loadfirst.physics.water import dynamic_viscosity, saturation_pressure
from loadfirst.units import ATMOSPHERE, ZERO_CELSIUS

boils = partial(
    Printed,
    source="IAPWS R7-97(2012), Table 35, saturation pressure",
    provenance="from memory; agrees with the iapws 1.5.5 library",
    within=1e-8,
)
boils_at = partial(
    Printed,
    source="IAPWS R7-97(2012), Table 36, saturation temperature",
    provenance="from memory; agrees with the iapws 1.5.5 library",
    within=2e-9,
)
viscosity = partial(
    Printed,
    source="IAPWS R12-08, Table 4, critical enhancement left out",
    provenance="from memory; agrees with the iapws 1.5.5 and chemicals 1.5.2 libraries",
    within=1e-7,
)
scientific = partial(
    Printed,
    source="IAPWS-95 (density, vapour pressure) and IAPWS R12-08 (viscosity)",
    provenance="computed with chemicals 1.5.2",
    within=2e-5,
)
saturated = partial(
    Printed,
    source="Hydraulic Institute Engineering Data Book, metric tables of specific gravity and liquid water",
    provenance="read in the open repository hydraulic-institute/edb, commit f1aaddd",
    within=0.004,
    why="the tables rest on older correlations",
)

BETWEEN_FORMULATIONS = 2e-4
"""How far the saturation pressures of IF97 and IAPWS-95 may lie apart (7e-5 at most from 0 to 100 °C)."""


@each(
    boils("300 K", {"K": 300}, {"MPa": 0.00353658941}),
    boils("500 K", {"K": 500}, {"MPa": 2.63889776}),
    boils("600 K", {"K": 600}, {"MPa": 12.3443146}),
)
def test_water_boils_at_the_pressure_that_if97_prints(row: Printed) -> None:
    """The release's own check values, to all their digits."""
    assert {"MPa": saturation_pressure(row.given["K"]) / 1e6} == row.expected


@each(
    boils_at("0.1 MPa", {"MPa": 0.1}, {"K": 372.755919}),
    boils_at("1 MPa", {"MPa": 1.0}, {"K": 453.035632}),
    boils_at("10 MPa", {"MPa": 10.0}, {"K": 584.149488}),
)
def test_water_boils_at_the_temperature_that_if97_prints(row: Printed) -> None:
    """The same equation the other way: the printed temperatures enclose the printed pressure."""
    low, high = (row.answer["K"] * (1 + side * row.within) for side in (-1, 1))
    assert saturation_pressure(low) < row.given["MPa"] * 1e6 < saturation_pressure(high)


@each(
    viscosity("298.15 K, 998 kg/m³", {"K": 298.15, "kg/m³": 998}, {"µPa s": 889.7351}),
    viscosity("298.15 K, 1200 kg/m³", {"K": 298.15, "kg/m³": 1200}, {"µPa s": 1437.649467}),
    viscosity("433.15 K, 1 kg/m³", {"K": 433.15, "kg/m³": 1}, {"µPa s": 14.538324}),
)
def test_water_is_as_viscous_as_r12_08_prints(row: Printed) -> None:
    """The release's own check values, to all their digits."""
    assert {"µPa s": 1e6 * dynamic_viscosity(row.given["K"], row.given["kg/m³"])} == row.expected


SCIENTIFIC = (
    scientific("0.01 °C", {"°C": 0.01}, {"kg/m³": 999.8438, "µPa s": 1791.13, "Pa": 611.655}),
    scientific("4 °C", {"°C": 4}, {"kg/m³": 999.9749, "µPa s": 1567.29, "Pa": 813.549}),
    scientific("20 °C", {"°C": 20}, {"kg/m³": 998.2072, "µPa s": 1001.6, "Pa": 2339.32}),
    scientific("25 °C", {"°C": 25}, {"kg/m³": 997.0476, "µPa s": 890.022, "Pa": 3169.93}),
    scientific("40 °C", {"°C": 40}, {"kg/m³": 992.2164, "µPa s": 652.729, "Pa": 7384.94}),
    scientific("50 °C", {"°C": 50}, {"kg/m³": 988.035, "µPa s": 546.516, "Pa": 12351.9}),
    scientific("60 °C", {"°C": 60}, {"kg/m³": 983.1958, "µPa s": 466.035, "Pa": 19946.4}),
    scientific("70 °C", {"°C": 70}, {"kg/m³": 977.7646, "µPa s": 403.548, "Pa": 31200.9}),
    scientific("90 °C", {"°C": 90}, {"kg/m³": 965.3096, "µPa s": 314.175, "Pa": 70181.8}),
)


@each(*SCIENTIFIC)
def test_water_is_as_heavy_and_viscous_as_the_scientific_formulation_says(row: Printed) -> None:
    """At one atmosphere, to 2e-5: the digits of the table."""
    found = water(row.given["°C"])
    assert found.density == pytest.approx(row.answer["kg/m³"], rel=row.within)
    assert found.viscosity * 1e6 == pytest.approx(row.answer["µPa s"], rel=row.within)


@each(*SCIENTIFIC)
def test_water_boils_where_the_scientific_formulation_says(row: Printed) -> None:
    """To 2e-4, because the two formulations themselves differ by up to 7e-5."""
    found = water(row.given["°C"])
    assert found.vapour_pressure == pytest.approx(row.answer["Pa"], rel=BETWEEN_FORMULATIONS)


@each(
    saturated("10 °C", {"°C": 10}, {"kg/m³": 999.65, "MPa": 0.001228, "mPa s": 1.3056}),
    saturated("20 °C", {"°C": 20}, {"kg/m³": 998.16, "MPa": 0.002339, "mPa s": 1.0014}),
    saturated("60 °C", {"°C": 60}, {"kg/m³": 983.16, "MPa": 0.019946, "mPa s": 0.46631}),
    saturated("80 °C", {"°C": 80}, {"kg/m³": 971.77, "MPa": 0.047414, "mPa s": 0.35429}),
)
def test_water_agrees_with_the_trades_tables(row: Printed) -> None:
    """Saturated water of the handbook; 0.1 MPa makes it 0.005 % denser at most."""
    found = water(row.given["°C"])
    assert {
        "kg/m³": found.density,
        "MPa": found.vapour_pressure / 1e6,
        "mPa s": found.viscosity * 1e3,
    } == row.expected


@pytest.mark.native
@pytest.mark.parametrize("celsius", np.linspace(0, 99.9, 38))
def test_water_agrees_with_the_reference_library_over_the_whole_range(celsius: float) -> None:
    """chemicals 1.5.2: the same equations to rounding; of IAPWS-95 density to 2e-6, boiling to 2e-4."""
    from chemicals.iapws import iapws95_Psat, iapws95_rho
    from chemicals.vapor_pressure import Psat_IAPWS
    from chemicals.viscosity import mu_IAPWS

    found, kelvin = water(float(celsius)), float(celsius) + ZERO_CELSIUS
    assert found.vapour_pressure == pytest.approx(Psat_IAPWS(kelvin), rel=1e-12)
    assert found.viscosity == pytest.approx(mu_IAPWS(kelvin, found.density), rel=1e-12)
    assert found.density == pytest.approx(iapws95_rho(kelvin, ATMOSPHERE), rel=2e-6)
    assert found.vapour_pressure == pytest.approx(iapws95_Psat(kelvin), rel=BETWEEN_FORMULATIONS)
