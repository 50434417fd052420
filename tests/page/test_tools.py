"""The bar of tools: undo, redo, reset, theme, plants, link; and the pause of the turning."""

from __future__ import annotations

import re
from datetime import date

from playwright.sync_api import expect

from page.parts import native
from page.parts.rig import Rig
from page.parts.waiting import eventually
from page.parts.words import say

TWENTY_FRAMES = """
() => new Promise((done) => {
  let left = 20;
  const next = () => (left-- ? requestAnimationFrame(next) : done());
  next();
})
"""


def test_undo_and_redo_walk_through_every_step(fresh: Rig) -> None:
    """Of all kinds of controls, back to the beginning and forward to the end."""
    fresh.open().live()
    steps = [("valve.opening", 0.35), ("pump.arrangement", "in-line"), ("discharge.attached", False)]
    expect(fresh.tool(say("tool-undo"))).to_be_disabled()
    expect(fresh.tool(say("tool-redo"))).to_be_disabled()
    fresh.type_number("valve.opening", "35")
    fresh.option("pump.arrangement", "in-line").click()
    fresh.option("discharge.attached", False).click()
    states = [dict(steps[:count]) for count in range(len(steps) + 1)]
    fresh.shows(states[-1])
    for edits in reversed(states[:-1]):
        fresh.tool(say("tool-undo")).click()
        fresh.shows(edits)
        fresh.address_holds(edits)
    expect(fresh.tool(say("tool-undo"))).to_be_disabled()
    for edits in states[1:]:
        fresh.tool(say("tool-redo")).click()
        fresh.shows(edits)
        fresh.address_holds(edits)
    expect(fresh.tool(say("tool-redo"))).to_be_disabled()


def test_a_new_step_forgets_what_was_undone(fresh: Rig) -> None:
    """After undo and another change there is nothing to redo."""
    fresh.open().live()
    fresh.type_number("valve.opening", "35")
    fresh.tool(say("tool-undo")).click()
    fresh.type_number("valve.opening", "45")
    expect(fresh.tool(say("tool-redo"))).to_be_disabled()
    fresh.shows({"valve.opening": 0.45})


def test_reset_goes_back_to_the_plant_and_can_be_undone(rig: Rig) -> None:
    """All changes at once."""
    rig.type_number("valve.opening", "35")
    rig.option("pump.model", "large").click()
    edits = {"valve.opening": 0.35, "pump.model": "large"}
    rig.shows(edits)
    rig.tool(say("tool-reset")).click()
    rig.shows()
    rig.address_holds({})
    rig.tool(say("tool-undo")).click()
    rig.shows(edits)


def brightness(rig: Rig) -> float:
    """Of the paper that everything lies on; 0 is black, 1 is white."""
    colour = rig.page.evaluate("() => getComputedStyle(document.documentElement).backgroundColor")
    return sum(int(part) for part in re.findall(r"\d+", colour)[:3]) / 765


def test_dark_and_light_change_at_a_press_and_are_remembered(fresh: Rig) -> None:
    """The paper is dark on a dark page; after a reload it still is."""
    fresh.open()
    assert brightness(fresh) > 0.8
    fresh.tool(say("theme-to-dark")).click()
    eventually(fresh.page, lambda: brightness(fresh), lambda now: now < 0.25, "dark paper")
    fresh.page.reload()
    expect(fresh.tool(say("theme-to-light"))).to_be_visible()
    assert brightness(fresh) < 0.25
    fresh.tool(say("theme-to-light")).click()
    eventually(fresh.page, lambda: brightness(fresh), lambda now: now > 0.8, "light paper")


def test_every_plant_of_the_menu_opens(rig: Rig) -> None:
    """By its title; the menu closes, the rig is the native answer for it, and undo comes back."""
    for plant in native.PLANTS[1:]:
        title = native.answer(plant)["title"]
        rig.tool(say("tool-open")).click()
        rig.page.get_by_role("dialog", name=say("open-title")).get_by_role("button", name=title).click()
        expect(rig.page.get_by_role("dialog")).to_have_count(0)
        rig.shows(plant=plant)
        assert rig.seen()["title"] == title
        assert rig.page.title().startswith(title)
    for _ in native.PLANTS[1:]:
        rig.tool(say("tool-undo")).click()
    rig.shows()


def test_the_menu_closes_by_escape_and_by_its_button(rig: Rig) -> None:
    """And gives the focus back to where it came from."""
    dialog = rig.page.get_by_role("dialog", name=say("open-title"))
    rig.tool(say("tool-open")).click()
    rig.page.keyboard.press("Escape")
    expect(dialog).to_have_count(0)
    expect(rig.tool(say("tool-open"))).to_be_focused()
    rig.tool(say("tool-open")).click()
    dialog.get_by_role("button", name=say("close")).click()
    expect(dialog).to_have_count(0)


def test_the_turning_can_be_stopped_and_started(rig: Rig) -> None:
    """Impeller and marks in the pipes stand still, and move again."""
    wheel = rig.page.locator("#apparatus .impeller").first
    turn = lambda: wheel.get_attribute("transform")  # noqa: E731
    first = turn()
    eventually(rig.page, turn, lambda now: now != first, "a turning impeller")
    rig.page.get_by_role("button", name=say("switch-turning-on")).click()
    started = rig.page.get_by_role("button", name=say("switch-turning-off"))
    expect(started).to_be_visible()
    stands = turn()
    rig.page.evaluate(TWENTY_FRAMES)
    assert turn() == stands
    started.click()
    eventually(rig.page, turn, lambda now: now != stands, "a turning impeller")


def test_the_page_says_that_the_turning_is_slowed(rig: Rig) -> None:
    """At most one turn a second, and said so where the turning can be stopped."""
    expect(rig.page.locator(".fig-apparatus")).to_contain_text("times slower")


PRINT = "() => dispatchEvent(new Event('beforeprint'))"


def test_a_printed_sheet_tells_settings_date_and_link(rig: Rig) -> None:
    """Everything that is needed to come back to it; on the screen it stands nowhere."""
    rig.type_number("drive.frequency_hz", "42.5")
    rig.option("pump.model", "large").click()
    rig.shows({"drive.frequency_hz": 42.5, "pump.model": "large"})
    rig.address_holds({"drive.frequency_hz": 42.5, "pump.model": "large"})
    rig.page.evaluate(PRINT)
    sheet = rig.page.locator(".printed")
    expect(sheet).to_be_hidden()
    rig.page.emulate_media(media="print")
    for told in ("Large pump, 60 m³/h at 48 m", "42.5\u00a0Hz", str(date.today().year), rig.page.url):
        expect(sheet).to_contain_text(told)
    expect(sheet).to_be_visible()
    expect(rig.slider("valve.opening")).to_be_hidden()
    expect(rig.page.locator("figcaption button:visible")).to_have_count(0)
    rig.page.emulate_media(media="screen")


def test_what_a_plant_is_there_for_is_told_until_it_is_changed(rig: Rig) -> None:
    """Where later stands what the change did; and in the menu beside every title."""
    about = native.answer()["plant"]["about"].strip()
    expect(rig.page.locator("#why .about")).to_have_text(about)
    rig.type_number("valve.opening", "30")
    rig.shows({"valve.opening": 0.3})
    expect(rig.page.locator("#why .about")).to_be_hidden()
    expect(rig.page.locator(".then")).to_have_text(say("then-load-down"))
    rig.tool(say("tool-open")).click()
    expect(rig.page.get_by_role("dialog")).to_contain_text(about)
    rig.page.keyboard.press("Escape")
