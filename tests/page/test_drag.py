"""What happens while a control is in the hand, before it is let go."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from page.parts.hands import Mouse, holding
from page.parts.rig import Rig
from page.parts.waiting import eventually
from page.parts.words import say

VALVE = "valve.opening"
HELD = ["the slider", "the handwheel"]


def grip(rig: Rig, held: str) -> tuple[tuple[float, float], tuple[float, float]]:
    """Where a hand takes the valve, and where it pulls it to shut it somewhat."""
    if held == "the slider":
        x, y = rig.thumb("valve.opening")
        return (x, y), (x - 70, y)
    x, y = rig.middle(rig.part("valve.opening"))
    return (x, y), (x, y + 30)


@pytest.mark.parametrize("held", HELD)
def test_gauge_stack_and_chart_move_before_the_hand_lets_go(rig: Rig, held: str) -> None:
    """And only then does the address change."""
    stood, before = rig.stands_at(VALVE), rig.seen()
    start, end = grip(rig, held)
    with holding(Mouse(rig.page), start) as hand:
        hand.move(end)
        now, during = rig.held_at(VALVE, stood)
        assert now < stood
        for shown in ("stack", "chart", "why"):
            assert during[shown] != before[shown], shown
        assert during["needles"]["gauge-discharge"] != before["needles"]["gauge-discharge"]
        assert rig.address_state()["edits"] == {}
    rig.shows({VALVE: rig.left_at(VALVE)})


@pytest.mark.parametrize("held", HELD)
def test_the_position_before_the_drag_stays_as_a_ghost(rig: Rig, held: str) -> None:
    """The hollow mark of the chart stands where the duty point was, during the drag and after."""
    ghost = rig.page.locator("#chart .duty-before")
    duty = rig.page.locator("#chart .duty")
    stood = rig.stands_at(VALVE)
    start, end = grip(rig, held)
    with holding(Mouse(rig.page), start) as hand:
        hand.move(end)
        rig.held_at(VALVE, stood)
        was = eventually(rig.page, ghost.bounding_box, bool, "a ghost")
        now = duty.bounding_box()
        assert was and now and was["x"] > now["x"] + 2
    rig.shows({VALVE: rig.left_at(VALVE)})
    assert ghost.bounding_box() == was


def test_one_drag_is_one_step_back(rig: Rig) -> None:
    """However many values it passed."""
    start, end = grip(rig, "the handwheel")
    last = rig.stands_at(VALVE)
    with holding(Mouse(rig.page), start) as hand:
        for part in (0.3, 0.6, 0.8, 1.0):
            hand.move((start[0], start[1] + part * (end[1] - start[1])))
            last, _ = rig.held_at(VALVE, last)
    rig.left_at(VALVE)
    rig.tool(say("tool-undo")).click()
    rig.shows()
    rig.address_holds({})


def test_escape_gives_a_drag_up(rig: Rig) -> None:
    """Back to where the part stood; nothing is remembered."""
    stood = rig.stands_at(VALVE)
    start, end = grip(rig, "the handwheel")
    with holding(Mouse(rig.page), start) as hand:
        hand.move(end)
        rig.held_at(VALVE, stood)
        rig.page.keyboard.press("Escape")
        rig.shows()
    rig.shows()
    rig.address_holds({})


def test_the_sentence_says_on_which_side_something_changed(rig: Rig) -> None:
    """Valve: the load. Speed: the machine."""
    rig.type_number("valve.opening", "40")
    assert rig.shows({"valve.opening": 0.4})["then"] == say("then-load-down")
    rig.type_number("drive.frequency_hz", "45")
    seen = rig.shows({"valve.opening": 0.4, "drive.frequency_hz": 45})
    assert seen["then"] == say("then-machine-down")


TRACED = ["devtools.timeline", "disabled-by-default-devtools.timeline.invalidationTracking"]


def test_a_drag_lays_out_only_what_it_changes(rig: Rig, chromium: Browser, tmp_path: Path) -> None:
    """The numerals of the dials stay: no letter of them is set anew, however often the needles move."""
    stood = rig.stands_at(VALVE)
    start, end = grip(rig, "the slider")
    with holding(Mouse(rig.page), start) as hand:
        hand.move(end)
        now, _ = rig.held_at(VALVE, stood)
        chromium.start_tracing(page=rig.page, path=tmp_path / "trace.json", categories=TRACED)
        hand.move(start)
        rig.held_at(VALVE, now)
        chromium.stop_tracing()
    trace = json.loads((tmp_path / "trace.json").read_text())["traceEvents"]
    marked = [each["args"]["data"] for each in trace if each["name"] == "LayoutInvalidationTracking"]
    assert any("dial-needle" in each["nodeName"] for each in marked)
    assert not [each for each in marked if "dial-numeral" in each["nodeName"]]
