"""The case as a person plays it, by mouse or by keys."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Locator, expect

from page.parts import native
from page.parts.rig import Rig
from page.parts.words import say

PREDICTION = {"do": "predict", "says": "up", "suspects": "discharge-side"}
WITNESSED = {"gauge-discharge": "down", "flow-meter": "up"}
"""What a careful eye sees of the readings that it is asked about."""
ACTION = "restore"
"""What is done with every verdict that does not ask for another."""
TABS = 120  # more than any page has stops


def plain(prose: list[list[dict[str, Any]]]) -> list[str]:
    """The author's words of each paragraph, without the computed quantities between them."""
    return [part["text"].strip() for parts in prose for part in parts if part["part"] == "words"]


def sights(*readings: str) -> list[dict[str, str]]:
    """The moves that say what was seen of some readings."""
    return [{"do": "see", "reading": reading, "says": WITNESSED[reading]} for reading in readings]


def decided(choice: str, action: str = ACTION) -> dict[str, str]:
    """The move that gives a verdict."""
    return {"do": "decide", "choice": choice, "action": action}


class Mouse:
    """Moves by pointing and clicking."""

    def __init__(self, rig: Rig) -> None:
        self.page = rig.page

    def choose(self, radio: Locator) -> None:
        """Pick one of several."""
        radio.click()

    def press(self, button: Locator) -> None:
        """Push a button."""
        button.click()


class Keys:
    """Moves by Tab, arrows, Space and Enter alone."""

    def __init__(self, rig: Rig) -> None:
        self.page = rig.page

    def reach(self, goal: Locator) -> None:
        """Press Tab until the goal, or the group of radio buttons that it is in, has the focus."""
        for _ in range(TABS):
            if goal.evaluate(SAME_GROUP):
                return
            self.page.keyboard.press("Tab")
        raise AssertionError(f"no way to {goal} by Tab")

    def choose(self, radio: Locator) -> None:
        """Pick one of several: Space takes the one that has the focus, arrows go on."""
        self.reach(radio)
        self.page.keyboard.press("Space")
        for _ in range(TABS):
            if radio.is_checked():
                return
            self.page.keyboard.press("ArrowDown")
        raise AssertionError(f"no way to {radio} by arrows")

    def press(self, button: Locator) -> None:
        """Push a button."""
        self.reach(button)
        self.page.keyboard.press("Enter")


SAME_GROUP = """
(goal) => {
  const at = document.activeElement;
  return goal === at || (goal.type === "radio" && at.type === "radio" && at.name === goal.name);
}
"""


class Play:
    """The case, with hands of one kind.

    Parameters
    ----------
    rig : Rig
    hand : Mouse or Keys
    """

    def __init__(self, rig: Rig, hand: Mouse | Keys) -> None:
        self.rig, self.page, self.hand = rig, rig.page, hand

    def open(self) -> None:
        """From the menu."""
        self.hand.press(self.rig.tool(say("tool-open")))
        self.hand.press(self.page.locator(f'#offers-cases button[data-id="{native.CASE}"]'))
        expect(self.part(say("case-predict-title"))).to_be_visible()

    def part(self, title: str) -> Locator:
        """A part of the case, by its heading."""
        return self.page.get_by_role("region", name=title, exact=True)

    def predict(self) -> None:
        """Say what is expected, and look."""
        self.hand.choose(self.page.locator(f'input[name="case-says"][value="{PREDICTION["says"]}"]'))
        self.hand.choose(self.page.locator(f'input[name="case-suspects"][value="{PREDICTION["suspects"]}"]'))
        self.hand.press(self.page.get_by_role("button", name=say("case-commit")))
        expect(self.part(say("case-readings-title"))).to_be_visible()

    def check(self, id_: str) -> None:
        """Take a further check."""
        self.hand.press(self.page.locator(f'[data-key="take-{id_}"]'))
        expect(self.page.locator(f'[data-key="check-{id_}"]')).to_be_visible()

    def see(self) -> None:
        """Say what was seen, of every reading that is asked about."""
        for reading, says in WITNESSED.items():
            radio = self.page.locator(f'input[name="case-saw-{reading}"][value="{says}"]')
            if radio.count():
                self.hand.choose(radio)

    def decide(self, choice: str, action: str = ACTION) -> None:
        """Say what was seen, give the verdict, and say what is to be done."""
        self.see()
        self.hand.choose(self.page.locator(f'input[name="case-choice"][value="{choice}"]'))
        self.hand.choose(self.page.locator(f'input[name="case-action"][value="{action}"]'))
        self.hand.press(self.page.get_by_role("button", name=say("case-decide")))
        expect(self.part(say("case-truth-title"))).to_be_visible()

    def reply(self, right: bool) -> Locator:
        """The verdict's own explanation."""
        return self.part(say("case-rightness-right" if right else "case-rightness-wrong"))
