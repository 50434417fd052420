"""Every control of the rig, by finger, on a phone."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import expect

from page.parts.controls import CHIPS, CHOICES, SLIDERS, UPWARD
from page.parts.hands import Finger, drag
from page.parts.rig import Rig
from page.parts.scenes import SCENES
from page.parts.words import say

PULL = 24  # [CSS px]


@pytest.mark.parametrize("key", SLIDERS)
def test_a_slider_follows_the_finger(touched: Rig, key: str) -> None:
    """Brought into the tray by its chip, then dragged."""
    touched.chip(CHIPS[key]).tap()
    before = touched.stands_at(key)
    drag(Finger(touched.page), touched.thumb(key), (60, 0))
    now = touched.left_at(key)
    assert now > before
    touched.shows({key: now})
    touched.address_holds({key: now})


@pytest.mark.parametrize("key", SLIDERS)
def test_a_part_of_the_drawing_follows_the_finger(touched: Rig, key: str) -> None:
    """And the page stays where it is: the finger moves the part, not the paper."""
    place = touched.middle(touched.part(key))
    scrolled = touched.page.evaluate("() => scrollY")
    before = touched.stands_at(key)
    across, down = UPWARD[key]
    drag(Finger(touched.page), place, (PULL * across, PULL * down))
    now = touched.left_at(key)
    assert now > before
    touched.shows({key: now})
    assert touched.page.evaluate("() => scrollY") == scrolled


@pytest.mark.parametrize(("key", "value"), CHOICES)
def test_a_word_of_a_choice_is_tapped(touched: Rig, key: str, value: Any) -> None:
    """Each choice has its chip."""
    touched.chip(CHIPS[key]).tap()
    touched.option(key, value).tap()
    touched.shows({key: value})


def test_a_number_is_typed_on_a_phone(touched: Rig) -> None:
    """The number box asks for the digits' keyboard and takes the number."""
    touched.chip(say("chip-speed")).tap()
    box = touched.box("drive.frequency_hz")
    expect(box).to_have_attribute("inputmode", "decimal")
    box.tap()
    touched.page.keyboard.press("Control+A")
    touched.page.keyboard.type("40")
    touched.page.keyboard.press("Enter")
    touched.shows({"drive.frequency_hz": 40})


def test_the_tools_unfold_and_fold_on_a_phone(touched: Rig) -> None:
    """Units, theme, link and reset are behind one button; a tap beside them folds them away."""
    units = touched.page.get_by_label(say("units-label"), exact=True)
    expect(units).to_be_hidden()
    touched.tool(say("tool-more")).tap()
    expect(units).to_be_visible()
    units.select_option("gpm-psi-ft")
    touched.shows(unit="psi")
    touched.page.locator("#apparatus").tap(position={"x": 5, "y": 5})
    expect(units).to_be_hidden()


def test_a_tap_that_does_not_move_changes_nothing(touched: Rig) -> None:
    """Touching the handwheel brings its panel and leaves its control in the tray; only a drag turns it."""
    touched.chip(say("chip-pump")).tap()
    touched.part("valve.opening").tap()
    expect(touched.page.locator("#part-valve-opening")).to_be_visible()
    touched.shows()
    touched.address_holds({})
    touched.page.get_by_role("button", name=say("close"), exact=True).tap()
    expect(touched.slider("valve.opening")).to_be_visible()


def test_on_a_phone_a_caution_is_told_above_the_drawing_and_leads_to_its_note(touched: Rig) -> None:
    """The notes lie below what is in sight; without a caution, nothing is told."""
    alarm = touched.page.locator("#status .alarm")
    expect(alarm).to_be_hidden()
    touched.open(SCENES["valve shut"]).live()
    expect(alarm).to_be_visible()
    first = touched.page.locator("#notes .caution .note-title").first
    expect(alarm).to_have_text(first.inner_text())
    alarm.tap()
    expect(first).to_be_focused()
    expect(first).to_be_in_viewport()
