"""What axe-core finds, with the tags of WCAG 2.2 up to AA, in every state of the page."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import expect

from page.conftest import Bench
from page.parts.files import Files
from page.parts.panel import show_part
from page.parts.rig import Rig
from page.parts.scenes import SCENES, show
from page.parts.words import say

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
DARK = ("rig", "compared", "valve shut", "pipe off", "case, before", "case, between", "case, wrong")
PHONE = ("rig", "compared", "pipe off", "two in line", "case, before", "case, between", "case, right")

LOOK = """
async (tags) => {
  const {violations} = await axe.run(document, {runOnly: {type: "tag", values: tags}});
  const why = ({any, all, none}) => [...any, ...all, ...none].map(({message}) => message).join("; ");
  const one = (node) => `${node.html.slice(0, 160)} | ${why(node).slice(0, 200)}`;
  return violations.map(({id, nodes}) => `${id}: ${nodes.map(one).join(" || ")}`);
}
"""


@pytest.fixture(scope="session")
def axe() -> str:
    """The script of axe-core."""
    from loadfirst_dev import npm
    from loadfirst_dev.pins import read_pins

    return npm.axe(read_pins())


def findings(page: Any, axe: str) -> list[str]:
    """What axe finds in the page as it stands."""
    if not page.evaluate("() => 'axe' in globalThis"):
        page.evaluate(axe)
    return page.evaluate(LOOK, TAGS)


def test_axe_finds_a_fault_that_was_put_in(rig: Rig, axe: str) -> None:
    """So that silence means something."""
    rig.page.evaluate("() => document.querySelector('#tool-undo').removeAttribute('title')")
    rig.page.evaluate("() => document.querySelector('#tool-undo').setAttribute('aria-label', '')")
    found = findings(rig.page, axe)
    rig.page.goto("about:blank")
    assert any("button-name" in fault for fault in found)


@pytest.mark.parametrize("scene", SCENES)
def test_axe_finds_nothing_on_a_laptop(rig: Rig, axe: str, scene: str) -> None:
    """The rig in several states, and the case at each stage."""
    show(rig, scene)
    assert findings(rig.page, axe) == []


@pytest.mark.parametrize("chart", ["npsh", "power"])
def test_axe_finds_nothing_in_the_charts_beside_the_head_chart(rig: Rig, axe: str, chart: str) -> None:
    """Their strip and their readout are native radio buttons and a slider."""
    rig.page.get_by_role("radio", name=say(f"chart-show-{chart}"), exact=True).check()
    expect(rig.page.locator(f"#chart-{chart} svg")).to_be_visible()
    assert findings(rig.page, axe) == []


@pytest.mark.parametrize("scene", DARK)
def test_axe_finds_nothing_in_the_dark(rig: Rig, axe: str, scene: str) -> None:
    """Colours are other ones there."""
    show(rig, scene)
    rig.tool(say("theme-to-dark")).click()
    try:
        expect(rig.page.locator("html")).to_have_attribute("data-theme", "dark")
        assert findings(rig.page, axe) == []
    finally:
        rig.tool(say("theme-to-light")).click()


@pytest.mark.parametrize("scene", PHONE)
def test_axe_finds_nothing_on_a_phone(touched: Rig, axe: str, scene: str) -> None:
    """The tray with chips, the drawing in its narrow shape."""
    show(touched, scene)
    assert findings(touched.page, axe) == []


@pytest.mark.parametrize("part", ["pump-1", "branch", "gauge-suction", "delivery", "liquid", "site"])
def test_axe_finds_nothing_in_the_panel_of_a_part(rig: Rig, axe: str, part: str) -> None:
    """With all kinds of controls; and of what is not there."""
    show_part(rig, part)
    assert findings(rig.page, axe) == []


def test_axe_finds_nothing_beside_a_wrong_number(rig: Rig, axe: str) -> None:
    """The sentence and the marked box."""
    rig.type_number("valve.opening", "120")
    expect(rig.complaint("valve.opening")).to_be_visible()
    assert findings(rig.page, axe) == []


def test_axe_finds_nothing_in_the_dialogs(rig: Rig, axe: str) -> None:
    """Open, with a file that was refused; and the link."""
    files = Files(rig)
    files.pick("bad.toml", "format = = 1")
    expect(files.problem).to_contain_text("cannot be used")
    assert findings(rig.page, axe) == []
    files.close()
    rig.tool(say("tool-share")).click()
    expect(rig.page.get_by_label(say("share-link"))).to_be_visible()
    assert findings(rig.page, axe) == []


def test_axe_finds_nothing_before_python_is_ready_or_when_it_fails(
    fresh: Rig, axe: str, problems: list[str]
) -> None:
    """Progress bar; then the failure with its buttons."""
    held = []
    fresh.page.route("**/runtime/manifest.json", lambda route: held.append(route))
    fresh.open()
    expect(fresh.page.get_by_role("progressbar")).to_be_visible()
    assert findings(fresh.page, axe) == []
    held[0].fulfill(status=404)
    expect(fresh.page.get_by_role("button", name=say("boot-again"))).to_be_visible()
    assert findings(fresh.page, axe) == []
    problems[:] = [line for line in problems if "404" not in line]


def test_the_long_lived_pages_said_nothing(laptop: Bench, phone: Bench) -> None:
    """axe itself leaves no complaints behind."""
    assert laptop.said == phone.said == []
