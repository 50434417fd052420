"""A worker that dies or hangs while somebody is at it."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Worker, expect

from page.parts.hands import Mouse, holding
from page.parts.rig import Rig
from page.parts.words import say

# Later, so that the call itself comes back.
DEATHS = {
    "an uncaught error": "() => { setTimeout(() => { throw new Error('killed for a test'); }, 0); }",
    "an end without a word": "() => { setTimeout(() => self.close(), 0); }",
    "an endless loop": "() => { setTimeout(() => { for (;;); }, 0); }",
}
OLD = re.compile(r"\bold\b")
RESTART = 45  # [s] the time limit of an answer, a new start, and room for a slow machine


def worker(rig: Rig) -> Worker:
    """The worker that Python runs in."""
    (one,) = rig.page.workers
    return one


@pytest.mark.parametrize("death", ["an uncaught error", "an endless loop"])
def test_a_worker_that_dies_in_the_middle_of_a_drag_is_replaced(
    fresh: Rig, problems: list[str], death: str
) -> None:
    """The hand goes on; the new worker answers the last input, and only that is in the address."""
    fresh.open().live()
    x, y = fresh.thumb("valve.opening")
    with holding(Mouse(fresh.page), (x, y)) as hand:
        hand.move((x - 40, y))
        fresh.shows({"valve.opening": fresh.stands_at("valve.opening")})
        worker(fresh).evaluate(DEATHS[death])
        hand.move((x - 70, y))
        hand.move((x - 100, y))
        now = fresh.stands_at("valve.opening")
        fresh.shows({"valve.opening": now}, seconds=RESTART)
        hand.move((x - 110, y))
        last = fresh.stands_at("valve.opening")
        assert last < now
    fresh.live()
    fresh.shows({"valve.opening": last})
    fresh.address_holds({"valve.opening": last})
    problems[:] = [line for line in problems if "killed for a test" not in line]


def test_the_page_says_that_python_is_starting_again(fresh: Rig, problems: list[str]) -> None:
    """While it does; the rig and its last numbers stay in sight."""
    fresh.open().live()
    fresh.type_number("valve.opening", "30")
    fresh.shows({"valve.opening": 0.3})
    held = []
    fresh.page.route("**/js/engine/worker.js", lambda route: held.append(route))
    worker(fresh).evaluate(DEATHS["an uncaught error"])
    expect(fresh.page.locator("#status")).to_contain_text(say("boot-restart"))
    assert fresh.seen()["readings"]["flow-meter"] != "no reading"
    fresh.type_number("valve.opening", "20")
    held[0].continue_()
    fresh.live()
    fresh.shows({"valve.opening": 0.2})
    problems[:] = [line for line in problems if "killed for a test" not in line]


def test_a_worker_that_dies_at_rest_is_replaced_for_the_next_question(fresh: Rig) -> None:
    """Nobody sees more than a moment's wait."""
    fresh.open().live()
    worker(fresh).evaluate(DEATHS["an end without a word"])
    fresh.type_number("valve.opening", "30")
    fresh.shows({"valve.opening": 0.3}, seconds=RESTART)
    fresh.live()


def test_readings_are_said_to_be_old_while_an_answer_is_long_in_coming(fresh: Rig) -> None:
    """Until the worker that hangs is replaced; then nothing of it is left."""
    fresh.open().live()
    worker(fresh).evaluate(DEATHS["an endless loop"])
    fresh.type_number("valve.opening", "30")
    expect(fresh.page.locator("#status [role=status]")).to_have_text(say("computing"))
    expect(fresh.page.locator("#origin")).to_have_text(say("origin-old"))
    expect(fresh.page.locator("#rig")).to_have_class(OLD)
    fresh.shows({"valve.opening": 0.3}, seconds=RESTART)
    fresh.live()
    expect(fresh.page.locator("#rig")).not_to_have_class(OLD)
