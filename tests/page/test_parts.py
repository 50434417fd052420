"""Every thing in the drawing opens a panel with all that can be set on it."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from page.parts.hands import Mouse, drag
from page.parts.panel import box, opener, panel, picker, show_part
from page.parts.rig import Rig
from page.parts.scenes import SCENES
from page.parts.waiting import eventually
from page.parts.words import say

OVERHANG = "() => [document.scrollingElement.scrollWidth, document.documentElement.clientWidth]"


@pytest.fixture
def closed(rig: Rig) -> Rig:
    """The panel of an earlier test is shut."""
    if panel(rig).is_visible():
        rig.page.get_by_role("button", name=say("close"), exact=True).click()
    expect(panel(rig)).to_be_hidden()
    return rig


@pytest.mark.parametrize(
    ("key", "part"),
    [("valve.opening", "valve"), ("supply.surface_m", "supply"), ("drive.frequency_hz", "drive")],
)
def test_a_click_without_movement_opens_the_panel_and_changes_nothing(
    closed: Rig, key: str, part: str
) -> None:
    """Its controls are there; the arrows still move what was clicked."""
    closed.page.mouse.click(*closed.middle(closed.part(key)))
    expect(picker(closed)).to_have_value(part)
    expect(box(closed, key)).to_be_visible()
    closed.shows()
    closed.page.keyboard.press("ArrowUp")
    closed.address(lambda now: key in now["edits"], f"{key} in the address")


def test_a_drag_opens_no_panel(closed: Rig) -> None:
    """Only a tap does."""
    drag(Mouse(closed.page), closed.middle(closed.part("valve.opening")), (0, -24))
    closed.left_at("valve.opening")
    expect(panel(closed)).to_be_hidden()


def test_keys_open_it_and_escape_gives_the_focus_back(closed: Rig) -> None:
    """Enter on the handwheel, Escape anywhere in the panel."""
    wheel = closed.part("valve.opening")
    wheel.focus()
    closed.page.keyboard.press("Enter")
    expect(panel(closed).get_by_role("heading")).to_be_focused()
    closed.page.keyboard.press("Tab")
    expect(picker(closed)).to_be_focused()
    closed.page.keyboard.press("Escape")
    expect(panel(closed)).to_be_hidden()
    expect(wheel).to_be_focused()
    closed.shows()


def test_keys_alone_lead_from_the_vessel_to_its_liquid_and_back_to_the_drawing(closed: Rig) -> None:
    """Nothing is drawn for a liquid: the panel of what holds it leads there."""
    surface = closed.part("supply.surface_m")
    surface.focus()
    closed.page.keyboard.press("Enter")
    expect(picker(closed)).to_have_value("supply")
    lead = panel(closed).get_by_role("button", name=say("part-lead", part=say("part-liquid")), exact=True)
    for _ in range(8):
        closed.page.keyboard.press("Tab")
        if lead.evaluate("(node) => node === document.activeElement"):
            break
    closed.page.keyboard.press("Enter")
    expect(picker(closed)).to_have_value("liquid")
    expect(panel(closed).get_by_role("heading")).to_be_focused()
    closed.page.keyboard.press("Escape")
    expect(panel(closed)).to_be_hidden()
    expect(surface).to_be_focused()


def test_the_tray_leads_to_all_kinds_of_pump_and_names_the_one_that_is_fitted(closed: Rig) -> None:
    """Three sizes are at hand; of another kind only its name is."""
    others = closed.page.locator("#controls .others")
    expect(others).to_have_text(say("pump-others", name=say("pump-others-none")))
    others.click()
    expect(picker(closed)).to_have_value("pump-1")
    kinds = closed.page.locator("#part-pump-model optgroup").evaluate_all(
        "all => all.map((one) => one.label)"
    )
    assert kinds == [say(f"pump-group-{kind}") for kind in ("radial", "along", "displacement")]
    closed.page.locator("#part-pump-model").select_option("screw")
    closed.address_holds({"pump.model": "screw"})
    expect(panel(closed).locator(".part-about")).to_contain_text(say("draw-kind-screw"))
    closed.page.get_by_role("button", name=say("close"), exact=True).click()
    expect(others).to_have_text(say("pump-others", name=say("choice-pump-model-screw")))
    expect(closed.page.locator("#controls [data-key='pump.model'] input:checked")).to_have_count(0)


def test_the_list_leads_to_every_part_and_each_has_controls_or_says_why_not(closed: Rig) -> None:
    """What stands in the plant, then what can be added."""
    opener(closed).click()
    parts = picker(closed).locator("option").evaluate_all("all => all.map((one) => one.value)")
    assert {"supply", "pump-1", "valve", "delivery", "liquid", "branch"} <= set(parts)
    for part in parts:
        show_part(closed, part)
        some = panel(closed).locator(".part-key, .part-more button")
        expect(some.first).to_be_visible()
    closed.shows()


def test_a_number_in_a_panel_is_an_edit_that_can_be_undone_and_taken_back(closed: Rig) -> None:
    """Typed, in the address, undone; typed again and put back to the plant's own."""
    show_part(closed, "discharge-line")
    back = panel(closed).get_by_role("button", name=say("part-back", name=say("key-discharge-bore_mm")))
    for undo in (closed.tool(say("tool-undo")), back):
        box(closed, "discharge.bore_mm").fill("100")
        box(closed, "discharge.bore_mm").press("Enter")
        closed.shows({"discharge.bore_mm": 100})
        closed.address_holds({"discharge.bore_mm": 100})
        undo.click()
        closed.shows()
        closed.address_holds({})


