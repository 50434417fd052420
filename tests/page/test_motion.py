"""Who asked their device for less motion gets none; who asked for dark pages gets one."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from page.parts.rig import Rig

# Everything that a drawing can move by, before and after half a second of frames.
STANDS = """
() => new Promise((done) => {
  const look = () => JSON.stringify([...document.querySelectorAll("svg *")].map((node) =>
    [node.getAttribute("transform"), node.getAttribute("stroke-dashoffset"), node.getAttribute("d"),
      getComputedStyle(node).strokeDashoffset, getComputedStyle(node).transform]));
  const before = look();
  let left = 30;
  const next = () => (left-- ? requestAnimationFrame(next) : done(before === look()));
  requestAnimationFrame(next);
})
"""
MOVING = "() => document.getAnimations().filter((each) => each.playState === 'running').length"
PAPER = "() => getComputedStyle(document.documentElement).colorScheme"


def test_nothing_moves_where_less_motion_is_asked_for(visitor: Callable[..., Rig], site: str) -> None:
    """No impeller, no marks in the pipes, no animation of the style sheets; and nothing to stop."""
    rig = visitor(site, reduced_motion="reduce").open().live()
    rig.shows()
    assert rig.page.evaluate(STANDS) is True
    assert rig.page.evaluate(MOVING) == 0


def test_things_move_where_nothing_was_asked_for(rig: Rig) -> None:
    """The same look sees the impeller turn."""
    assert rig.page.evaluate(STANDS) is False


def test_controls_work_without_motion(visitor: Callable[..., Rig], site: str) -> None:
    """Needles and curves go to their places at once."""
    rig = visitor(site, reduced_motion="reduce").open().live()
    rig.type_number("valve.opening", "30")
    rig.shows({"valve.opening": 0.3})
    assert rig.page.evaluate(STANDS) is True


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_page_begins_in_the_theme_of_the_device(
    visitor: Callable[..., Rig], site: str, scheme: str
) -> None:
    """From the first paint, without a flash of the other."""
    rig = visitor(site, color_scheme=scheme).open()
    assert rig.page.locator("html").get_attribute("data-theme") == scheme
    assert scheme in rig.page.evaluate(PAPER)
