"""Numbers that will not do: a sentence beside them, and nothing lost."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from page.parts.controls import SLIDERS
from page.parts.links import link, state
from page.parts.rig import Rig
from page.parts.words import say

OUTSIDE = {
    "valve.opening": ("120", "0"),
    "drive.frequency_hz": ("500", "5"),
    "supply.surface_m": ("-3", "0.00"),
    "delivery.surface_m": ("99", "12.00"),
}


@pytest.mark.parametrize("key", SLIDERS)
def test_a_number_out_of_range_is_answered_beside_its_box(rig: Rig, key: str) -> None:
    """With what was typed and what would do; the old value stays, and what was typed stays to be mended."""
    typed, low = OUTSIDE[key]
    stood = rig.stands_at(key)
    rig.type_number(key, typed)
    expect(rig.complaint(key)).to_contain_text(typed)
    expect(rig.complaint(key)).to_contain_text(f"from {low}")
    expect(rig.box(key)).to_have_value(typed)
    expect(rig.box(key)).to_have_attribute("aria-invalid", "true")
    assert rig.stands_at(key) == stood
    rig.shows()
    rig.address_holds({})


@pytest.mark.parametrize("key", SLIDERS)
@pytest.mark.parametrize("typed", ["", "e", "--", "1e999"])
def test_what_is_no_number_is_answered_beside_its_box(rig: Rig, key: str, typed: str) -> None:
    """Nothing, a letter, two signs, more than any number."""
    rig.type_number(key, typed)
    expect(rig.complaint(key)).to_contain_text("will do")
    rig.shows()
    rig.address_holds({})


def test_the_sentence_goes_when_the_number_is_mended(rig: Rig) -> None:
    """And the mended number counts."""
    rig.type_number("valve.opening", "120")
    expect(rig.complaint("valve.opening")).to_be_visible()
    rig.type_number("valve.opening", "20")
    expect(rig.complaint("valve.opening")).to_be_hidden()
    rig.shows({"valve.opening": 0.2})
    expect(rig.box("valve.opening")).not_to_have_attribute("aria-invalid", "true")


def test_the_sentence_goes_when_the_slider_is_moved(rig: Rig) -> None:
    """A good value by another way is good too."""
    rig.type_number("valve.opening", "120")
    expect(rig.complaint("valve.opening")).to_be_visible()
    rig.slider("valve.opening").focus()
    rig.page.keyboard.press("ArrowLeft")
    expect(rig.complaint("valve.opening")).to_be_hidden()
    stands = rig.stands_at("valve.opening")
    expect(rig.box("valve.opening")).to_have_value(f"{100 * stands:g}")
    rig.shows({"valve.opening": stands})


def test_a_wrong_number_hinders_no_other_control(rig: Rig) -> None:
    """What stands in one box is no matter of the others."""
    rig.type_number("valve.opening", "120")
    rig.type_number("supply.surface_m", "1.5")
    rig.shows({"supply.surface_m": 1.5})
    expect(rig.complaint("valve.opening")).to_be_visible()
    rig.tool(say("tool-undo")).click()
    rig.shows()


def test_the_sentence_is_tied_to_its_box_for_who_cannot_see_it(rig: Rig) -> None:
    """The box is described by it."""
    rig.type_number("valve.opening", "120")
    box = rig.box("valve.opening")
    expect(box).to_have_accessible_description(rig.complaint("valve.opening").inner_text())


PASTE = """
([box, text]) => {
  box.select();
  document.execCommand("insertText", false, text);
}
"""


@pytest.mark.parametrize(("text", "value"), [("42,5", 42.5), ("42.5", 42.5), ("0.042,5", None)])
def test_a_decimal_comma_is_understood_typed_or_pasted(rig: Rig, text: str, value: float | None) -> None:
    """Forty-two and a half, never four hundred and twenty-five."""
    rig.type_number("drive.frequency_hz", "30")
    rig.box("drive.frequency_hz").click()
    rig.page.evaluate(PASTE, [rig.box("drive.frequency_hz").element_handle(), text])
    rig.page.keyboard.press("Enter")
    if value is None:
        expect(rig.complaint("drive.frequency_hz")).to_be_visible()
        value = 30
    rig.shows({"drive.frequency_hz": value})


def test_a_german_reader_sees_and_types_a_comma(visitor: Callable[..., Rig], site: str) -> None:
    """What stands in the box can be typed into it."""
    rig = visitor(site, locale="de-DE").open()
    box = rig.box("drive.frequency_hz")
    expect(box).to_have_value("50,0")
    rig.type_number("drive.frequency_hz", "42,5")
    expect(box).to_have_value("42,5")
    rig.address_holds({"drive.frequency_hz": 42.5})


def test_arrows_in_a_number_box_go_by_the_step(rig: Rig) -> None:
    """Half a hertz up, two down; the ends hold."""
    box = rig.box("drive.frequency_hz")
    box.focus()
    rig.page.keyboard.press("ArrowUp")
    expect(box).to_have_value("50.5")
    for _ in range(2):
        rig.page.keyboard.press("ArrowDown")
    expect(box).to_have_value("49.5")
    rig.shows({"drive.frequency_hz": 49.5})
    rig.type_number("drive.frequency_hz", "5")
    rig.page.keyboard.press("ArrowDown")
    expect(box).to_have_value("5.0")


ELSEWHERE: dict[str, Callable[[Rig], None]] = {
    "reset": lambda rig: rig.tool(say("tool-reset")).click(),
    "undo": lambda rig: rig.tool(say("tool-undo")).click(),
    "a link": lambda rig: rig.page.evaluate("(end) => { location.hash = end; }", link(state())),
    "the pipe taken off": lambda rig: rig.option("discharge.attached", False).click(),
}


@pytest.mark.parametrize("change", ELSEWHERE)
def test_what_will_not_do_goes_when_the_state_changes_elsewhere(rig: Rig, change: str) -> None:
    """The box shows what stands, and complains no more."""
    rig.option("pump.model", "large").click()
    rig.shows({"pump.model": "large"})
    stood = rig.box("valve.opening").input_value()
    rig.type_number("valve.opening", "zzz")
    expect(rig.complaint("valve.opening")).to_be_visible()
    ELSEWHERE[change](rig)
    expect(rig.complaint("valve.opening")).to_be_hidden()
    expect(rig.box("valve.opening")).to_have_value(stood)
    expect(rig.box("valve.opening")).not_to_have_attribute("aria-invalid", "true")


@pytest.mark.parametrize("entered", [True, False])
def test_escape_brings_the_value_back(rig: Rig, entered: bool) -> None:
    """Whether what was typed has been entered or not."""
    box = rig.box("valve.opening")
    stood = box.input_value()
    box.fill("zzz")
    if entered:
        box.press("Enter")
        expect(rig.complaint("valve.opening")).to_be_visible()
    box.press("Escape")
    expect(box).to_have_value(stood)
    expect(rig.complaint("valve.opening")).to_be_hidden()
    box.press("Tab")
    rig.shows()
    rig.address_holds({})


def test_a_number_with_the_unit_beside_it_is_understood(rig: Rig) -> None:
    """As it is copied from the screen."""
    rig.type_number("valve.opening", "50 %")
    rig.shows({"valve.opening": 0.5})
    expect(rig.box("valve.opening")).to_have_value("50")
