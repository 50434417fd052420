"""The page from its first moment to the first live answer."""

from __future__ import annotations

from playwright.sync_api import expect

from page.parts import native
from page.parts.links import state
from page.parts.rig import Rig, same
from page.parts.words import say

BUILT = say("origin-built")
BLANK = say("origin-none")


def test_the_rig_is_there_with_built_readings_before_python_is(fresh: Rig) -> None:
    """Until the worker may start, the apparatus shows what was computed with the build, and says so."""
    held = []
    fresh.page.route("**/js/engine/worker.js", lambda route: held.append(route))
    fresh.open()
    expect(fresh.page.locator("#origin")).to_have_text(BUILT)
    assert same({**fresh.seen(), "origin": ""}, native.answer())
    expect(fresh.page.locator("#status [role=status]")).to_contain_text("Fetching Python")
    held[0].continue_()
    fresh.live()
    expect(fresh.page.locator("#origin")).to_have_text("")
    fresh.shows()


def test_on_a_slow_line_fields_hold_the_place_of_what_is_on_its_way(fresh: Rig) -> None:
    """Before words and modules are there no panel stands blank, and the page says that it is busy."""
    held = []
    fresh.page.route("**/words/en.ftl", lambda route: held.append(route))
    fresh.page.goto(fresh.home, wait_until="commit")
    main = fresh.page.locator("main")
    expect(main).to_have_attribute("aria-busy", "true")
    fields = "(nodes) => nodes.map((node) => [node.offsetHeight, getComputedStyle(node).backgroundColor])"
    for place in ("#apparatus", "#stack", "#chart", "#path", ".fig-apparatus h2", "#why", "#controls"):
        expect(fresh.page.locator(place)).to_be_attached()
        ((height, colour),) = fresh.page.locator(place).evaluate_all(fields)
        assert height > 10 and colour != "rgba(0, 0, 0, 0)", place
    held[0].continue_()
    fresh.live()
    assert main.get_attribute("aria-busy") is None
    assert fresh.page.locator("#apparatus").evaluate_all(fields)[0][1] == "rgba(0, 0, 0, 0)"


def test_a_link_to_another_opening_starts_blank_and_comes_alive(fresh: Rig) -> None:
    """No dial shows a number that was not computed for the valve as the link has it."""
    held = []
    fresh.page.route("**/js/engine/worker.js", lambda route: held.append(route))
    fresh.open(state(edits={"valve.opening": 0.3}))
    expect(fresh.page.locator("#origin")).to_have_text(BLANK)
    seen = fresh.seen()
    assert set(seen["readings"].values()) == {"no reading"}
    assert seen["sliders"]["valve-opening"] == "30\u00a0%"
    held[0].continue_()
    fresh.live()
    fresh.shows({"valve.opening": 0.3})


def test_every_plant_is_answered_as_outside_the_browser(rig: Rig) -> None:
    """Gauges, meters, stack, duty point and notes are the native engine's, for all packaged plants."""
    for plant in native.PLANTS:
        rig.open(state(plant))
        rig.shows(plant=plant)
        assert rig.seen()["title"] == native.answer(plant)["title"]


def test_the_page_says_that_it_is_live(rig: Rig) -> None:
    """The strip below the title says where the numbers come from."""
    assert rig.seen()["status"].startswith("Live")
