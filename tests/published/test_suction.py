"""NPSH, submergence, barometer and siphon against textbooks and standards."""

from __future__ import annotations

import math

import numpy as np
import pytest
from tests.published.printed import Printed, each

from loadfirst.physics.altitude import barometric_pressure
from loadfirst.physics.cavitation import head_factor, npsh_ratio
from loadfirst.physics.check import CheckValves
from loadfirst.physics.law import column
from loadfirst.physics.pipe import Pipes
from loadfirst.physics.siphon import Siphons, summit_floor
from loadfirst.physics.suction import Suction, npsh_at_rest
from loadfirst.physics.vortex import required_submergence
from loadfirst.units import G

FOOT, INCH = 0.3048, 0.0254  # [m]
PSI = 0.45359237 * 9.80665 / INCH**2  # [Pa]
POUND_PER_FT3 = 0.45359237 / FOOT**3  # [kg/m³]
GALLON_PER_MINUTE = 231 * INCH**3 / 60  # [m³/s] US


def test_munson_12_3_how_high_a_pump_may_stand() -> None:
    """Munson, Young & Okiishi, Fundamentals of Fluid Mechanics, example 12.3 (from memory; recomputed).

    0.5 ft³/s of water at 80 °F through a 4 in line with a filter, K 20, from an
    open surface at 14.7 psia; 15 ft required. Printed: 10.2 ft lost, pump at
    most 7.65 ft above the surface. Tolerance: half a unit of the last digit.
    """
    density = 62.22 * POUND_PER_FT3
    line = Pipes(0.0, 4 * INCH, 0.0, 20.0, 1e-6)
    flow = column(0.5 * FOOT**3)
    lost = float(line.head_drop(flow)[0][0, 0]) / FOOT
    assert lost == pytest.approx(10.2, abs=0.05)
    at_rest = npsh_at_rest(14.7 * PSI, 0.5069 * PSI, density, -7.65 * FOOT)
    available, _ = Suction(column(at_rest), line, column(4 * INCH)).available(flow)
    assert float(available[0, 0]) / FOOT == pytest.approx(15.0, abs=0.05)


def test_npsh3_is_where_three_per_cent_of_the_head_are_lost() -> None:
    """ISO 9906, definition (from memory); exact."""
    assert float(head_factor(npsh_ratio(2.5, 2.5))[0]) == pytest.approx(0.97, rel=1e-14)


@pytest.mark.parametrize(("gallons", "inches"), [(3200, 44.7), (1000, 25.0)])
def test_submergence_by_the_hydraulic_institutes_rule_in_inches(gallons: float, inches: float) -> None:
    """ANSI/HI 9.8-1998, section 9.8.7, S = D + 0.574 Q / D^1.5 in inches and gallons (quoted in a forum).

    Two outlets of 16 in worked out there. Tolerance: half a unit of the last
    printed digit; "25" is printed without a decimal.
    """
    found = float(required_submergence(gallons * GALLON_PER_MINUTE, 16 * INCH)) / INCH
    assert found == pytest.approx(inches, abs=0.05 if inches != 25.0 else 0.5)


@each(
    Printed(
        "standard atmosphere",
        {},
        {"-1000": 113_929, "0": 101_325.0, "500": 95_460.8, "1000": 89_874.6, "2000": 79_495.2,
         "3000": 70_108.5, "5000": 54_019.9, "11000": 22_632.0},
        5e-6,
        "ISO 2533, Standard Atmosphere, pressures over geopotential height",
        "from memory",
        why="half a unit of the last digit of the coarsest: 0.5/113929",
    )
)  # fmt: skip
def test_the_barometer_of_the_standard_atmosphere(row: Printed) -> None:
    """Pressure at round heights."""
    found = barometric_pressure(np.array([float(height) for height in row.answer]))
    assert dict(zip(row.answer, found.tolist(), strict=True)) == row.expected


def test_munson_3_10_how_high_a_siphon_may_climb() -> None:
    """Munson, Young & Okiishi, example 3.10 (from memory; recomputed): water at 60 °F over a hill.

    Surface 15 ft above the tank's bottom, hose's end 5 ft below it, no losses;
    14.7 psia, vapour pressure 0.256 psia. Printed: at most 28.2 ft above the
    bottom. Tolerance: 0.5 %, as the book rounds the pull to 14.4 psi.
    """
    density, bore = 62.4 * POUND_PER_FT3, 1 * INCH
    flow = column(math.sqrt(2 * G * 20 * FOOT) * math.pi / 4 * bore**2)
    run = CheckValves(20 * FOOT / flow**2, False)  # all of the 20 ft is speed at the hose's end
    for climb, breaks in ((0.995 * 28.2, False), (1.005 * 28.2, True)):
        floor = summit_floor(climb * FOOT, True, density, 0.256 * PSI, 14.7 * PSI)
        assert Siphons(run, floor + 5 * FOOT, bore).broken(flow) == breaks


def test_a_square_suction_line_loses_its_static_npsh_with_the_square_of_the_flow() -> None:
    """NPSH = static - k q², the definition with a square-law line; exact."""
    suction = Suction(column(9.0), CheckValves(1e4, False), column(0.1))
    assert float(suction.available(column(0.02))[0][0, 0]) == pytest.approx(5.0)
