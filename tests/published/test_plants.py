"""Published systems as whole plant files: what stands there, and what the program makes of the keys."""

from __future__ import annotations

from typing import Any

import pytest
from tests.strategies import legal

from loadfirst.plant.state import State, true_state
from loadfirst.units import HOUR, G

CLEAR: dict[str, Any] = {"length_m": 0.1, "bore_mm": 2000.0, "roughness_mm": 0.0, "fittings_k": 0.0}
"""A line that costs next to nothing."""
WIDE = {"opening": 1.0, "kv_open_m3h": 1e5}
"""A valve that costs next to nothing."""
WIDE_R = 1e5 * HOUR**2 / (999.1 * G) / 1e10
"""What it costs. [m/(m³/s)²]"""


def plant(head: list[float], flow: list[float], liquid: dict[str, Any], **tables: dict[str, Any]) -> State:
    """A plant whose pump gives those heads [m] at those flows [m³/h], on a motor that it hardly loads."""
    curve = {"flow_m3h": flow, "head_m": head, "speed_rpm": 3000.0, "motor_kw": 20000.0}
    curve |= {"power_kw": [500.0] * 3, "npshr_m": [1.0] * 3}
    data: dict[str, Any] = {
        "format": 1,
        "title": "Out of a book",
        "liquid": {"name": "book's", "density_kgm3": 998.0, "vapour_bar": 0.02} | liquid,
        "pump": {"curve": curve},
        "check": {"k": 0.0},
        "valve": WIDE,
        "suction": CLEAR | {"strainer_k": 0.0},
    }
    for table, keys in tables.items():
        data[table] = data.get(table, {}) | keys
    return true_state(legal(data))


def k_of(resistance: float, bore_mm: float) -> float:
    """Loss coefficient on a bore that loses `resistance` q². [m/(m³/s)²]"""
    area = 3.141592653589793 / 4 * (bore_mm / 1000) ** 2
    return resistance * 2 * G * area**2


def test_a_pump_on_two_vessels_shares_as_the_three_reservoirs_of_example_9_12() -> None:
    """Reservoirs at 135, 120 and 112 m: junction 131.6 m; 2.116, 0.565, 1.549 m³/s.

    FOSSEE/Scilab-TBC-Uploads, book 1962, Example 9.12 (p. 340 of the book): r = 0.7594,
    36.33, 8.168. Read; recomputed. The first reservoir is a supply at 125 m with a pump of
    10 m; valves and clear pipes stand in for parts of the resistances. Tolerance 0.3 %,
    the printed digits.
    """
    state = plant(
        [10.002, 10.0, 9.998], [0.0, 7618.0, 15236.0], {"viscosity_mpas": 0.05},
        supply={"surface_m": 125.0, "bottom_m": 120.0, "top_m": 130.0},
        suction=CLEAR | {"bore_mm": 1000.0, "fittings_k": k_of(0.7594, 1000.0)},
        discharge=CLEAR | {"bore_mm": 600.0, "fittings_k": k_of(8.168 - WIDE_R, 600.0)},
        delivery={"surface_m": 112.0, "bottom_m": 100.0, "top_m": 120.0},
        branch=CLEAR | WIDE | {"fitted": True, "pours": False, "end_m": 120.0, "bore_mm": 400.0,
                               "fittings_k": k_of(36.33 - WIDE_R, 400.0)},
    )  # fmt: skip
    flows = [state.station.flow, state.aside["branch-line"], state.flow]
    assert flows == pytest.approx([2.116, 0.565, 1.549], rel=0.003)
    assert state.nodes["discharge"].head == pytest.approx(131.6, rel=0.003)


BOOK_PIPES = [
    {"length_m": 100.0, "bore_mm": 80.0, "roughness_mm": 0.24, "fittings_k": 0.0},
    {"length_m": 150.0, "bore_mm": 60.0, "roughness_mm": 0.12, "fittings_k": 0.0},
    {"length_m": 80.0, "bore_mm": 40.0, "roughness_mm": 0.20, "fittings_k": 0.0},
]


def test_discharge_line_second_line_and_branch_share_the_flow_as_in_white_6_18() -> None:
    """White, Fluid Mechanics, Example 6.18: 62.5, 25.9, 11.4, together 99.8 m³/h at a loss of 20.3 m.

    From memory, recomputed with Colebrook. The third pipe is a branch to a vessel as high
    as the delivery. Tolerance 1.2 %, as the book's factors come from the chart.
    """
    level = {"surface_m": 0.0, "bottom_m": -1.0, "top_m": 1.0}
    state = plant(
        [20.302, 20.3, 20.298], [0.0, 99.8, 199.6], {"viscosity_mpas": 1.02e-6 * 998.0 * 1e3},
        supply=level, delivery=level, discharge=BOOK_PIPES[0], second_line=BOOK_PIPES[1] | {"fitted": True},
        branch=BOOK_PIPES[2] | WIDE | {"fitted": True, "pours": False, "end_m": 0.0},
    )  # fmt: skip
    second, third = state.aside["second-line"], state.aside["branch-line"]
    flows = [flow * HOUR for flow in (state.flow - second, second, third, state.station.flow)]
    assert flows == pytest.approx([62.5, 25.9, 11.4, 99.8], rel=0.012)


