"""Every control of the rig, by mouse."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import expect

from page.parts.controls import CHOICES, SLIDERS, TYPED, UPWARD
from page.parts.hands import Mouse, drag
from page.parts.rig import Rig
from page.parts.words import say

PULL = 24  # [CSS px]


@pytest.mark.parametrize("key", SLIDERS)
def test_a_slider_is_pulled_to_another_value(rig: Rig, key: str) -> None:
    """Everything shown is then the native answer for where the thumb was left, and the address has it."""
    before = rig.stands_at(key)
    drag(Mouse(rig.page), rig.thumb(key), (-60, 0))
    now = rig.left_at(key)
    assert now < before
    rig.shows({key: now})
    rig.address_holds({key: now})


@pytest.mark.parametrize("key", SLIDERS)
def test_a_number_is_typed_beside_the_slider(rig: Rig, key: str) -> None:
    """The number box takes what is typed, in the shown unit."""
    typed, value = TYPED[key]
    rig.type_number(key, typed)
    rig.shows({key: value})
    rig.address_holds({key: value})
    assert rig.stands_at(key) == pytest.approx(value)


@pytest.mark.parametrize("key", SLIDERS)
def test_a_part_of_the_drawing_is_pulled(rig: Rig, key: str) -> None:
    """Handwheel, level and drive follow the mouse, and their slider follows them."""
    before = rig.stands_at(key)
    across, down = UPWARD[key]
    drag(Mouse(rig.page), rig.middle(rig.part(key)), (PULL * across, PULL * down))
    now = rig.left_at(key)
    assert now > before
    rig.shows({key: now})
    rig.address_holds({key: now})


@pytest.mark.parametrize(("key", "value"), CHOICES)
def test_a_word_of_a_choice_is_clicked(rig: Rig, key: str, value: Any) -> None:
    """Pump, arrangement, mains, poles and the discharge pipe; and the drawing has what belongs to it."""
    rig.option(key, value).click()
    seen = rig.shows({key: value})
    rig.address_holds({key: value})
    assert ("ammeter-2" in seen["readings"]) == (key == "pump.arrangement")
    assert ("line-off" in seen["notes"]) == (key == "discharge.attached")


def test_the_pipe_is_taken_off_and_put_on_again(rig: Rig) -> None:
    """The load is gone and comes back; the page says why that is no fault of the pump, and what to mind."""
    rig.option("discharge.attached", False).click()
    rig.shows({"discharge.attached": False})
    note = rig.page.locator('#notes [data-note="line-off"]')
    expect(note).to_contain_text("no fault of the pump")
    expect(note.locator(".caution-text")).to_contain_text("Never open a line to try")
    rig.option("discharge.attached", True).click()
    rig.shows()
    expect(note).to_have_count(0)


def test_with_the_pipe_off_the_valve_says_why_it_does_nothing(rig: Rig) -> None:
    """It went with the pipe: neither slider nor number nor handwheel moves, and the reason stands there."""
    rig.option("discharge.attached", False).click()
    rig.shows({"discharge.attached": False})
    for control in (rig.slider("valve.opening"), rig.box("valve.opening")):
        expect(control).to_have_accessible_description(say("control-idle"))
        control.focus()
        rig.page.keyboard.press("ArrowDown")
    expect(rig.part("valve.opening")).to_have_attribute("aria-disabled", "true")
    rig.shows({"discharge.attached": False})
    rig.address_holds({"discharge.attached": False})
    rig.option("discharge.attached", True).click()
    expect(rig.slider("valve.opening")).to_have_accessible_description("")


def test_a_pump_in_the_drawing_is_clicked_for_its_panel(rig: Rig) -> None:
    """There it is exchanged for another; shut, the panel leaves the tray as it was."""
    rig.page.locator('#apparatus [data-control="pump-1"]').click()
    rig.page.locator("#part-pump-model").select_option("large")
    rig.shows({"pump.model": "large"})
    rig.page.keyboard.press("Escape")
    expect(rig.option("pump.model", "large")).to_be_visible()


def test_a_shut_valve_is_shown_and_warned_of(rig: Rig) -> None:
    """Nothing flows, the discharge gauge shows the shut-off head, and the caution is there."""
    rig.type_number("valve.opening", "0")
    seen = rig.shows({"valve.opening": 0})
    assert seen["controls"]["valve.opening"] == "shut"
    assert "dead-headed" in seen["notes"]
    expect(rig.page.locator('[data-note="dead-headed"] .caution-text')).to_be_visible()


def test_curves_are_hidden_and_shown_again(rig: Rig) -> None:
    """For an instructor who wants the prediction first."""
    chart = rig.page.locator("#chart svg")
    rig.page.get_by_role("button", name=say("switch-curves-on")).click()
    expect(chart).to_be_hidden()
    rig.page.get_by_role("button", name=say("switch-curves-off")).click()
    expect(chart).to_be_visible()
