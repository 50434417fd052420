"""Colours that the reader forces upon every page: the drawings obey too."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from page.parts.rig import Rig

CONTRAST = 4.5  # WCAG 2.2, 1.4.3, common practice for text of this size

LETTERS = """
() => {
  const probe = document.createElement("canvas").getContext("2d", {willReadFrequently: true});
  const light = (colour) => {
    probe.clearRect(0, 0, 1, 1);
    probe.fillStyle = colour;
    probe.fillRect(0, 0, 1, 1);
    const [r, g, b] = [...probe.getImageData(0, 0, 1, 1).data].slice(0, 3)
      .map((c) => c / 255).map((c) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = light(getComputedStyle(document.documentElement).backgroundColor);
  return [...document.querySelectorAll("#rig svg text, #rig svg tspan")]
    .filter((node) => node.textContent.trim() && node.checkVisibility())
    .map((node) => {
      const {fill, stroke} = getComputedStyle(node);
      const ink = light(fill);
      const rim = stroke === "none" ? ground : light(stroke);
      const against = (other) => (Math.max(ink, other) + 0.05) / (Math.min(ink, other) + 0.05);
      return [node.textContent, Math.min(against(ground), against(rim))];
    });
}
"""


@pytest.fixture(params=["dark", "light"])
def forced(rig: Rig, request: pytest.FixtureRequest) -> Iterator[Any]:
    """The rig with colours forced, on a dark and on a light ground."""
    rig.page.emulate_media(forced_colors="active", color_scheme=request.param)
    yield rig.page
    rig.page.emulate_media(forced_colors="none", color_scheme="light")


def test_every_letter_of_the_drawings_can_be_read(forced: Any) -> None:
    """Against the ground, and against the rim that some have."""
    letters = forced.evaluate(LETTERS)
    assert len(letters) > 50
    assert [seen for seen in letters if seen[1] < CONTRAST] == []
