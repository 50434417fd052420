"""The course: what is kept of it, numbers of one's own, results that are handed in, the wall."""

from __future__ import annotations

import re
from collections.abc import Callable

from playwright.sync_api import Locator, expect

from page.parts import native
from page.parts.links import state, unpack
from page.parts.play import PREDICTION, Mouse, Play, decided
from page.parts.rig import Rig
from page.parts.words import say

DECIDED = state(place="case", case=native.CASE, moves=[PREDICTION, decided("worn", "overhaul")])


def row(rig: Rig) -> Locator:
    """The case on the map."""
    return rig.page.locator(f'#course [data-case="{native.CASE}"]')


def to_course(rig: Rig) -> None:
    """By the places, once more from a case."""
    rig.page.locator("#place-case").click()
    if not rig.page.locator("#course").is_visible():
        rig.page.locator("#place-case").click()
    expect(row(rig)).to_be_visible()


def begun(rig: Rig) -> Play:
    """A case opened from the map, predicted, with one check taken."""
    to_course(rig)
    row(rig).locator(".course-go").click()
    play = Play(rig, Mouse(rig))
    play.predict()
    play.check("flow")
    return play


def test_a_half_played_case_goes_on_in_another_tab_and_after_a_reload(fresh: Rig) -> None:
    """Where it was left, by what this browser keeps and no link; until its result is there."""
    fresh.open().live()
    begun(fresh)
    other = Rig(fresh.page.context.new_page(), fresh.home).open(state(place="course")).live()
    expect(row(other)).to_have_class(re.compile("course-begun"))
    expect(row(other).locator(".course-state")).to_contain_text("2")
    row(other).locator(".course-go").click()
    expect(other.page.locator('[data-key="check-flow"]')).to_be_visible()
    play = Play(other, Mouse(other))
    play.decide("lighter")
    expect(play.part(say("case-result-title"))).to_be_visible()
    other.page.reload()
    to_course(other)
    expect(row(other)).to_have_class(re.compile("course-done"))


def test_what_is_kept_can_be_deleted_one_by_one_and_as_a_whole(fresh: Rig) -> None:
    """With a question before the whole goes; a case that is unknown here stays until then."""
    fresh.open().live()
    fresh.page.evaluate(
        """() => localStorage.setItem("loadfirst:course", JSON.stringify(
          {format: 1, cases: {"from-elsewhere": {seed: 3, moves: [{do: "hint"}], results: []}}}))"""
    )
    begun(fresh)
    to_course(fresh)
    row(fresh).get_by_role("button", name=re.compile(re.escape(say("course-forget-one", title="")))).click()
    expect(row(fresh).locator(".course-state")).to_have_text(say("course-new"))
    assert list(kept(fresh)) == ["from-elsewhere"]
    fresh.page.locator("#course-forget").click()
    fresh.page.locator("#course-forget-yes").click()
    assert kept(fresh) == {}
    row(fresh).locator(".course-go").click()
    expect(Play(fresh, Mouse(fresh)).part(say("case-predict-title"))).to_be_visible()


def test_a_result_that_was_deleted_does_not_come_back(fresh: Rig) -> None:
    """Its end is still known to the page when the case is opened again, in other units."""
    fresh.open().live()
    begun(fresh).decide("lighter")
    expect(fresh.page.locator("#case .case-points")).to_be_visible(timeout=90_000)
    to_course(fresh)
    row(fresh).get_by_role("button", name=re.compile(re.escape(say("course-forget-one", title="")))).click()
    fresh.page.get_by_label(say("units-label"), exact=True).select_option("gpm-psi-ft")
    row(fresh).locator(".course-go").click()
    expect(Play(fresh, Mouse(fresh)).part(say("case-predict-title"))).to_be_visible()
    assert kept(fresh) == {}


def kept(rig: Rig) -> dict[str, object]:
    """What the browser keeps of the course."""
    return rig.page.evaluate("() => JSON.parse(localStorage.getItem('loadfirst:course')).cases")


def test_a_link_gives_everybody_numbers_of_their_own(
    fresh: Rig, visitor: Callable[..., Rig], site: str
) -> None:
    """Drawn once in each browser, kept when the link is opened again, and shown in the result."""
    link = state(place="case", case=native.CASE, moves=[], seed="each")
    seeds = []
    for rig in (fresh, visitor(site)):
        rig.open(link).live()
        play = Play(rig, Mouse(rig))
        play.predict()
        play.check("flow")
        rig.address(lambda now: isinstance(now["view"]["seed"], int), "a seed in the address")
        seeds.append(unpack(rig.page.url)["view"]["seed"])
    assert seeds[0] != seeds[1]
    fresh.page.goto("about:blank")
    fresh.open(link)
    expect(fresh.page.locator('[data-key="check-flow"]')).to_be_visible(timeout=60_000)
    play = Play(fresh, Mouse(fresh))
    play.decide("lighter")
    expect(play.part(say("case-result-title"))).to_contain_text(say("case-result-seed", seed=str(seeds[0])))


