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
