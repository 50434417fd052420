"""Charts beside the head chart, and a rig that is kept beside the present one."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import expect

from page.conftest import Bench
from page.parts import native
from page.parts.links import state
from page.parts.rig import Rig
from page.parts.words import say

HEAD, NPSH, POWER = (say(f"chart-show-{name}") for name in ("head", "npsh", "power"))
COLUMNS = ("kept", "now")


def keep(rig: Rig) -> Any:
    """Keep the rig as it stands; the comparison that opens."""
    rig.page.get_by_role("button", name=say("keep-beside")).click()
    beside = rig.page.locator("#beside")
    expect(beside).to_be_visible()
    return beside


def row(beside: Any, key: str) -> Any:
    """The row of a key that differs."""
    return beside.locator(f'[data-key="{key}"]')


def heads(beside: Any) -> list[str]:
    """What the chart of each column says."""
    charts = [beside.locator(f".beside-{name} svg.chart").first for name in COLUMNS]
    for chart in charts:
        expect(chart).to_be_visible()
    return [chart.get_attribute("aria-label") or "" for chart in charts]


@pytest.mark.parametrize(("word", "name"), [(NPSH, "npsh"), (POWER, "power")])
def test_another_chart_takes_the_place_of_the_head_chart(rig: Rig, word: str, name: str) -> None:
    """It says the native answer's number, the address holds which it is, and the curves hide it too."""
    rig.page.get_by_role("radio", name=word, exact=True).check()
    chart = rig.page.locator(f"#chart-{name} svg")
    expect(chart).to_be_visible()
    expect(rig.page.locator("#chart svg")).to_be_hidden()
    machine = native.answer("rinse-transfer", {})["state"]["machines"][0]
    power = f"{machine['shaft_power'] / 1e3:.2f}\u00a0kW"
    shown = {"npsh": f"{machine['npsh_required']:.1f}\u00a0m", "power": power}
    assert shown[name] in (chart.get_attribute("aria-label") or "")
    rig.address(lambda of: of["view"].get("chart") == name, f"chart {name}")
    rig.page.get_by_role("button", name=say("switch-curves-on")).click()
    expect(chart).to_be_hidden()
    expect(rig.page.get_by_role("radio", name=word, exact=True)).to_be_hidden()


def test_what_was_kept_stands_beside_what_comes_after(rig: Rig) -> None:
    """Another pump on the same load is named so, and both charts say their own duty point."""
    beside = keep(rig)
    before = rig.page.locator("#chart svg").get_attribute("aria-label")
    rig.option("pump.model", "large").click()
    rig.shows({"pump.model": "large"})
    expect(beside.get_by_role("heading", level=2)).to_have_text(say("beside-title-machine"))
    expect(row(beside, "pump.model")).to_be_visible()
    kept, now = heads(beside)
    assert kept == before
    assert now == rig.page.locator("#chart svg").get_attribute("aria-label") != kept


def test_one_key_is_exchanged_by_a_tap_and_an_undo_takes_it_back(touched: Rig) -> None:
    """The value goes to the kept rig and back; both moves are one step of the history each."""
    beside = keep(touched)
    touched.type_number("valve.opening", "30")
    touched.shows({"valve.opening": 0.3})
    expect(beside.get_by_role("heading", level=2)).to_have_text(say("beside-title-load"))
    row(beside, "valve.opening").get_by_role("button").tap()
    touched.shows({})
    touched.address(
        lambda of: of["view"]["beside"]["edits"] == {"valve.opening": 0.3} and of["edits"] == {}, "exchanged"
    )
    touched.tool(say("tool-undo")).tap()
    touched.shows({"valve.opening": 0.3})
    touched.address(lambda of: of["view"]["beside"]["edits"] == {}, "as before")


def test_the_kept_rig_is_taken_away_and_brought_back_by_an_undo(rig: Rig) -> None:
    """Nothing else moves meanwhile."""
    beside = keep(rig)
    beside.get_by_role("button", name=say("beside-away")).click()
    expect(beside).to_be_hidden()
    rig.tool(say("tool-undo")).click()
    expect(beside).to_be_visible()
    rig.shows({})


def test_a_link_opens_both_rigs(rig: Rig) -> None:
    """Also of two plants: what differs is listed, machine first, and not without end."""
    other = {"plant": "pit-lift", "edits": {}}
    rig.open(state(units="m3h-bar-m", curves=True, place="rig", beside=other)).live()
    beside = rig.page.locator("#beside")
    expect(beside.get_by_role("heading", level=2)).to_have_text(say("beside-title-both"))
    rows = beside.locator("[data-key]")
    expect(rows.first).to_have_class("side-machine")
    assert rows.count() == 8
    beside.get_by_role("button", name=say("beside-places")).click()
    rig.shows({}, "pit-lift")


def test_both_rigs_stand_one_under_the_other_on_a_phone(phone: Bench, touched: Rig) -> None:
    """Nothing hangs over the side."""
    beside = keep(touched)
    kept, now = (beside.locator(f".beside-{name}").bounding_box() for name in COLUMNS)
    assert now["y"] > kept["y"] + kept["height"] - 1
    assert touched.page.evaluate("() => document.scrollingElement.scrollWidth") <= 360
