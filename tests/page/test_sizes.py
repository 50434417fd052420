"""Phone, laptop and projector: nothing hangs over, fingers find what they touch, the back row can read."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import expect

from conftest import CHROMIUM_OPTIONS
from page.conftest import Bench
from page.parts.links import state
from page.parts.rig import Rig
from page.parts.scenes import SCENES, show
from page.parts.words import say

SIZES = {"320×640": (320, 640), "360×740": (360, 740), "1280×800": (1280, 800), "1920×1080": (1920, 1080)}
TOUCHED = ("320×640", "360×740")

LEAST = 24  # [CSS px] WCAG 2.2, 2.5.8 Target Size (Minimum)
GOOD = 44  # [CSS px] WCAG 2.2, 2.5.5 Target Size (Enhanced), kept for the main controls

OVERHANG = "() => [document.scrollingElement.scrollWidth, document.documentElement.clientWidth]"

# What can be pressed, seen now. Links within a sentence are excepted by WCAG 2.5.8.
TARGETS = """
() => {
  const found = [];
  const wanted = "button, select, input, [role=slider], [role=button], summary, label:has(input[type=radio])";
  for (const node of document.querySelectorAll(wanted)) {
    if (!node.checkVisibility({opacityProperty: true, visibilityProperty: true})) continue;
    if (node.matches("input[type=radio]")) continue; // pressed by its label
    if (node.closest("[inert]")) continue; // a picture
    if (node.getAttribute("aria-disabled") === "true" || node.disabled) continue;
    const {width, height} = node.getBoundingClientRect();
    if (width === 0 || height === 0) continue;
    const name = node.getAttribute("aria-label") || node.textContent.trim() || node.id;
    const main = node.closest("#controls, #tools, dialog, .case-body") !== null;
    found.push({name, main, width, height, tag: node.tagName});
  }
  return found;
}
"""

NUMERALS = """
() => [...document.querySelectorAll("#apparatus .dial-numeral, #apparatus .dial-reading")].map((node) => {
  const svg = node.ownerSVGElement;
  const scale = svg.getScreenCTM().d;
  return [node.getAttribute("class"), parseFloat(getComputedStyle(node).fontSize) * scale];
})
"""

# Tick numerals of one dial must not lie on each other.
CROWDED = """
() => [...document.querySelectorAll("#apparatus .dial")].flatMap((dial) => {
  const all = [...dial.querySelectorAll(".dial-numeral")];
  const box = (node) => node.getBoundingClientRect();
  const across = (a, b) => a.left < b.right - 1 && b.left < a.right - 1;
  const down = (a, b) => a.top < b.bottom - 3 && b.top < a.bottom - 3;
  const over = (a, b) => across(box(a), box(b)) && down(box(a), box(b));
  const pairs = all.flatMap((a, i) => all.slice(i + 1).map((b) => [a, b]));
  return pairs.filter(([a, b]) => over(a, b)).map(([a, b]) => `${a.textContent} on ${b.textContent}`);
})
"""


@pytest.fixture(scope="module", params=SIZES)
def sized(request: pytest.FixtureRequest, chromium: Any, site: str) -> Iterator[Callable[[str], Rig]]:
    """Shows scenes on a screen of one of the sizes."""
    width, height = SIZES[request.param]
    touch = request.param in TOUCHED
    options = {"viewport": {"width": width, "height": height}, "has_touch": touch, "is_mobile": touch}
    bench = Bench(chromium, site, {**options, "locale": "en-GB"})

    def shown(scene: str) -> Rig:
        show(bench.rig, scene)
        return bench.rig

    shown.size = request.param
    yield shown
    said = list(bench.said)
    bench.context.close()
    assert said == []


@pytest.mark.parametrize("scene", SCENES)
def test_nothing_hangs_over_the_side(sized: Callable[[str], Rig], scene: str) -> None:
    """The page scrolls down, never sideways."""
    wide, screen = sized(scene).page.evaluate(OVERHANG)
    assert wide <= screen


@pytest.mark.parametrize("scene", ["rig", "case, before", "case, between", "case, right"])
def test_what_is_pressed_is_large_enough(sized: Callable[[str], Rig], scene: str) -> None:
    """24 px everywhere; for fingers the controls, tools and buttons are 44 px high."""
    rig = sized(scene)
    touch = sized.size in TOUCHED
    targets = rig.page.evaluate(TARGETS)
    assert len(targets) > 8 or scene != "rig"
    small = [each for each in targets if min(each["width"], each["height"]) < LEAST - 0.5]
    assert small == []
    if touch:
        low = [each for each in targets if each["main"] and each["height"] < GOOD - 0.5]
        assert [each for each in low if each["tag"] != "SUMMARY"] == []


def test_numerals_can_be_read(sized: Callable[[str], Rig]) -> None:
    """At arm's length on a phone, from the back row on a projector."""
    rig = sized("rig")
    least = {"320×640": 9.5, "360×740": 10, "1280×800": 11, "1920×1080": 13}[sized.size]
    for kind, height in rig.page.evaluate(NUMERALS):
        assert height >= (least if kind == "dial-numeral" else 1.2 * least), (kind, height)
    assert rig.page.evaluate(CROWDED) == []


