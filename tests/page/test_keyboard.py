"""Every control of the rig, by keys alone."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import expect

from page.parts.controls import CHOICES, SLIDERS
from page.parts.rig import Rig, radio, slug
from page.parts.words import say


@pytest.mark.parametrize("key", SLIDERS)
def test_a_slider_moves_by_arrow_keys(rig: Rig, key: str) -> None:
    """Two steps up and one down are one step up."""
    start = rig.stands_at(key)
    rig.slider(key).focus()
    rig.page.keyboard.press("ArrowRight")
    step = rig.stands_at(key) - start
    assert step > 0
    rig.page.keyboard.press("ArrowUp")
    rig.page.keyboard.press("ArrowLeft")
    assert rig.stands_at(key) == pytest.approx(start + step)
    rig.shows({key: rig.stands_at(key)})
    rig.address_holds({key: rig.stands_at(key)})


@pytest.mark.parametrize("key", SLIDERS)
def test_a_part_of_the_drawing_moves_by_arrow_keys(rig: Rig, key: str) -> None:
    """The drawn parts are sliders too: arrows, page keys, Home and End."""
    start = rig.stands_at(key)
    rig.part(key).focus()
    rig.page.keyboard.press("ArrowUp")
    expect(rig.slider(key)).not_to_have_value(f"{start:g}")
    one = rig.stands_at(key) - start
    assert one > 0
    rig.page.keyboard.press("ArrowDown")
    expect(rig.slider(key)).to_have_value(f"{start:g}")
    rig.page.keyboard.press("PageDown")
    expect(rig.slider(key)).not_to_have_value(f"{start:g}")
    assert start - rig.stands_at(key) > 2 * one
    low, high = (float(rig.slider(key).get_attribute(end) or "nan") for end in ("min", "max"))
    for press, value in (("Home", low), ("End", high)):
        rig.page.keyboard.press(press)
        rig.shows({key: value})
    rig.address_holds({key: high})


@pytest.mark.parametrize(("key", "value"), CHOICES)
def test_a_choice_is_made_by_arrow_keys(rig: Rig, key: str, value: Any) -> None:
    """From the chosen word, arrows walk to the wanted one."""
    wanted = rig.page.locator(radio(key, value))
    rig.page.locator(f'input[name="{slug(key)}"]:checked').focus()
    for _ in range(4):
        if wanted.is_checked():
            break
        rig.page.keyboard.press("ArrowRight")
    expect(wanted).to_be_checked()
    rig.shows({key: value})


def test_a_number_box_takes_digits_and_enter(rig: Rig) -> None:
    """Nothing but keys: focus, select, type, Enter."""
    rig.box("valve.opening").focus()
    rig.page.keyboard.press("Control+A")
    rig.page.keyboard.type("25")
    rig.page.keyboard.press("Enter")
    rig.shows({"valve.opening": 0.25})


def test_a_number_box_takes_its_number_when_it_is_left(rig: Rig) -> None:
    """Tab goes on and what was typed counts."""
    rig.box("supply.surface_m").focus()
    rig.page.keyboard.press("Control+A")
    rig.page.keyboard.type("1.5")
    rig.page.keyboard.press("Tab")
    rig.shows({"supply.surface_m": 1.5})


def test_tools_are_pressed_by_enter_and_space(rig: Rig) -> None:
    """Undo and redo by the keys that press buttons; the units by the keys of a list."""
    rig.type_number("valve.opening", "30")
    rig.shows({"valve.opening": 0.3})
    rig.tool(say("tool-undo")).focus()
    rig.page.keyboard.press("Enter")
    rig.shows()
    rig.tool(say("tool-redo")).focus()
    rig.page.keyboard.press("Space")
    rig.shows({"valve.opening": 0.3})
    rig.page.get_by_label(say("units-label"), exact=True).focus()
    rig.page.keyboard.press("ArrowDown")
    rig.shows({"valve.opening": 0.3}, unit="kPa")


def test_both_curves_are_read_with_arrow_keys(rig: Rig) -> None:
    """The chart's reading line is a slider that says what load and machine are at its flow."""
    reader = rig.page.get_by_role("slider", name=say("draw-readout"))
    reader.focus()
    rig.page.keyboard.press("ArrowRight")
    first = reader.get_attribute("aria-valuetext")
    rig.page.keyboard.press("ArrowRight")
    expect(reader).not_to_have_attribute("aria-valuetext", first or "")
    assert "the load asks" in (reader.get_attribute("aria-valuetext") or "")