def test_another_draw_begins_anew_with_what_the_engine_says_of_it(rig: Rig) -> None:
    """Every number of the story is that of the seed in the address."""
    to_course(rig)
    row(rig).get_by_role("button", name=say("case-draw")).click()
    play = Play(rig, Mouse(rig))
    expect(play.part(say("case-story-title"))).to_be_visible()
    rig.address(lambda now: isinstance(now["view"]["seed"], int), "a seed in the address")
    seed = unpack(rig.page.url)["view"]["seed"]
    view = native.ask("case", {"case": native.CASE, "moves": [], "seed": seed})
    told = next(part for part in view["story"][0] if part["part"] == "quantity")
    expect(play.part(say("case-story-title"))).to_contain_text(f"{told['value'] / 1e5:.2f}")
    expect(rig.page.locator("#case .case-heading")).to_contain_text(say("case-seed", seed=str(seed)))


def test_a_result_is_handed_in_as_a_line_and_read_as_a_table(rig: Rig) -> None:
    """From the end of a play to the teacher's table; somebody else's end is no result of one's own."""
    rig.open(DECIDED)
    code = rig.page.locator(".case-code")
    expect(code).to_be_visible()
    line = code.input_value()
    to_course(rig)
    expect(row(rig).locator(".course-state")).to_have_text(say("course-new"))
    rig.page.locator("#course-codes").fill(f"Anna: {line}\nBen: {line.replace('worn', 'warn')}")
    table = rig.page.locator(".course-table")
    expect(table.locator("tbody tr")).to_have_count(1)
    for text in ("Anna", native.case()["title"], say("case-action-overhaul"), say("course-rightness-wrong")):
        expect(table).to_contain_text(text)
    expect(rig.page.locator("#course .course-results [role=status]")).to_contain_text("Ben")
    with rig.page.expect_download() as download:
        rig.page.locator("#course-save").click()
    text = download.value.path().read_text(encoding="utf-8")
    assert text.splitlines()[1].startswith(f"Anna,{native.CASE},")


def test_on_the_wall_one_step_is_shown_and_hands_are_counted(rig: Rig) -> None:
    """Forth by a button and by an arrow; the count comes back beside what was foreseen, and in no address."""
    rig.open(state(place="case", case=native.CASE, moves=[], wall=True))
    blocks = rig.page.locator("#case .case-block:visible")
    expect(blocks).to_have_count(1)
    rig.page.get_by_role("button", name=say("case-next-step"), exact=True).click()
    more = rig.page.get_by_role("button", name=say("case-hands-more", way=say("case-way-up")))
    for _ in range(3):
        more.click()
    rig.page.get_by_label(say("case-hands-of", way=say("case-way-down"))).fill("12")
    play = Play(rig, Mouse(rig))
    play.predict()
    expect(blocks).to_have_count(1)
    rig.page.locator("#case").press("ArrowRight")
    expect(rig.page.get_by_role("heading", name=say("case-checks-title"))).to_be_visible()
    rig.page.locator("#case").press("ArrowRight")
    play.see()
    rig.page.locator('input[name="case-choice"][value="worn"]').click()
    rig.page.locator('input[name="case-action"][value="overhaul"]').click()
    rig.page.get_by_role("button", name=say("case-decide")).click()
    expect(play.reply(right=False)).to_be_visible()
    rig.page.locator("#case").press("ArrowRight")
    counted = say("case-hands-counted", up="3", same="0", down="12")
    expect(rig.page.locator("#case .case-counted")).to_have_text(counted)
    assert "hands" not in str(unpack(rig.page.url))


def test_a_reading_of_a_test_may_speak_against_a_verdict(rig: Rig) -> None:
    """It is named with its test; nothing else is missing for that."""
    moves = [PREDICTION, {"do": "check", "id": "shut-in"}, decided("bigger", "leave")]
    case = "all-new"
    told = native.reckoned("debrief", {"case": case, "moves": moves})["debrief"]
    assert any(":" in misfit["reading"] for misfit in told["misfits"])
    rig.open(state(place="case", case=case, moves=moves))
    part = Play(rig, Mouse(rig)).part(say("case-debrief-title"))
    expect(part.locator(".case-points")).to_be_visible(timeout=90_000)
    expect(part.locator(".case-list li")).to_have_count(len(told["misfits"]))


def test_what_a_play_was_worth_is_what_the_engine_says(rig: Rig) -> None:
    """Points, what each step told, and the same points in the line that is handed in."""
    moves = [PREDICTION, {"do": "check", "id": "flow"}, decided("worn", "overhaul")]
    told = None
    while told is None:
        told = native.ask("debrief", {"case": native.CASE, "moves": moves})["debrief"]
    rig.open(state(place="case", case=native.CASE, moves=moves))
    part = Play(rig, Mouse(rig)).part(say("case-debrief-title"))
    expect(part.locator(".case-points")).to_have_text(
        say("case-points", points=round(told["score"]["points"])), timeout=90_000
    )
    expect(part.locator("tbody tr")).to_have_count(len(told["steps"]))
    for step in told["steps"]:
        expect(part).to_contain_text(say("case-bits", bits=f"{round(step['bits'], 1) + 0.0:.1f}"))
    score = rig.page.locator(".case-code").input_value().split(".")[-2]
    assert abs(int(score) / 100 - told["score"]["points"]) < 0.02
