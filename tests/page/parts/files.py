"""Plant files of one's own, good and bad, and the dialog that takes them."""

from __future__ import annotations

import tomllib
from typing import Any

from playwright.sync_api import Locator, expect

from page.parts.rig import Rig
from page.parts.words import say

GOOD = """
format = 1
title = "A plant of my own"
[supply]
surface_m = 1.0
bottom_m = 0.0
top_m = 3.0
[suction]
length_m = 3
bore_mm = 100
[pump]
model = "small"
[valve]
kv_open_m3h = 40
opening = 0.5
[discharge]
length_m = 30
bore_mm = 65
[delivery]
surface_m = 6
bottom_m = 5
top_m = 8
"""

# Plays the part of a person who lets a file fall on the page: browsers let no test do it by mouse.
DROP = """
([name, bytes]) => {
  const transfer = new DataTransfer();
  transfer.items.add(new File([new Uint8Array(bytes)], name));
  for (const kind of ["dragover", "drop"]) {
    const event = new DragEvent(kind, {dataTransfer: transfer, bubbles: true, cancelable: true});
    document.querySelector("main").dispatchEvent(event);
  }
}
"""


def plant(text: str) -> dict[str, Any]:
    """A plant file as the table that it holds."""
    return tomllib.loads(text)


def encoded(content: str | bytes) -> bytes:
    """What stands in a file."""
    return content if isinstance(content, bytes) else content.encode()


class Files:
    """The dialog for opening, as far as files go."""

    def __init__(self, rig: Rig) -> None:
        self.rig, self.page = rig, rig.page

    @property
    def problem(self) -> Locator:
        """What is said about a file that will not do."""
        return self.page.locator("#file-problem")

    def pick(self, name: str, content: str | bytes) -> None:
        """Choose a file through the button and the system's own picker."""
        if not self.page.locator("dialog[open]").count():
            self.rig.tool(say("tool-open")).click()
        with self.page.expect_file_chooser() as chosen:
            self.page.get_by_role("button", name=say("file-pick")).click()
        chosen.value.set_files({"name": name, "mimeType": "", "buffer": encoded(content)})

    def drop(self, name: str, content: str | bytes) -> None:
        """Let a file fall on the page."""
        self.page.evaluate(DROP, [name, list(encoded(content))])

    def close(self) -> None:
        """Close the dialog."""
        self.page.keyboard.press("Escape")
        expect(self.page.locator("dialog[open]")).to_have_count(0)
