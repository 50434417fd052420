"""The page without a mouse and without eyes: the order of tabs, the mark of the focus, the spoken names."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import expect

from page.parts.controls import CHOICES, SLIDERS
from page.parts.rig import Rig, slug
from page.parts.scenes import show
from page.parts.words import say

MOST = 90  # stops of a page

# Every stop that Tab should make; a group of radio buttons is one.
STOPS = """
() => {
  const wanted = "a[href], button, input, select, textarea, summary, [tabindex]";
  const seen = new Set();
  const stops = [...document.querySelectorAll(wanted)].filter((node) => {
    if (node.tabIndex < 0 || node.disabled || node.closest("[inert]")) return false;
    if (!node.checkVisibility({visibilityProperty: true})) return false;
    if (node.type !== "radio") return true;
    const chosen = document.querySelector(`input[name="${node.name}"]:checked`) ?? node;
    const first = !seen.has(node.name) && chosen === node;
    if (first) seen.add(node.name);
    return first;
  });
  stops.forEach((node, index) => { node.dataset.stop = index; });
  return stops.map((node) => node.outerHTML.slice(0, 90));
}
"""

# Where the focus is: its stop, the place on the screen, and whether something lies over it.
AT = """
() => {
  const at = document.activeElement;
  if (!at || at === document.body) return null;
  const shown = at.type === "radio" ? at.closest("label") : at;
  const {left, top, width, height} = shown.getBoundingClientRect();
  const x = Math.min(innerWidth - 1, left + width / 2), y = Math.min(innerHeight - 1, top + height / 2);
  const over = document.elementFromPoint(x, y);
  const hidden = !(over && (shown.contains(over) || over.contains(shown)));
  return {stop: at.dataset.stop ?? at.outerHTML.slice(0, 90), left, top, width, height, hidden};
}
"""

# The browser's own bar is a stop too; then nothing of the page has the focus.
INSIDE = """
() => document.activeElement === document.body || document.activeElement.closest("#open") !== null
"""


def picture(rig: Rig, at: dict[str, Any]) -> bytes:
    """The screen round the place that has, or had, the focus."""
    room = 5
    size = rig.page.viewport_size
    assert size
    left, top = max(0, at["left"] - room), max(0, at["top"] - room)
    clip = {
        "x": left,
        "y": top,
        "width": max(1, min(at["width"] + 2 * room, size["width"] - left)),
        "height": max(1, min(at["height"] + 2 * room, size["height"] - top)),
    }
    return rig.page.screenshot(clip=clip, animations="disabled")


def walk(rig: Rig, key: str = "Tab") -> list[dict[str, Any]]:
    """Press a key until the focus has gone round; every stop on the way, with whether its focus is seen."""
    found: list[dict[str, Any]] = []
    for _ in range(MOST):
        rig.page.keyboard.press(key)
        at = rig.page.evaluate(AT)
        if at is None or any(at["stop"] == each["stop"] for each in found):
            return found
        with_focus = picture(rig, at)
        rig.page.evaluate("() => document.activeElement.blur()")  # the next Tab goes on from here
        at["seen"] = picture(rig, at) != with_focus
        found.append(at)
    raise AssertionError(f"the focus did not come round in {MOST} steps: a trap, or an endless page")


@pytest.mark.parametrize("scene", ["rig", "case, before", "case, between", "case, right"])
def test_tab_reaches_everything_and_is_seen_everywhere(
    visitor: Callable[..., Rig], site: str, scene: str
) -> None:
    """In the order of the page, visibly, with nothing over it, and out again at the end."""
    rig = visitor(site, reduced_motion="reduce")
    show(rig, scene)  # as a link: coming from another place, the focus would begin further down
    rig.page.mouse.move(0, 0)
    rig.page.evaluate("() => document.activeElement?.blur()")
    stops = rig.page.evaluate(STOPS)
    found = walk(rig)
    reached = [each["stop"] for each in found]
    assert [stops[int(stop)] for stop in map(str, range(len(stops))) if stop not in reached] == []
    assert reached == sorted(reached, key=int)
    assert [stops[int(each["stop"])] for each in found if not each["seen"]] == []
    assert [stops[int(each["stop"])] for each in found if each["hidden"]] == []


def test_shift_tab_goes_the_same_way_back(visitor: Callable[..., Rig], site: str) -> None:
    """No stop holds the focus in either direction."""
    rig = visitor(site, reduced_motion="reduce")
    show(rig, "rig")
    rig.page.evaluate("() => document.activeElement?.blur()")
    rig.page.evaluate(STOPS)
    there = [each["stop"] for each in walk(rig)]
    rig.page.evaluate("() => document.activeElement?.blur()")
    back = [each["stop"] for each in walk(rig, "Shift+Tab")]
    assert set(back) == set(there)


def test_the_first_stop_leads_past_the_tools(fresh: Rig) -> None:
    """A link that is seen when it has the focus."""
    rig = fresh.open().live()
    rig.page.keyboard.press("Tab")
    skip = rig.page.get_by_role("link", name=re.compile("Skip"))
    expect(skip).to_be_focused()
    box = skip.bounding_box()
    assert box and box["y"] >= 0 and box["height"] > 10
    rig.page.keyboard.press("Enter")
    expect(rig.page.locator("#rig")).to_be_focused()


def test_the_dialog_keeps_the_focus_and_gives_it_back(rig: Rig) -> None:
    """Tab stays within while it is open."""
    rig.tool(say("tool-open")).focus()
    rig.page.keyboard.press("Enter")
    for _ in range(20):
        rig.page.keyboard.press("Tab")
        assert rig.page.evaluate(INSIDE)
    rig.page.keyboard.press("Escape")
    expect(rig.tool(say("tool-open"))).to_be_focused()


METERS = {
    say("draw-gauge-suction"): "gauge-suction",
    say("draw-gauge-discharge"): "gauge-discharge",
    say("draw-gauge-after-valve"): "gauge-after-valve",
    say("draw-flow-meter"): "flow-meter",
}
DRAWN = [say(f"draw-{part}") for part in ("valve", "drive", "level-supply", "level-delivery")]
NATIVE = [say(f"control-{slug(key)}") for key in SLIDERS]
GROUPS = [say(f"control-{slug(key)}") for key in dict.fromkeys(key for key, _ in CHOICES)]


def test_every_instrument_has_a_name_and_says_its_reading(rig: Rig) -> None:
    """As a meter, with its number and unit."""
    seen = rig.seen()["readings"]
    for name, reading in METERS.items():
        meter = rig.page.get_by_role("meter", name=name, exact=True)
        expect(meter).to_have_attribute("aria-valuetext", seen[reading])


def test_every_control_has_a_name_a_value_and_ends(rig: Rig) -> None:
    """The drawn ones and the native ones."""
    for name in [*DRAWN, *NATIVE]:
        slider = rig.page.get_by_role("slider", name=name, exact=True)
        expect(slider).to_have_count(1)
        assert slider.get_attribute("aria-valuetext")
    for name in GROUPS:
        group = rig.page.get_by_role("group", name=name, exact=True)
        assert group.get_by_role("radio", checked=True).count() == 1
    for name in NATIVE:
        expect(rig.page.get_by_role("spinbutton", name=say("control-number", name=name))).to_be_visible()


def test_the_outcome_is_announced_after_a_change(rig: Rig) -> None:
    """Once the hand has let go, in the one sentence that says it all."""
    rig.type_number("valve.opening", "30")
    rig.shows({"valve.opening": 0.3})
    expect(rig.page.locator("#announce")).to_contain_text(say("then-load-down"))
    assert rig.seen()["why"] in rig.page.locator("#announce").inner_text()
