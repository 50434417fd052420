"""Practice: a puzzle made from a number, played and kept like any other, and another one after it."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

import pytest
from playwright.sync_api import Locator, expect

from page.parts import native
from page.parts.links import state, unpack
from page.parts.play import Keys, Mouse, Play
from page.parts.rig import Rig
from page.parts.words import say
from page.test_axe import axe, findings

__all__ = ["axe"]

SEED, LEVEL = 3, "first-steps"
WISH = {"seed": SEED, "level": LEVEL}
MADE = 120_000  # [ms] that a busy machine may take for a puzzle


@cache
def composed() -> dict[str, str]:
    """The file that the engine makes of the wish outside any browser."""
    reply = {"tried": 0}
    while not reply.get("done"):
        reply = native.ask("compose", {**WISH, "tried": reply["tried"]})
    return {"name": reply["name"], "text": reply["text"]}


def link(**view: object) -> dict[str, object]:
    """A link into the puzzle."""
    return state(place="case", case=composed(), practice=WISH, **{"moves": [], **view})


def begun(rig: Rig, hand: type[Mouse] | type[Keys] = Mouse, seed: str = str(SEED)) -> None:
    """The puzzle asked for on the map."""
    page, by = rig.page, hand(rig)
    page.evaluate("() => localStorage.removeItem('loadfirst:practice')")
    rig.open(state(place="course")).live()
    page.locator("#practice-level").select_option(LEVEL)
    page.locator("#practice-number").fill(seed)
    by.press(page.locator("#practice-make"))


def heading(rig: Rig) -> Locator:
    """Of the case in sight."""
    return rig.page.locator("#case .case-heading")


def decide(play: Play) -> None:
    """Commit, look at one thing, say something of each reading asked about, and give the first verdict."""
    page = play.page
    play.predict()
    page.locator("[data-key^=take-]").first.click()
    expect(page.locator("[data-key^=check-]")).to_be_visible()
    radios = page.locator("#case input[type=radio]")
    for name in dict.fromkeys(radios.evaluate_all("all => all.map(one => one.name)")):
        page.locator(f'#case input[name="{name}"]').first.check()
    page.get_by_role("button", name=say("case-decide")).click()
    expect(play.part(say("case-result-title"))).to_be_visible()


@pytest.mark.parametrize("hand", [Mouse, Keys])
def test_a_number_gives_the_same_puzzle_as_everywhere(rig: Rig, hand: type[Mouse] | type[Keys]) -> None:
    """Made with its progress in sight, opened by itself; its number stands in it, all of it in the link."""
    begun(rig, hand)
    expect(rig.page.locator("#practice-stop")).to_be_focused()
    expect(rig.page.locator(".practice-making")).to_contain_text(say("practice-draw", draw=1))
    expect(heading(rig)).to_contain_text(say("practice-in-case", seed=SEED), timeout=MADE)
    rig.address(lambda now: now["view"].get("case") == composed(), "the file in the address")
    assert unpack(rig.page.url)["view"]["practice"] == WISH
    assert len(rig.page.url) < 6000
    expect(rig.page.locator(".case-fair")).to_have_count(0)
    rig.page.go_back()
    expect(rig.page.locator("#practice-make")).to_be_visible()
    rig.page.go_forward()
    expect(heading(rig)).to_be_visible()


def to_those_before(rig: Rig) -> Locator:
    """The puzzles made before, unfolded on the map."""
    rig.page.locator('[data-key="course"]').click()
    before = rig.page.locator(".practice-before")
    before.locator("summary").click()
    return before


def test_a_half_played_one_survives_a_reload_and_goes_on_from_the_map(fresh: Rig) -> None:
    """By the address first, then by what this browser keeps."""
    fresh.open(link()).live()
    play = Play(fresh, Mouse(fresh))
    play.predict()
    fresh.page.reload()
    expect(play.part(say("case-readings-title"))).to_be_visible(timeout=60_000)
    before = to_those_before(fresh)
    expect(before.locator("li")).to_have_class(re.compile("course-begun"))
    before.locator(".course-go").click()
    expect(play.part(say("case-readings-title"))).to_be_visible()


def test_its_end_stands_on_the_map_and_can_be_handed_in(fresh: Rig) -> None:
    """With its points; the line names its number in the teacher's table; then it is deleted."""
    fresh.open(link()).live()
    decide(Play(fresh, Mouse(fresh)))
    expect(fresh.page.locator("#case .case-debrief .case-points")).to_be_visible(timeout=MADE)
    code = fresh.page.locator(".case-code").input_value()
    assert code.startswith(f"LF1.practice-{LEVEL}-{SEED}.")
    before = to_those_before(fresh)
    expect(before.locator("li")).to_have_class(re.compile("course-done"))
    expect(before.locator(".course-state")).to_contain_text("100")
    fresh.page.locator("#course-codes").fill(f"Anna: {code}")
    named = say("practice-name", seed=SEED, level=say(f"case-level-{LEVEL}"))
    expect(fresh.page.locator(".course-table tbody")).to_contain_text(named)
    before.get_by_role("button", name=re.compile(re.escape(say("course-forget-one", title="")))).click()
    expect(before).to_be_hidden()