def test_the_open_dialog_fits_the_screen(sized: Callable[[str], Rig]) -> None:
    """Its ends are on the screen, its content scrolls within."""
    rig = sized("rig")
    more = rig.tool(say("tool-more"))
    if more.is_visible():
        more.click()
    rig.tool(say("tool-open")).click()
    box = rig.page.locator("#open").bounding_box()
    width, height = SIZES[sized.size]
    assert box and box["x"] >= 0 and box["y"] >= 0
    assert box["x"] + box["width"] <= width and box["y"] + box["height"] <= height
    wide, screen = rig.page.evaluate(OVERHANG)
    assert wide <= screen
    rig.page.keyboard.press("Escape")


def test_the_tray_leaves_the_dials_in_sight(sized: Callable[[str], Rig]) -> None:
    """While a control is moved, the discharge gauge can be seen above the tray."""
    rig = sized("rig")
    rig.page.evaluate("() => scrollTo(0, 0)")
    dial = rig.page.locator('#apparatus [data-reading="gauge-discharge"]')
    dial.scroll_into_view_if_needed()
    gauge, tray = dial.bounding_box(), rig.page.locator("#controls").bounding_box()
    assert gauge and tray
    assert gauge["y"] >= 0 and gauge["y"] + gauge["height"] <= tray["y"] + 1


def test_on_a_projector_all_choices_stand_in_one_row(visitor: Callable[..., Rig], site: str) -> None:
    """A second row for the last of them would take its height from the drawings."""
    rig = visitor(site, viewport={"width": 1920, "height": 1080}).open(SCENES["rig"]).live()
    tops = rig.page.locator(".choice-row .choice").evaluate_all(
        "all => all.map((one) => Math.round(one.getBoundingClientRect().top))"
    )
    assert len(tops) == 5
    assert len(set(tops)) == 1


IN_SIGHT = """
(query) => [...document.querySelectorAll(query)].filter((node) => {
  const {top, left, bottom, right} = node.getBoundingClientRect();
  return top < 0 || left < 0 || bottom > innerHeight + 1 || right > innerWidth + 1;
}).map((node) => node.dataset.reading ?? node.id)
"""

TOUCH = {"has_touch": True, "is_mobile": True}


@pytest.mark.parametrize(("width", "height"), [(740, 360), (667, 375)])
def test_on_a_phone_on_its_side_everything_that_is_read_and_moved_is_in_sight(
    visitor: Callable[..., Rig], site: str, width: int, height: int
) -> None:
    """All dials and meters, and the control beside them, without scrolling; nothing hangs over."""
    rig = visitor(site, viewport={"width": width, "height": height}, **TOUCH).open(SCENES["rig"]).live()
    rig.shows()
    assert rig.page.locator("#apparatus [data-reading]").count() >= 6
    read_or_moved = "#apparatus [data-reading], #valve-opening, #valve-opening-number"
    assert rig.page.evaluate(IN_SIGHT, read_or_moved) == []
    wide, screen = rig.page.evaluate(OVERHANG)
    assert wide <= screen


CASE_SCENES = [scene for scene in SCENES if scene.startswith("case")]


@pytest.fixture(scope="module")
def large_letters(chromium: Any) -> Iterator[Any]:
    """A browser whose reader has set letters twice as large as usual."""
    options = [*CHROMIUM_OPTIONS, "--blink-settings=defaultFontSize=32"]
    program = shutil.which("chromium") or shutil.which("chromium-browser")
    browser = chromium.browser_type.launch(executable_path=program, args=options)
    yield browser
    browser.close()


@pytest.mark.parametrize("scene", ["rig", "pipe off", "two in line", *CASE_SCENES])
def test_letters_twice_as_large_scroll_a_phone_down_only(large_letters: Any, site: str, scene: str) -> None:
    """WCAG 2.2, 1.4.4 and 1.4.10: nothing is lost, and nothing is read sideways."""
    context = large_letters.new_context(viewport={"width": 360, "height": 740}, locale="en-GB", **TOUCH)
    context.set_default_timeout(20_000)
    rig = Rig(context.new_page(), site)
    show(rig, scene)
    assert rig.page.evaluate("() => parseFloat(getComputedStyle(document.documentElement).fontSize)") >= 32
    wide, screen = rig.page.evaluate(OVERHANG)
    context.close()
    assert wide <= screen


@pytest.mark.parametrize("size", SIZES)
def test_one_endless_word_of_a_stranger_does_not_widen_the_page(
    visitor: Callable[..., Rig], site: str, size: str
) -> None:
    """In a plant's title and in what it is for."""
    width, height = SIZES[size]
    rig = visitor(site, viewport={"width": width, "height": height})
    words = {"title": "T" * 80, "about": "a" * 400}
    rig.open(state({"format": 1, "pump": {"model": "medium"}, **words})).live()
    expect(rig.page.locator("#why .about")).to_have_text(words["about"])
    scroll, client = rig.page.evaluate(OVERHANG)
    assert scroll == client
