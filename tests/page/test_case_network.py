"""A case on a line that fails: nothing that was answered is lost, and the page says what to do."""

from __future__ import annotations

from playwright.sync_api import expect

from page.parts import native
from page.parts.links import state
from page.parts.play import PREDICTION, Mouse, Play
from page.parts.rig import Rig
from page.parts.words import say

START = state(place="case", case=native.CASE, moves=[])


def test_a_simulator_that_cannot_be_loaded_is_told_with_the_way_out(fresh: Rig, problems: list[str]) -> None:
    """The story stands there, the prediction is kept, and trying again goes on from it."""
    fresh.page.route("**/runtime/**", lambda route: route.abort())
    fresh.open(START)
    play = Play(fresh, Mouse(fresh))
    expect(play.part(say("case-story-title"))).to_be_visible()
    fresh.page.locator('input[name="case-says"][value="up"]').click()
    fresh.page.locator('input[name="case-suspects"][value="discharge-side"]').click()
    fresh.page.get_by_role("button", name=say("case-commit")).click()
    trouble = fresh.page.locator("#case .case-trouble")
    expect(trouble).to_contain_text(say("case-failed-start"), timeout=60_000)
    fresh.page.unroute("**/runtime/**")
    trouble.get_by_role("button", name=say("case-again")).click()
    expect(play.part(say("case-readings-title"))).to_be_visible(timeout=60_000)
    fresh.address(lambda now: now["view"]["moves"] == [PREDICTION], "the prediction in the address")
    problems.clear()  # what the browser says of the files that it did not get


def test_a_case_is_played_to_its_end_without_a_line(fresh: Rig, problems: list[str]) -> None:
    """Once the simulator is there: checks, verdict, and what the play was worth."""
    fresh.open(START).live()
    fresh.page.context.set_offline(True)
    play = Play(fresh, Mouse(fresh))
    play.predict()
    play.check("flow")
    play.decide("lighter")
    expect(fresh.page.locator(".case-debrief .case-points")).to_be_visible(timeout=90_000)
    fresh.page.context.set_offline(False)
    problems.clear()  # the page's icon is asked for again
