"""Gauges against the standard for dial gauges and plain hydrostatics."""

from __future__ import annotations

from functools import partial

import pytest
from tests.plants import with_table
from tests.published.printed import Printed, each

from loadfirst.instruments.gauge import dial_pressure
from loadfirst.instruments.instrument import Instrument
from loadfirst.instruments.panel import readings
from loadfirst.instruments.uncertainty import class_limit
from loadfirst.plant.build import build
from loadfirst.plant.read import resolve_data
from loadfirst.plant.state import true_state
from loadfirst.units import BAR, G

PSI, FOOT = 0.45359237 * 9.80665 / 0.0254**2, 0.3048  # [Pa], [m], exact

accuracy_class = partial(
    Printed,
    source="EN 837-1:1996, table 11",
    provenance="read (public text of BS EN 837-1:1998)",
    within=1e-12,
)


@each(
    *(
        accuracy_class(f"class {number:g}", {"class": number}, {"limit_percent_of_span": number})
        for number in (0.1, 0.25, 0.6, 1, 1.6, 2.5, 4)
    )
)
def test_the_class_is_the_greatest_error_in_per_cent_of_the_span(row: Printed) -> None:
    """EN 837-1, table 11: each class by its number, on a dial of 100 units."""
    dial = Instrument("gauge", "pressure", 0.0, 100.0, span_percent=row.given["class"])
    assert {"limit_percent_of_span": dial.show(37.0).accuracy} == row.expected


def test_a_compound_dials_span_reaches_from_vacuum_to_its_upper_end() -> None:
    """A class 1.0 dial from -1 to +5 bar is good to 0.06 bar.

    Source: the class rule of EN 837-1 on a span of 6 bar; computed (a printed
    figure that takes only the upper end is not followed).
    """
    assert class_limit(1.0, -1 * BAR, 5 * BAR) == pytest.approx(0.06 * BAR, rel=1e-9)


@each(
    Printed(
        "a gauge 10 m above its tapping",
        {"above_m": 10.0, "density_kgm3": 998.2},
        {"low_by_kpa": 97.9},
        within=1e-3,
        source="hydrostatics, ρ g h",
        provenance="exact",
    )
)
def test_a_gauge_above_its_tapping_reads_low_by_the_liquid_in_its_leg(row: Printed) -> None:
    """Ten metres of water in the leg hide 97.9 kPa."""
    shown = dial_pressure(3 * BAR, 2.0, 2.0 + row.given["above_m"], row.given["density_kgm3"])
    assert {"low_by_kpa": (3 * BAR - shown) / 1e3} == row.expected


head_of = partial(
    Printed,
    source="Hydraulic Institute, Engineering Data Book, eq. 1.A.1",
    provenance="read; recomputed",
    within=1e-3,
)
POUND_PER_CUBIC_FOOT = 0.45359237 / FOOT**3


@each(
    head_of(
        "1 psi in feet",
        {"pressure": PSI, "metre": FOOT, "density": 62.3 * POUND_PER_CUBIC_FOOT},
        {"head": 2.31},
    ),
    head_of("1 kPa in metres", {"pressure": 1e3, "metre": 1.0, "density": 1000.0}, {"head": 0.102}),
)
def test_the_leg_that_hides_a_pressure_is_the_head_that_the_handbook_prints(row: Printed) -> None:
    """2.31 ft of water for 1 psi, 0.102 m for 1 kPa: so high above its tapping a gauge shows nothing.

    Tolerance: the printed digits; 62.3 lb/ft³ as the handbook takes it, and relative density 1.
    """
    pressure, density = row.given["pressure"], row.given["density"]
    per_metre = pressure - dial_pressure(pressure, 0.0, 1.0, density)
    assert {"head": pressure / per_metre / row.given["metre"]} == row.expected


def test_two_gauges_and_their_heights_give_the_total_head() -> None:
    """ISO 9906: H = Δp/(ρg) + Δz + Δ(v²)/2g, gauges at different heights, bores of 80 and 100 mm.

    Computed by hand for 450 and 20 kPa, 0.6 m, 50 m³/h, 998.2 kg/m³: 44.76 m;
    here with the pressures that the simulated dials show, so the total must be
    the head that the machine answers. Tolerance: rounding of the sum.
    """
    printed = (450e3 - 20e3) / (998.2 * G) + 0.6 + _velocity_head(50, 80) - _velocity_head(50, 100)
    assert printed == pytest.approx(44.76, rel=1e-3)
    data = with_table("suction", bore_mm=100)
    data["gauges"] = {"suction": {"height_m": 0.3}, "discharge": {"height_m": 1.8}}
    resolved = resolve_data(data)
    state = true_state(build([resolved]))
    suction, discharge = readings(state, resolved.plant)[:2]
    assert suction.value is not None and discharge.value is not None
    flow = state.station.flow * 3600
    total = (discharge.value - suction.value) / (state.liquid.density * G) + (1.8 - 0.3)
    total += _velocity_head(flow, 80) - _velocity_head(flow, 100)
    assert total == pytest.approx(state.station.head, rel=1e-9)


def _velocity_head(flow_m3h: float, bore_mm: float) -> float:
    """v²/2g, written out anew here. [m]"""
    velocity = flow_m3h / 3600 / (3.141592653589793 * (bore_mm / 1e3) ** 2 / 4)
    return velocity**2 / (2 * G)
