"""A controller in automatic: what it moves is locked, shows where it stands, and comes back there."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from page.parts import native
from page.parts.panel import box, panel, show_part
from page.parts.rig import Rig
from page.parts.scenes import whole
from page.parts.words import say

HELD = {"control.fitted": True, "control.set_m3h": 25}


@pytest.fixture
def held(rig: Rig) -> Rig:
    """The flow is held by the valve."""
    return rig.open(whole(edits=HELD)).live()


def test_the_slider_shows_the_controllers_output_and_says_who_moves_it(held: Rig) -> None:
    """No key and no drag moves it; the other sliders are free."""
    opening = native.answer("rinse-transfer", HELD)["state"]["moved"]["valve.opening"]
    slider = held.slider("valve.opening")
    expect(slider).to_have_attribute("aria-disabled", "true")
    assert float(slider.input_value()) == pytest.approx(opening, abs=0.006)
    expect(held.page.locator("#valve-opening-idle")).to_have_text(say("control-held"))
    expect(held.part("valve.opening")).to_have_attribute("aria-disabled", "true")
    held.part("supply.surface_m").focus()
    held.page.keyboard.press("ArrowUp")
    held.address(lambda now: "supply.surface_m" in now["edits"], "the level in the address")
    assert "valve.opening" not in (held.address_state() or {})["edits"]


def test_taken_over_by_hand_the_valve_stays_where_it_stands(held: Rig) -> None:
    """One click, one step that can be undone; flow and opening are as before."""
    opening = native.answer("rinse-transfer", HELD)["state"]["moved"]["valve.opening"]
    held.page.get_by_role("button", name=say("control-take"), exact=True).first.click()
    held.address(lambda now: now["edits"].get("control.mode") == "manual", "manual in the address")
    edits = (held.address_state() or {})["edits"]
    assert edits["valve.opening"] == pytest.approx(opening, abs=1e-5)
    held.shows(edits=edits)
    expect(held.slider("valve.opening")).to_have_attribute("aria-disabled", "false")
    held.tool(say("tool-undo")).click()
    expect(held.slider("valve.opening")).to_have_attribute("aria-disabled", "true")


def test_a_controller_that_is_fitted_holds_the_flow_as_it_is(rig: Rig) -> None:
    """From the list of parts; its set point is today's flow."""
    rig.open(whole()).live()
    show_part(rig, "controller")
    panel(rig).get_by_role("button", name=say("part-controller-add"), exact=True).click()
    expect(box(rig, "control.set_m3h")).to_be_visible()
    rig.address(lambda now: now["edits"].get("control.fitted"), "the controller in the address")
    edits = (rig.address_state() or {})["edits"]
    flow = native.answer("rinse-transfer", {})["state"]["station"]["flow"] * 3600
    assert edits["control.set_m3h"] == pytest.approx(flow, rel=5e-3)
    output = rig.page.locator('#apparatus [data-reading="controller-output"]')
    expect(output).to_have_text("75\u00a0%")