FT = 0.3048  # [m]


@pytest.mark.parametrize(("summit", "breaks"), [(27.9, False), (28.6, True)])
def test_a_siphon_breaks_at_the_height_of_munson_3_10(summit: float, breaks: bool) -> None:
    """Munson, Young & Okiishi, Example 3.10: a hill of 28.2 ft is the highest.

    Water at 60 °F from a tank 15 ft deep to 5 ft below its bottom, 14.7 psia, vapour
    0.256 psia, 62.4 lbf/ft³, no friction. From memory, recomputed: 28.2 to 28.3 ft, as g
    and the digits are taken. The pump adds next to nothing; tolerance 1 %.
    """
    wide = CLEAR | {"bore_mm": 300.0, "fittings_k": 1.0}
    state = plant(
        [0.012, 0.011, 0.01], [0.0, 2800.0, 5600.0],
        {"density_kgm3": 999.6, "viscosity_mpas": 0.05, "vapour_bar": 0.01765},
        site={"barometer_bar": 1.01353},
        supply={"surface_m": 15 * FT, "bottom_m": 0.0, "top_m": 20 * FT},
        discharge=wide,
        delivery={"surface_m": -6 * FT, "bottom_m": -10 * FT, "top_m": 0.0, "outlet_m": -5 * FT},
        summit={"fitted": True, "height_m": summit * FT, "at": 0.5},
    )  # fmt: skip
    assert ("siphon-broken" in [note.kind for note in state.notes]) == breaks
    if not breaks:  # 35.9 ft/s at the end
        speed = state.flow / (3.141592653589793 / 4 * 0.3**2)
        assert speed / FT == pytest.approx(35.9, rel=0.005)


def test_a_recirculation_valve_that_passes_shows_as_it_does_in_the_trade() -> None:
    """Discharge pressure, suction pressure and delivered flow fall, the current rises.

    Common practice (directions that trouble-shooting tables give for a radial pump with
    its meter behind the branch).
    """
    before, after = (
        true_state(
            legal({"format": 1, "title": "Two days", "pump": {"model": "medium"}, "return_line": line})
        )
        for line in ({"fitted": True, "opening": 0.0}, {"fitted": True, "opening": 1.0})
    )
    for node in ("suction", "discharge"):
        assert after.nodes[node].pressure < before.nodes[node].pressure
    assert after.flow < before.flow and after.station.head < before.station.head
    assert after.machines[0].current > before.machines[0].current


def test_the_valve_of_iec_example_2_passes_its_flow_choked() -> None:
    """IEC 60534-2-1, annex, example 2: Kv 238, F_L 0.6, 680 to 220 kPa, 360 m³/h of water at 90 °C.

    Quoted by the documentation of fluids 1.3.1, which names the standard; recomputed. 965.4
    kg/m³, vapour 70.1 kPa, critical 22 120 kPa, line of 100 mm. Tolerance 0.21 %, half a
    unit of the printed 238.
    """
    flow, weight, speed = 0.1, 965.4 * G, (0.1 / (3.141592653589793 / 4 * 0.1**2)) ** 2 / (2 * G)
    before = (680e3 - 101325.0) / weight + speed  # [m] above the valve, as energy head
    line = CLEAR | {"bore_mm": 100.0}
    state = plant(
        [5.002, 5.0, 4.998], [0.0, 360.0, 720.0],
        {"density_kgm3": 965.4, "viscosity_mpas": 0.05, "vapour_bar": 0.701, "critical_bar": 221.2},
        site={"barometer_bar": 1.01325},
        pump={"centre_m": 0.0},
        supply={"surface_m": 0.0, "bottom_m": -1.0, "top_m": 1.0, "gas_bar": (before - 5.0) * weight / 1e5},
        valve={"kv_open_m3h": 238.0, "opening": 1.0, "recovery": 0.6},
        discharge=line,
        delivery={"surface_m": 0.0, "bottom_m": -1.0, "top_m": 1.0, "gas_bar": (220e3 - 101325.0) / 1e5},
    )  # fmt: skip
    assert "choked" in [note.kind for note in state.notes]
    assert state.flow == pytest.approx(flow, rel=0.5 / 238)
