"""The three ways to show quantities."""

from __future__ import annotations

import pytest
from playwright.sync_api import Locator, expect

from page.parts import native
from page.parts.links import state
from page.parts.numbers import numbers
from page.parts.rig import Rig
from page.parts.words import say

PRESETS = {
    "m3h-bar-m": ("m³/h", "bar", "m"),
    "ls-kpa-m": ("L/s", "kPa", "m"),
    "gpm-psi-ft": ("gpm", "psi", "ft"),
}


def units(rig: Rig) -> Locator:
    """The list of units in the bar of tools."""
    return rig.page.get_by_label(say("units-label"), exact=True)


@pytest.mark.parametrize("preset", PRESETS)
def test_everything_is_shown_in_the_chosen_units_at_once(rig: Rig, preset: str) -> None:
    """The numbers are still the native engine's; dials, stack, chart and number boxes change together."""
    flow, pressure, length = PRESETS[preset]
    units(rig).select_option(preset)
    seen = rig.shows(unit=pressure)
    assert seen["readings"]["flow-meter"].endswith(flow)
    assert seen["stack"].rstrip(".").endswith(length)
    assert seen["sliders"]["supply-surface_m"].endswith(length)
    rig.address(lambda now: now["view"]["units"] == preset, f"{preset} in the address")


@pytest.mark.parametrize("preset", PRESETS)
def test_numbers_are_typed_in_the_shown_units(rig: Rig, preset: str) -> None:
    """Ten feet are 3.048 m, exactly; the plant's own units stay metric."""
    units(rig).select_option(preset)
    rig.type_number("supply.surface_m", "10" if preset == "gpm-psi-ft" else "3.048")
    rig.shows({"supply.surface_m": 3.048})


def test_changing_the_units_changes_nothing_else(rig: Rig) -> None:
    """Round and round, the edits stay what they were to the last digit."""
    rig.type_number("supply.surface_m", "2.35")
    rig.type_number("valve.opening", "47")
    edits = {"supply.surface_m": 2.35, "valve.opening": 0.47}
    for preset in (*PRESETS, *PRESETS):
        units(rig).select_option(preset)
    rig.shows(edits, unit="psi")
    rig.address_holds(edits)


def test_units_are_remembered_for_the_next_visit(fresh: Rig) -> None:
    """After a reload, and on a new visit without a link."""
    fresh.open().live()
    units(fresh).select_option("gpm-psi-ft")
    fresh.page.reload()
    expect(units(fresh)).to_have_value("gpm-psi-ft")
    fresh.page.goto("about:blank")
    fresh.open()
    expect(units(fresh)).to_have_value("gpm-psi-ft")


def test_a_link_brings_its_own_units(rig: Rig) -> None:
    """Who opens a shared rig sees it as it was shared."""
    rig.open(state(units="gpm-psi-ft"))
    rig.shows(unit="psi")


TINY = {
    "format": 1,
    "title": "Tiny",
    "suction": {"bore_mm": 5, "length_m": 0.1},
    "pump": {
        "curve": {
            "speed_rpm": 2900,
            "motor_kw": 0.01,
            "flow_m3h": [0, 0.01, 0.02],
            "head_m": [5.0, 4.0, 1.0],
            "power_kw": [0.001, 0.001, 0.0012],
            "npshr_m": [0.1, 0.1, 0.1],
        }
    },
    "valve": {"kv_open_m3h": 0.05, "opening": 1},
    "discharge": {"bore_mm": 5, "length_m": 1},
    "delivery": {"surface_m": 2.1, "bottom_m": 1, "top_m": 3},
    "meters": {"flow_range_m3h": 0.03},
}
"""A pump that delivers some litres in an hour."""


def test_a_tiny_flow_is_said_with_the_digits_of_its_meter(rig: Rig) -> None:
    """In the sentence and in the chart; never as nothing."""
    flow = native.answer(TINY)["duty"]["flow"]
    assert 0 < 3600 * flow < 0.05
    rig.open(state(TINY))
    rig.shows(plant=TINY)
    said = numbers(rig.page.locator("#why-line").inner_text())[1]
    assert said.is_(flow) and said.value > 0
    assert numbers(rig.seen()["chart"])[0].value > 0
    rig.open(state())
    rig.shows()
    expect(rig.page.locator("#why-line")).to_contain_text("35.4\u00a0m³/h")
