"""The remembered day: kept, drawn hollow, in the address, and forgotten again."""

from __future__ import annotations

from playwright.sync_api import expect

from page.conftest import Bench
from page.parts import native
from page.parts.links import state
from page.parts.rig import Rig
from page.parts.words import say

FLOW = '#apparatus [data-reading="flow-meter"]'
VALVE = {"valve.opening": 0.3}
PLAIN = {"plant": "rinse-transfer", "edits": {}}


def remember(rig: Rig) -> None:
    """Press the button that remembers the rig as it stands."""
    rig.page.get_by_role("button", name=say("remember-day")).click()
    expect(rig.page.get_by_role("button", name=say("forget-day"))).to_be_visible()


def flow(edits: dict[str, float]) -> str:
    """The native engine's flow as the meter says it."""
    shown = {one["id"]: one for one in native.answer("rinse-transfer", edits)["shown"]}
    return f"{shown['flow-meter']['value'] * 3600:.1f}"


def test_dials_keep_a_hollow_pointer_at_yesterdays_reading_through_every_later_step(rig: Rig) -> None:
    """Two changes later it is still the remembered day that is hollow, not the step before."""
    remember(rig)
    rig.type_number("valve.opening", "60")
    rig.type_number("valve.opening", "30")
    rig.address_holds(VALVE)
    expect(rig.page.locator(FLOW)).to_have_attribute(
        "aria-valuetext", f"{flow(VALVE)}\u00a0m³/h; yesterday {flow({})}\u00a0m³/h"
    )
    dial = rig.page.locator('#apparatus [data-reading="gauge-discharge"]')
    expect(dial.locator(".dial-day")).to_be_visible()
    expect(dial.locator(".dial-ghost")).to_be_hidden()
    expect(rig.page.locator("#chart .duty-before")).to_be_visible()
    expect(rig.page.locator("#stack .stack-ghost")).to_be_visible()


def test_the_day_survives_a_reload_and_is_forgotten_and_brought_back(rig: Rig) -> None:
    """The address holds it; undo brings a forgotten day back."""
    remember(rig)
    rig.type_number("valve.opening", "30")
    rig.address(
        lambda of: (
            of["view"].get("yesterday") == {"plant": "rinse-transfer", "edits": {}} and of["edits"] == VALVE
        ),
        "both days",
    )
    rig.page.reload()
    rig.live()
    expect(rig.page.locator(FLOW)).to_have_attribute(
        "aria-valuetext", f"{flow(VALVE)}\u00a0m³/h; yesterday {flow({})}\u00a0m³/h"
    )
    rig.page.get_by_role("button", name=say("forget-day")).click()
    expect(rig.page.locator(FLOW)).to_have_attribute("aria-valuetext", f"{flow(VALVE)}\u00a0m³/h")
    rig.tool(say("tool-undo")).click()
    expect(rig.page.locator(FLOW)).to_have_attribute(
        "aria-valuetext", f"{flow(VALVE)}\u00a0m³/h; yesterday {flow({})}\u00a0m³/h"
    )


def test_a_link_carries_both_days_to_a_phone(phone: Bench, touched: Rig) -> None:
    """Nothing hangs over the side, and the button is large enough for a thumb."""
    touched.open(
        state(
            "rinse-transfer",
            VALVE,
            units="m3h-bar-m",
            curves=True,
            place="rig",
            yesterday=PLAIN,
        )
    ).live()
    expect(touched.page.locator(FLOW)).to_have_attribute(
        "aria-valuetext", f"{flow(VALVE)}\u00a0m³/h; yesterday {flow({})}\u00a0m³/h"
    )
    button = touched.page.get_by_role("button", name=say("forget-day"))
    button.scroll_into_view_if_needed()
    assert button.bounding_box()["height"] >= 40
    assert touched.page.evaluate("() => document.scrollingElement.scrollWidth") <= 360


def test_both_days_stand_side_by_side_with_what_counts_and_why(rig: Rig) -> None:
    """The story is above the table, and follows from the model; what moved is told from what scatters."""
    remember(rig)
    rig.type_number("valve.opening", "30")
    days = rig.page.locator("#days")
    expect(days).to_be_visible()
    met = native.days({}, VALVE)["meeting"]
    expect(rig.page.locator(".then")).to_contain_text(
        f"asks {met['asked'][1]:.1f}\u00a0m instead of {met['asked'][0]:.1f}\u00a0m"
    )
    row = days.locator('[data-reading="flow-meter"]')
    expect(row).to_contain_text("▼")
    expect(row).to_contain_text(say("days-why-load-down"))
    expect(days.locator('[data-reading="level-supply"]')).not_to_have_class("moved")
    rig.page.get_by_role("button", name=say("days-see")).click()
    expect(days.get_by_role("heading", level=2)).to_be_focused()


def test_the_table_is_a_list_on_a_phone(phone: Bench, touched: Rig) -> None:
    """Nothing hangs over the side."""
    touched.open(
        state("rinse-transfer", VALVE, units="m3h-bar-m", curves=True, place="rig", yesterday=PLAIN)
    ).live()
    expect(touched.page.locator("#days")).to_be_visible()
    assert touched.page.evaluate("() => document.scrollingElement.scrollWidth") <= 360


def test_a_cause_of_the_catalogue_happens_in_the_open(rig: Rig) -> None:
    """The plant as it was is yesterday; what happened is told with what followed, and undo takes it back."""
    rig.page.get_by_role("button", name=say("causes-open")).click()
    dialog = rig.page.get_by_role("dialog")
    dialog.get_by_label(say("causes-choose"), exact=True).select_option("strainer-blocked")
    expect(dialog.locator("#cause-size")).to_have_attribute("aria-valuetext", "0.8")
    dialog.get_by_role("button", name=say("causes-apply")).click()
    expect(dialog).to_be_hidden()
    rig.address(
        lambda of: abs(of["edits"].get("suction.strainer_k", 0) - 20) < 0.01, "the strainer's new loss"
    )
    row = rig.page.locator('#days [data-reading="gauge-suction"]')
    expect(row).to_contain_text(say("days-why-line-before-down"))
    rig.tool(say("tool-undo")).click()
    rig.address(lambda of: of["edits"] == {}, "undone")
