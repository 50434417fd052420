"""The rig as a person meets it: what can be seen, and the controls by the way they are used."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from playwright.sync_api import Locator, Page, expect

from page.parts import native
from page.parts.links import link, state, unpack
from page.parts.numbers import numbers
from page.parts.waiting import eventually
from page.parts.words import say

LIVE = say("live")

SEEN = """
() => {
  const text = (query) => document.querySelector(query)?.textContent.trim() ?? "";
  const said = (query) => document.querySelector(query)?.getAttribute("aria-label") ?? "";
  const every = (query, of) => Object.fromEntries([...document.querySelectorAll(query)].map(of));
  const spoken = (node) => node.getAttribute("aria-valuetext");
  const turn = (dial) => dial.querySelector(".dial-needle").getAttribute("transform");
  return {
    readings: every("#apparatus [data-reading]", (node) => [node.dataset.reading, spoken(node)]),
    needles: every("#apparatus .dial", (node) => [node.dataset.reading, turn(node)]),
    controls: every("#apparatus [role=slider]", (node) => [node.dataset.control, spoken(node)]),
    sliders: every("#controls input[type=range]", (node) => [node.id, spoken(node)]),
    stack: said("#stack svg"), chart: said("#chart svg"),
    why: text("#why-line"), then: text(".then"),
    title: text("#plant-title"), status: text("#status [role=status]"), origin: text("#origin"),
    notes: [...document.querySelectorAll("#notes [data-note]")].map((node) => node.dataset.note),
  };
}
"""

# A native thumb of 16 px runs between the ends of its track.
THUMB = """
(slider) => {
  const {left, top, width, height} = slider.getBoundingClientRect();
  const part = (slider.value - slider.min) / (slider.max - slider.min);
  return [left + 8 + part * (width - 16), top + height / 2];
}
"""


def slug(key: str) -> str:
    """A plant key as it stands in ids."""
    return key.replace(".", "-")


def radio(key: str, value: Any) -> str:
    """Where the radio button of a word is; a JavaScript word for a truth value."""
    word = str(value).lower() if isinstance(value, bool) else str(value)
    return f'input[name="{slug(key)}"][value="{word}"]'


class Rig:
    """One page with the rig in it.

    Parameters
    ----------
    page : playwright page
    address : str
        Where the site stands; ends with a slash.
    """

    def __init__(self, page: Page, address: str) -> None:
        self.page, self.home = page, address

    def open(self, of: dict[str, Any] | None = None) -> Rig:
        """Go to the site, or to a link to a state."""
        self.page.goto(self.home + (link(of) if of else ""))
        return self

    def live(self) -> Rig:
        """Wait until Python answers, as the page says it."""
        expect(self.page.locator("#status [role=status]")).to_have_text(LIVE, timeout=60_000)
        return self

    def seen(self) -> dict[str, Any]:
        """Everything that is shown, at one moment."""
        return self.page.evaluate(SEEN)

    def shows(
        self,
        edits: dict[str, Any] | None = None,
        plant: Any = "rinse-transfer",
        unit: str = "",
        seconds: float = 20,
    ) -> dict[str, Any]:
        """Wait until every number shown is the native engine's for this input; return what is seen.

        `unit` is the unit of pressure that it must be shown in; any if left out.
        """
        right = native.answer(plant, edits)

        def good(seen: dict[str, Any]) -> bool:
            return same(seen, right) and unit in seen["readings"]["gauge-suction"]

        return eventually(self.page, self.seen, good, f"the answer to {edits} {unit}", seconds)

    def address_holds(self, edits: dict[str, Any]) -> None:
        """Wait until the address holds exactly these edits."""
        self.address(lambda now: now["edits"] == edits, f"{edits} in the address")

    def address(self, good: Callable[[dict[str, Any]], object], what: str) -> None:
        """Wait until the address holds a state that will do."""
        eventually(self.page, self.address_state, lambda now: now is not None and good(now), what)

    def address_state(self) -> dict[str, Any] | None:
        """The state in the address."""
        return unpack(self.page.url)

    # controls

    def slider(self, key: str) -> Locator:
        """The slider of a quantity."""
        return self.page.locator(f"#{slug(key)}")

    def box(self, key: str) -> Locator:
        """The number box of a quantity."""
        return self.page.locator(f"#{slug(key)}-number")

    def complaint(self, key: str) -> Locator:
        """The sentence beside a control when its input will not do."""
        return self.page.locator(f"#{slug(key)}-bad")

    def option(self, key: str, value: Any) -> Locator:
        """One of the words of a choice, as it is clicked or tapped."""
        return self.page.locator(f'fieldset[data-key="{key}"] label:has({radio(key, value)})')

    def part(self, key: str) -> Locator:
        """The part of the drawing that moves a quantity."""
        return self.page.locator(f'#apparatus [data-control="{key}"]')

    def tool(self, name: str) -> Locator:
        """A button of the bar of tools, by its visible or spoken name."""
        return self.page.locator("#tools").get_by_role("button", name=name, exact=True)

    def chip(self, word: str) -> Locator:
        """The button that brings a group of controls into a phone's tray."""
        chips = self.page.get_by_role("group", name=say("chips-label"))
        return chips.get_by_role("button", name=word, exact=True)

    def thumb(self, key: str) -> tuple[float, float]:
        """Where the thumb of a slider is. [CSS px]"""
        slider = self.slider(key)
        slider.scroll_into_view_if_needed()
        return tuple(slider.evaluate(THUMB))

    def stands_at(self, key: str) -> float:
        """What a slider stands at, in the plant file's units."""
        return float(self.slider(key).input_value())

    def left_at(self, key: str) -> float:
        """Where a control was let go: its slider and the address agree on it."""

        def look() -> tuple[float, Any]:
            return self.stands_at(key), (self.address_state() or {"edits": {}})["edits"].get(key)

        return eventually(self.page, look, lambda seen: seen[0] == seen[1], f"{key} in the address")[0]

    def held_at(self, key: str, start: float) -> tuple[float, dict[str, Any]]:
        """Where a hand holds a control that stood at `start`, once all that is seen belongs to it."""

        def good(look: tuple[float, dict[str, Any]]) -> bool:
            return look[0] != start and same(look[1], native.answer(edits={key: look[0]}))

        return eventually(self.page, lambda: (self.stands_at(key), self.seen()), good, f"{key} in the hand")

    def type_number(self, key: str, text: str) -> None:
        """Type into a number box and press Enter, as a person does."""
        self.box(key).click()
        self.page.keyboard.press("Control+A")
        self.page.keyboard.press("Delete")
        self.page.keyboard.type(text)
        self.page.keyboard.press("Enter")

    def middle(self, part: Locator) -> tuple[float, float]:
        """The middle of a thing on the screen. [CSS px]"""
        part.scroll_into_view_if_needed()
        box = part.bounding_box()
        assert box is not None
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def same(seen: dict[str, Any], answer: dict[str, Any]) -> bool:
    """Hold all that is seen against an answer.

    Raises
    ------
    AssertionError
        With what differs.
    """
    for reading in answer["shown"]:
        if reading["id"].startswith("level-"):
            continue
        text = seen["readings"].get(reading["id"])
        assert text is not None, f"no instrument for {reading['id']}"
        if reading["value"] is None:
            assert text == "no reading", (reading["id"], text)
        else:
            found = numbers(text)
            assert found and found[0].is_(reading["value"]), (reading["id"], text, reading["value"])
            assert ("off the scale" in text) == (reading["off_scale"] is not None), (reading, text)
    assert chart_is(seen["chart"], answer), (seen["chart"], answer["duty"])
    assert stack_is(seen["stack"], answer), (seen["stack"], answer["stack"])
    for note in answer["notes"]:
        assert note["kind"] in seen["notes"], (note["kind"], seen["notes"])
    assert set(seen["notes"]) == {note["kind"] for note in answer["notes"]}, seen["notes"]
    return seen["origin"] == ""


def chart_is(text: str, answer: dict[str, Any]) -> bool:
    """Whether the chart's sentence holds the duty point."""
    duty = numbers(text)
    return len(duty) == 2 and duty[0].is_(answer["duty"]["flow"]) and duty[1].is_(answer["duty"]["head"])


def stack_is(text: str, answer: dict[str, Any]) -> bool:
    """Whether the stack's sentence holds every block that counts, and the machine's answer."""
    *blocks, machine = numbers(text)
    known = [block["head"] for block in answer["stack"] if block["head"] is not None]
    heads = [head for head in known if head != 0]
    if len(known) < len(answer["stack"]):  # what cannot be told apart is told together
        heads.append(answer["state"]["balance"]["answer"] - sum(known))
    return (
        len(blocks) == len(heads)
        and all(number.is_(head) for number, head in zip(blocks, heads, strict=True))
        and machine.is_(answer["state"]["balance"]["answer"])
    )


DEFAULT = state()
