"""Choked valves against the standard's examples and a reference library; filters against Darcy's unit."""

from __future__ import annotations

import math
from functools import partial

import pytest
from tests.published.printed import Printed, each

from loadfirst.physics.choking import critical_ratio, throat
from loadfirst.physics.filter import Filters
from loadfirst.physics.law import column
from loadfirst.physics.valve import Valves
from loadfirst.units import ATMOSPHERE, HOUR, G

HOT = {"density": 965.4, "vapour": 70.1e3, "critical": 22_120e3, "before": 680e3, "behind": 220e3}
iec = partial(
    Printed,
    source="IEC 60534-2-1, annex, worked examples of incompressible flow",
    provenance="quoted by the documentation of fluids 1.3.1, which names the standard; recomputed",
    within=0.5 / 165,
)


def free_and_most(kv: float, recovery: float, behind: float) -> tuple[float, float]:
    """Flow of the standard's hot water by the valve's own law, and the most that its throat lets through."""
    weight = HOT["density"] * G
    square = Valves(kv).head_drop(column(1.0))[0].item()
    boiling = critical_ratio(HOT["vapour"], HOT["critical"]) * HOT["vapour"]
    head, way = throat(kv, recovery, boiling, HOT["density"])
    most = (HOT["before"] / weight - head) / way
    return math.sqrt((HOT["before"] - behind) / weight / square), math.sqrt(most)


@each(
    iec("1, globe valve, not choked", {**HOT, "recovery": 0.9}, {"kv": 165}),
    iec("2, ball segment, choked", {**HOT, "recovery": 0.6}, {"kv": 238}),
)
def test_iec_60534_2_1_sizes_its_valves(row: Printed) -> None:
    """360 m³/h of water at 90 °C; the smaller of both drops drives it. Half a unit of 165 and 238."""
    free, most = free_and_most(row.answer["kv"], row.given["recovery"], row.given["behind"])
    assert (most < free) == ("not choked" not in row.name)
    assert min(most, free) * HOUR == pytest.approx(360.0, rel=row.within)


def test_the_critical_ratio_of_the_standards_example() -> None:
    """F_F = 0.96 - 0.28 √(70.1/22120) = 0.944 (read in the documentation of fluids 1.3.1; recomputed)."""
    assert float(critical_ratio(70.1e3, 22_120e3)) == pytest.approx(0.944, abs=5e-4)


@pytest.mark.native
@pytest.mark.parametrize("recovery", [0.5, 0.6, 0.75, 0.9])
@pytest.mark.parametrize("behind", [650e3, 500e3, 220e3, 100e3])
def test_valves_are_sized_as_by_a_reference_library(recovery: float, behind: float) -> None:
    """fluids 1.3.1, size_control_valve_l without fittings: choked or not, the same Kv, to 0.1 %.

    The library takes water at 15 °C as 999.10329 kg/m³, here 999.1.
    """
    from fluids.control_valve import size_control_valve_l

    wanted = size_control_valve_l(
        rho=965.4, Psat=70.1e3, Pc=22_120e3, mu=3.1472e-4, P1=680e3, P2=behind, Q=0.1,
        FL=recovery, Fd=None, D1=None, D2=None, d=None,
    )  # fmt: skip
    assert min(free_and_most(wanted, recovery, behind)) == pytest.approx(0.1, rel=1e-3)


def test_a_medium_of_one_darcy_passes_what_the_unit_says() -> None:
    """Darcy's unit (definition, from memory): 1 cm³/s of 1 mPa s through 1 cm² for 1 atm/cm, 9.869233e-13 m².

    Tolerance: the seven digits of the unit.
    """
    resistance = 0.01 / (9.869233e-13 * 1e-4)  # length over permeability and area [1/m³]
    density = 998.2
    head = Filters(resistance, 0.0, 1e-3 / density).head_drop(column(1e-6))[0]
    assert float(head[0, 0]) * density * G == pytest.approx(ATMOSPHERE, rel=2e-7)


def test_cake_and_medium_add_up_as_in_ruths_equation() -> None:
    """Δp = μ (α c V/A + R_m) q/A (from memory): cake of 3e11 on a medium of 1e11 1/m, 0.5 m², 1 mPa s, 1 L/s.

    (3e11 + 1e11) × 1e-3 × 1e-3 / 0.5 = 800 kPa; exact.
    """
    density = 1000.0
    head = Filters(1e11 / 0.5, 3.0, 1e-3 / density).head_drop(column(1e-3))[0]
    assert float(head[0, 0]) * density * G == pytest.approx(800e3)
