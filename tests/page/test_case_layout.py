"""What of a case is in sight: the verdict on the wall, the ways through a long reveal."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import expect
from tests.cases.samples import SOUND

from page.parts import native
from page.parts.files import Files
from page.parts.links import state
from page.parts.play import PREDICTION, Mouse, Play, decided
from page.parts.rig import Rig
from page.parts.words import say

ENDED = state(place="case", case=native.CASE, moves=[PREDICTION, decided("lighter")])
WALL = {"viewport": {"width": 1920, "height": 1080}}

# How far the lowest part of the step in sight reaches above the bar with the steps. [CSS px]
ROOM = """() => {
  const block = document.querySelector("#case .case-block:not([hidden])").getBoundingClientRect();
  return document.querySelector(".case-steps-bar").getBoundingClientRect().top - block.bottom;
}"""

MORE_CHOICES = "".join(
    f"""
[[choices]]
id = "more-{n}"
says = "Another verdict that takes about as many words as the longest of the others do, no. {word}."
blames = ["{cause}"]
reply = "It is not that either, for the reason no. {word}."
"""
    for n, (word, cause) in enumerate(
        zip(
            ("one", "two", "three", "four", "five", "six"),
            ("suction-side", "drive", "liquid", "instrument", "nothing", "phases-swapped"),
            strict=True,
        )
    )
)


def test_the_verdict_fits_the_wall(visitor: Callable[..., Rig], site: str) -> None:
    """All that is asked of the class, without scrolling, with as many choices as a case may have."""
    rig = visitor(site, **WALL).open().live()
    text = SOUND + MORE_CHOICES
    count = text.count("[[choices]]")
    Files(rig).pick("mine.toml", text)
    play = Play(rig, Mouse(rig))
    play.predict()
    play.check("flow")
    rig.page.locator('[data-key="wall"]').click()
    while not rig.page.locator('[data-key="next-step"]').is_disabled():
        rig.page.locator('[data-key="next-step"]').click()
    expect(rig.page.locator('input[name="case-choice"]:visible')).to_have_count(count)
    expect(rig.page.locator('input[name^="case-saw-"]:visible').first).to_be_visible()
    assert count == 9
    assert rig.page.evaluate(ROOM) >= 0


def test_beside_the_reveal_stands_how_it_ended(rig: Rig) -> None:
    """And the way to each of its parts; the story stays below it."""
    rig.open(ENDED)
    summary = rig.page.locator(".case-summary")
    expect(summary).to_contain_text(say("case-rightness-right"))
    points = rig.page.locator(".case-debrief .case-points")
    expect(points).to_be_visible(timeout=90_000)
    expect(summary.locator(".case-sum-points")).to_have_text(points.inner_text())
    for button in summary.get_by_role("button").all():
        button.click()
        at = rig.page.evaluate("document.activeElement.closest('.case-main-part').className")
        assert at == "case-main-part"
        expect(rig.page.locator(":focus")).to_be_in_viewport()
        expect(summary).to_be_in_viewport(ratio=0.9)


def test_under_the_thumb_are_the_ways_through_the_reveal(touched: Rig) -> None:
    """The same bar as while playing, to other parts."""
    touched.open(ENDED)
    bar = touched.page.locator(".case-bar")
    for part in ("truth", "next", "story"):
        bar.get_by_role("button", name=say(f"case-to-{part}"), exact=True).tap()
        expect(touched.page.locator(f'[data-key="{part}"]')).to_be_focused()
        expect(touched.page.locator(f'[data-key="{part}"]')).to_be_in_viewport()
        expect(bar).to_be_in_viewport(ratio=1)
    expect(touched.page.locator(".case-summary")).to_be_hidden()


def test_nothing_of_a_case_is_wider_than_the_smallest_screen(visitor: Callable[..., Rig], site: str) -> None:
    """At its end, where most stands there."""
    rig = visitor(site, viewport={"width": 320, "height": 640}, has_touch=True, is_mobile=True)
    rig.open(ENDED).live()
    expect(rig.page.locator(".case-debrief .case-points")).to_be_visible(timeout=180_000)
    assert rig.page.evaluate("document.documentElement.scrollWidth") == 320
