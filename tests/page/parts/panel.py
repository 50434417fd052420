"""The panel of a part of the plant."""

from __future__ import annotations

from playwright.sync_api import Locator, expect

from page.parts.rig import Rig, slug
from page.parts.words import say


def panel(rig: Rig) -> Locator:
    """The panel."""
    return rig.page.locator("#parts")


def picker(rig: Rig) -> Locator:
    """The list of parts in the panel."""
    return rig.page.get_by_label(say("part-picker"), exact=True)


def opener(rig: Rig) -> Locator:
    """The button that opens the panel without the drawing."""
    return rig.page.get_by_role("button", name=say("parts-open"), exact=True)


def show_part(rig: Rig, part: str) -> None:
    """Choose a part from the list."""
    if panel(rig).is_hidden():
        opener(rig).click()
    picker(rig).select_option(part)
    expect(picker(rig)).to_have_value(part)


def box(rig: Rig, key: str) -> Locator:
    """The number box of a key in its panel."""
    return rig.page.locator(f"#part-{slug(key)}-number")