def test_a_link_opens_it_elsewhere_without_making_it_anew(visitor: Callable[..., Rig], site: str) -> None:
    """In another browser the file in the link is enough; numbers of one's own are drawn and kept there."""
    other = visitor(site).open(link(seed="each")).live()
    play = Play(other, Mouse(other))
    expect(heading(other)).to_contain_text(say("practice-in-case", seed=SEED))
    play.predict()
    other.address(lambda now: isinstance(now["view"].get("seed"), int), "a seed in the address")
    seed = unpack(other.page.url)["view"]["seed"]
    other.page.goto("about:blank")
    other.open(link(seed="each"))
    expect(play.part(say("case-readings-title"))).to_be_visible(timeout=60_000)
    expect(heading(other)).to_contain_text(say("case-seed", seed=seed))


def test_after_its_end_another_one_is_made_and_can_be_stopped(rig: Rig) -> None:
    """At the same level, with another number; whoever stops it stays on the map, and nothing opens later."""
    rig.open(link()).live()
    decide(Play(rig, Mouse(rig)))
    rig.page.get_by_role("button", name=say("practice-another")).click()
    expect(rig.page.locator("#practice-stop")).to_be_focused()
    expect(rig.page.locator("#practice-level")).to_have_value(LEVEL)
    expect(rig.page.locator(".practice-what")).not_to_have_text(
        say("practice-name", seed=SEED, level=say(f"case-level-{LEVEL}"))
    )
    expect(rig.page.locator(".practice-making progress")).to_have_attribute("value", re.compile(r"\d"))
    rig.page.keyboard.press("Enter")
    expect(rig.page.locator("#practice-make")).to_be_focused()
    rig.page.go_back()
    expect(rig.page.locator(".case-code")).to_be_visible()


def test_who_goes_elsewhere_meanwhile_is_not_called_back(rig: Rig) -> None:
    """The puzzle is among those made before."""
    begun(rig)
    rig.page.locator("#place-rig").click()
    kept = "() => JSON.parse(localStorage.getItem('loadfirst:practice') ?? '[]').map((one) => one.file)"
    for _ in range(MADE // 500):
        if rig.page.evaluate(kept):
            break
        rig.page.wait_for_timeout(500)
    assert rig.page.evaluate(kept) == [composed()]
    expect(rig.page.locator("#rig")).to_be_visible()
    rig.page.locator("#place-case").click()
    rig.page.locator("#place-case").click()
    expect(rig.page.locator(".practice-before summary")).to_contain_text("1")


def test_a_wrong_number_is_said_beside_its_box(rig: Rig) -> None:
    """Nothing is made of it."""
    begun(rig, seed="12a")
    expect(rig.page.locator("#practice-wrong")).to_have_text(
        say("practice-number-wrong", low="1", high="999999")
    )
    expect(rig.page.locator("#practice-number")).to_be_focused()
    expect(rig.page.locator("#practice-stop")).to_be_hidden()


@pytest.mark.parametrize("dark", [False, True])
def test_axe_finds_nothing_on_the_map_while_one_is_made_or_at_its_end(rig: Rig, axe: str, dark: bool) -> None:
    """With a wrong number, in the making, with one made before, and where another one is offered."""
    begun(rig, seed="12a")
    if dark:
        rig.page.evaluate("() => { document.documentElement.dataset.theme = 'dark'; }")
    assert findings(rig.page, axe) == []
    rig.page.locator("#practice-number").fill(str(SEED))
    rig.page.locator("#practice-make").click()
    expect(rig.page.locator(".practice-making progress")).to_have_attribute("value", re.compile(r"\d"))
    assert findings(rig.page, axe) == []
    expect(heading(rig)).to_be_visible(timeout=MADE)
    decide(Play(rig, Mouse(rig)))
    assert findings(rig.page, axe) == []
    rig.page.locator('[data-key="course"]').click()
    rig.page.locator(".practice-before summary").click()
    assert findings(rig.page, axe) == []
    rig.page.evaluate("() => { document.documentElement.dataset.theme = 'light'; }")


def test_on_a_phone_it_is_made_by_touch(touched: Rig) -> None:
    """Nothing is wider than the screen, and what is tapped is as large as a thumb."""
    begun(touched)
    wide = "() => document.documentElement.scrollWidth - innerWidth"
    assert touched.page.evaluate(wide) <= 0
    assert touched.page.locator("#practice-stop").bounding_box()["height"] >= 44
    expect(heading(touched)).to_contain_text(say("practice-in-case", seed=SEED), timeout=MADE)
    assert touched.page.evaluate(wide) <= 0