def test_the_slider_of_a_panel_goes_by_round_numbers(closed: Rig) -> None:
    """From 120 m of pipe up one rung and down again."""
    show_part(closed, "discharge-line")
    slider = closed.page.locator("#part-discharge-length_m")
    slider.focus()
    closed.page.keyboard.press("ArrowRight")
    closed.shows({"discharge.length_m": 130})
    closed.page.keyboard.press("ArrowLeft")
    closed.address_holds({"discharge.length_m": 120})


def test_a_wrong_number_is_told_beside_it(closed: Rig) -> None:
    """By the page where it is out of range, and by the engine where two keys do not fit."""
    show_part(closed, "discharge-line")
    box(closed, "discharge.length_m").fill("0")
    box(closed, "discharge.length_m").press("Enter")
    expect(closed.page.locator("#part-discharge-length_m-bad")).to_be_visible()
    closed.shows()
    box(closed, "discharge.roughness_mm").fill("1")
    box(closed, "discharge.roughness_mm").press("Enter")
    box(closed, "discharge.bore_mm").fill("10")
    box(closed, "discharge.bore_mm").press("Enter")
    expect(closed.page.locator("#part-discharge-roughness_mm-bad")).to_be_visible()


def test_a_second_user_is_added_and_taken_away(closed: Rig) -> None:
    """The panel of the line offers it; its own panel follows, and takes it away again."""
    show_part(closed, "discharge-line")
    panel(closed).get_by_role("button", name=say("part-branch-add")).click()
    expect(picker(closed)).to_have_value("branch")
    closed.address_holds({"branch.fitted": True})
    expect(box(closed, "branch.opening")).to_be_visible()
    panel(closed).get_by_role("button", name=say("part-branch-remove")).click()
    expect(picker(closed)).to_have_value("discharge-line")
    closed.address_holds({"branch.fitted": False})
    closed.shows()


def test_another_liquid_begins_as_the_present_one_and_takes_what_is_typed(closed: Rig) -> None:
    """Water has no density of its own to set; another liquid has."""
    show_part(closed, "liquid")
    expect(box(closed, "liquid.density_kgm3")).to_have_count(0)
    closed.page.get_by_role("radio", name=say("choice-liquid-name-other"), exact=True).check()
    density = box(closed, "liquid.density_kgm3")
    expect(density).to_be_visible()
    density.fill("1200")
    density.press("Enter")
    closed.address(lambda now: now["edits"].get("liquid.density_kgm3") == 1200, "the density in the address")


def test_a_pipe_may_end_above_the_surface(closed: Rig) -> None:
    """A number that a plant may do without has a switch before it."""
    show_part(closed, "delivery")
    switch = closed.page.get_by_label(say("key-delivery-outlet_m"), exact=True).and_(
        closed.page.locator("input[type=checkbox]")
    )
    switch.check()
    closed.shows({"delivery.outlet_m": 16})
    switch.uncheck()
    closed.address_holds({"delivery.outlet_m": None})
    closed.shows()


def test_a_tap_opens_it_on_a_phone(touched: Rig) -> None:
    """A sheet from below that fits the screen and hides no part that was tapped."""
    touched.part("valve.opening").tap()
    expect(panel(touched)).to_be_visible()

    def ends() -> list[float]:
        parts = (touched.part("valve.opening"), panel(touched))
        boxes = [box for part in parts if (box := part.bounding_box())]
        return [boxes[0]["y"] + boxes[0]["height"], boxes[1]["y"], boxes[1]["y"] + boxes[1]["height"]]

    def apart(now: list[float]) -> bool:
        return now[0] <= now[1] + 1 and now[2] <= 740.5

    eventually(touched.page, ends, apart, "the handwheel above the sheet")
    touched.shows()
    touched.page.get_by_role("button", name=say("close"), exact=True).tap()
    expect(panel(touched)).to_be_hidden()


@pytest.mark.parametrize(("width", "height"), [(320, 640), (740, 360), (1280, 800), (1920, 1080)])
def test_no_panel_hangs_over_the_side(
    visitor: Callable[..., Rig], site: str, width: int, height: int
) -> None:
    """Whatever stands in it, it lies within the screen and scrolls down only."""
    rig = visitor(site, viewport={"width": width, "height": height}).open(SCENES["rig"]).live()
    opener(rig).click()
    for part in picker(rig).locator("option").evaluate_all("all => all.map((one) => one.value)"):
        show_part(rig, part)
        wide, screen = rig.page.evaluate(OVERHANG)
        assert wide <= screen, part
        body = rig.page.locator(".part-body").evaluate("(node) => [node.scrollWidth, node.clientWidth]")
        assert body[0] <= body[1], part
        sheet = panel(rig).bounding_box()
        assert sheet and sheet["y"] >= 0 and sheet["y"] + sheet["height"] <= height + 1
